/** Builds a plan up into twenty-node bricks: one layer through the plate, two through braces and thick blocks, one through thin ones. */
import { braceHeight, type SolidTop } from './inputs.js';
import { plateThickness, type PlanMesh } from './plan-mesh.js';
import { stripOf } from './strips.js';

export interface SolidMesh {
  readonly plan: PlanMesh;
  /** Three coordinates per node, m. */
  readonly places: readonly number[];
  readonly bricks: readonly Brick[];
  /** Node above (or in) a plan node; levels 0, 1, 2 are the plate's lower face, mid-plane (corner nodes only) and upper face. */
  node(plan: number, level: number): number;
  /** Level of the highest face over a quadrilateral. */
  readonly highest: readonly number[];
}

export interface Brick {
  readonly nodes: readonly number[];
  readonly part: Part;
}

/** What a brick is of: decides wood and grain. `layer` counts from the plate. */
export type Part =
  | { readonly kind: 'plate' }
  | { readonly kind: 'brace'; readonly brace: number }
  | { readonly kind: 'crossing'; readonly braces: readonly [number, number] }
  | { readonly kind: 'patch'; readonly patch: number };

/** mm; blocks thicker than this get two layers. */
const THICK = 5;

interface Layer {
  readonly part: Part;
  /** mm at a plan node */
  readonly thickness: (node: number) => number;
}

export function solidMesh(top: SolidTop, plan: PlanMesh): SolidMesh {
  const places: number[] = [];
  const numbered = new Map<string, number>();
  const strips = top.braces.map(stripOf);
  const plate = Float64Array.from(plan.x, (x, i) => plateThickness(top, x, plan.y[i]!));

  const heightOf = (brace: number, node: number): number => {
    const { from_mm: from } = top.braces[brace]!;
    const { along, length } = strips[brace]!;
    const s = (plan.x[node]! - from[0]) * along[0] + (plan.y[node]! - from[1]) * along[1];
    return braceHeight(top.braces[brace]!, Math.min(length, Math.max(0, s)));
  };
  const layersOf = (quad: number, side: 'over' | 'under'): Layer[] => {
    const layers = plan.patchesOf[quad]!.flatMap((patch): Layer[] => {
      const { side: own, thickness_mm: thickness } = top.patches[patch]!;
      if (own !== side) return [];
      const count = thickness > THICK ? 2 : 1;
      return Array<Layer>(count).fill({ part: { kind: 'patch', patch }, thickness: () => thickness / count });
    });
    const braces = side === 'under' ? plan.bracesOf[quad]! : [];
    if (braces.length === 0) return layers;
    if (layers.length > 0 || braces.length > 2) throw new Error(`${top.name}: too much lies under one place.`);
    const [first, second] = braces as [number, number | undefined];
    const parts: readonly Part[] =
      second === undefined
        ? [first, first].map((brace) => ({ kind: 'brace', brace }))
        : top.crossing === 'solid'
          ? [0, 1].map(() => ({ kind: 'crossing', braces: [first, second] }))
          : [first, second].map((brace) => ({ kind: 'brace', brace }));
    return parts.map((part) => ({ part, thickness: (node) => heightOf(first, node) / 2 }));
  };
  const nodeAt = (node: number, level: number, z: number): number => {
    const key = `${node} ${level}`;
    const known = numbered.get(key);
    if (known === undefined) {
      places.push(plan.x[node]! / 1000, plan.y[node]! / 1000, z / 1000);
      numbered.set(key, places.length / 3 - 1);
      return places.length / 3 - 1;
    }
    if (Math.abs(places[3 * known + 2]! - z / 1000) > 1e-9) {
      throw new Error(
        `${top.name}: parts of different height meet at ${plan.x[node]!.toFixed(1)}, ${plan.y[node]!.toFixed(1)}.`,
      );
    }
    return known;
  };

  const bricks: Brick[] = [];
  const highest: number[] = [];
  plan.quads.forEach((quad, q) => {
    const add = (part: Part, level: number, low: (node: number) => number, high: (node: number) => number): void => {
      const face = (at: number, z: (node: number) => number): number[] =>
        Array.from(quad, (node) => nodeAt(node, at, z(node)));
      const lower = face(level, low);
      const upper = face(level + 2, high);
      const between = Array.from(quad.subarray(0, 4), (node) => nodeAt(node, level + 1, (low(node) + high(node)) / 2));
      bricks.push({
        nodes: [...lower.slice(0, 4), ...upper.slice(0, 4), ...lower.slice(4), ...upper.slice(4), ...between],
        part,
      });
    };
    const half = (node: number): number => plate[node]! / 2;
    add({ kind: 'plate' }, 0, (node) => -half(node), half);
    let level = 0;
    let low = (node: number): number => -half(node);
    for (const { part, thickness } of layersOf(q, 'under')) {
      const high = low;
      low = (node) => high(node) - thickness(node);
      level -= 2;
      add(part, level, low, high);
    }
    level = 2;
    let high = half;
    for (const { part, thickness } of layersOf(q, 'over')) {
      const below = high;
      high = (node) => below(node) + thickness(node);
      add(part, level, below, high);
      level += 2;
    }
    highest.push(level);
  });
  return { plan, places, bricks, highest, node: (node, level) => numbered.get(`${node} ${level}`)! };
}
