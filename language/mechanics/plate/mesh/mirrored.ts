/**
 * A plan and its mirror image get meshes that are mirror images: of the two, always the same one is meshed. Which one is told by
 * how what lies on the plate is spread to the left and right of its middle; a plan that is its own image is meshed as it is.
 */
import type { TopMesh } from './top-mesh.js';
import type { Point, TopModel } from '../model.js';

const over = ([x, y]: Point): Point => [x, -y];

export function mirroredPlan(model: TopModel): TopModel {
  return {
    ...model,
    outline: model.outline.map(over),
    holes: model.holes?.map((hole) =>
      'outline' in hole ? { outline: hole.outline.map(over) } : { ...hole, centre: over(hole.centre) },
    ),
    braces: model.braces?.map((brace) => ({ ...brace, axis: brace.axis.map(over) })),
    rests: model.rests?.map(({ from, to }) => ({ from: over(from), to: over(to) })),
    patches: model.patches?.map((patch) => ({ ...patch, outline: patch.outline.map(over) })),
  };
}

/** Quadrilaterals still run counter-clockwise. */
export function mirroredMesh(mesh: TopMesh): TopMesh {
  const quads = mesh.quads.slice();
  for (let at = 0; at < quads.length; at += 4) {
    quads[at + 1] = mesh.quads[at + 3]!;
    quads[at + 3] = mesh.quads[at + 1]!;
  }
  const sides = (list: Int32Array): Int32Array => list.map((value, i) => (i % 2 === 1 ? 3 - value : value));
  return {
    ...mesh,
    quads,
    y: mesh.y.map((y) => -y),
    moveY: mesh.moveY.map((y) => -y),
    rimSides: sides(mesh.rimSides),
    holeSides: sides(mesh.holeSides),
  };
}

/** Sums that change their sign with the mirror image are as good as nothing below this share of the plate's size. */
const NOTHING = 1e-7;

/** Whether the mirror image is the one to be meshed. */
export function isMeshedMirrored({ outline, holes = [], braces = [], rests = [], patches = [] }: TopModel): boolean {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const [x0, y0] = [Math.min(...xs), (Math.min(...ys) + Math.max(...ys)) / 2];
  const size = Math.max(...xs) - x0;
  const points = [
    ...braces.flatMap(({ axis }) => axis),
    ...patches.flatMap((patch) => patch.outline),
    ...rests.flatMap(({ from, to }) => [from, to]),
    ...holes.flatMap((hole) => ('outline' in hole ? hole.outline : [hole.centre])),
    ...outline,
  ];
  for (const power of [0, 1, 2]) {
    let sum = 0;
    for (const [x, y] of points) sum += ((y - y0) / size) * ((x - x0) / size) ** power;
    if (Math.abs(sum) > NOTHING) return sum < 0;
  }
  return false;
}
