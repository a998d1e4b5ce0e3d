/**
 * A plan of a top in quadrilaterals that follow its outline, hole, patches and the real footprints of its braces. It uses the
 * triangulation of the solver's mesher but keeps the braces as strips and the patches at their full size.
 */
import { closedCurve, type ClosedCurve } from '../../../../language/mechanics/plate/mesh/curve.js';
import { contains, distanceToRim, distanceToSegment } from '../../../../language/mechanics/plate/mesh/polygon.js';
import { divide, pairTriangles, type Division } from '../../../../language/mechanics/plate/mesh/quadrilaterals.js';
import { smooth } from '../../../../language/mechanics/plate/mesh/smoothing.js';
import { triangulate } from '../../../../language/mechanics/plate/mesh/triangulation.js';
import { patchCorners, type PointMm, type SolidTop } from './inputs.js';
import { Skeleton } from './skeleton.js';
import { stripOf } from './strips.js';

export interface PlanMesh {
  /** mm; corner nodes first, then one node in the middle of each side. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly corners: number;
  /** Per quadrilateral: four corners counter-clockwise, then the middles of side 0–1, 1–2, 2–3, 3–0. */
  readonly quads: readonly Int32Array[];
  /** Braces and patches that cover each quadrilateral. */
  readonly bracesOf: readonly (readonly number[])[];
  readonly patchesOf: readonly (readonly number[])[];
  /** Sides on the outline: corner, corner, middle. */
  readonly rim: readonly (readonly [number, number, number])[];
}

/** `spacing`: mm, side of the triangles before they are divided; sides of the quadrilaterals are about half of it. */
export function planMesh(top: SolidTop, spacing: number): PlanMesh {
  const curves = curvesOf(top);
  const skeleton = new Skeleton(top, curves, spacing);
  const x = skeleton.points.map((p) => p[0]);
  const y = skeleton.points.map((p) => p[1]);
  const [outline, ...holes] = skeleton.rings.map((ring) => ring.map(({ point }): PointMm => skeleton.points[point]!));
  const onWood = (px: number, py: number): boolean =>
    contains(outline!, px, py) && !holes.some((hole) => contains(hole, px, py));
  for (const [px, py] of hexagons(top, spacing)) {
    if (!onWood(px, py)) continue;
    const clear = skeleton.edges.every(([a, b]) => {
      return distanceToSegment(px, py, skeleton.points[a]!, skeleton.points[b]!) > 0.6 * spacing;
    });
    if (clear) {
      x.push(px);
      y.push(py);
    }
  }
  const net = triangulate(x, y, skeleton.edges);
  if (!net) throw new Error(`${top.name}: the lines of the plan could not be kept.`);
  const kept = new Uint8Array(net.corners.length / 3);
  for (let t = 0; t < kept.length; t++) {
    const c = net.corners.subarray(3 * t, 3 * t + 3);
    const mean = (v: readonly number[]): number => (v[c[0]!]! + v[c[1]!]! + v[c[2]!]!) / 3;
    kept[t] = Number(onWood(mean(x), mean(y)));
  }
  return finish(top, skeleton, curves, x, y, divide(pairTriangles(x, y, net, kept), x.length));
}

function curvesOf({ outline_mm: outline, hole_mm: hole }: SolidTop): ClosedCurve[] {
  if (!hole) return [closedCurve(outline)];
  const circle = Array.from({ length: 720 }, (_, i): PointMm => {
    const angle = (i * Math.PI) / 360;
    return [hole.x + (hole.diameter / 2) * Math.cos(angle), hole.y + (hole.diameter / 2) * Math.sin(angle)];
  });
  return [closedCurve(outline), closedCurve(circle)];
}

function hexagons({ outline_mm: outline }: SolidTop, spacing: number): PointMm[] {
  const [minX, maxX] = [Math.min(...outline.map((p) => p[0])), Math.max(...outline.map((p) => p[0]))];
  const [minY, maxY] = [Math.min(...outline.map((p) => p[1])), Math.max(...outline.map((p) => p[1]))];
  const rows = Math.ceil((maxX - minX) / (spacing * Math.sqrt(0.75)));
  const columns = Math.ceil((maxY - minY) / spacing);
  const middle = (minY + maxY) / 2;
  return Array.from({ length: rows }, (_, i) =>
    Array.from({ length: columns + 1 }, (_, j): PointMm => {
      const shift = i % 2 === 0 ? 0 : 0.5;
      return [minX + (i + 0.5) * spacing * Math.sqrt(0.75), middle + (j - columns / 2 + shift) * spacing];
    }),
  ).flat();
}

/** Divided, smoothed, with side nodes (on the curve where the side is), and told apart by what covers it. */
function finish(
  top: SolidTop,
  skeleton: Skeleton,
  curves: readonly ClosedCurve[],
  cornersX: readonly number[],
  cornersY: readonly number[],
  division: Division,
): PlanMesh {
  const x = [...cornersX];
  const y = [...cornersY];
  for (const [a, b] of division.sides) {
    x.push((x[a]! + x[b]!) / 2);
    y.push((y[a]! + y[b]!) / 2);
  }
  for (const facet of division.facets) {
    x.push(facet.reduce((sum, node) => sum + x[node]!, 0) / facet.length);
    y.push(facet.reduce((sum, node) => sum + y[node]!, 0) / facet.length);
  }
  const free = new Uint8Array(x.length).fill(1);
  free.fill(0, 0, skeleton.points.length);
  /** Place along its curve of the middle of each half of a divided ring side. */
  const bent = new Map<string, { readonly curve: number; readonly s: number }>();
  const rimPairs: (readonly [number, number])[] = [];
  skeleton.rings.forEach((ring, curve) =>
    ring.forEach(({ point: a, s }, i) => {
      const { point: b, s: after } = ring[(i + 1) % ring.length]!;
      const way = after > s ? after - s : after + curves[curve]!.length - s;
      const node = division.middle(a, b)!;
      [x[node], y[node]] = curves[curve]!.at(s + way / 2);
      bent.set(keyOf(a, node), { curve, s: s + way / 4 });
      bent.set(keyOf(node, b), { curve, s: s + 0.75 * way });
      if (curve === 0) rimPairs.push([a, node], [node, b]);
    }),
  );
  for (const [a, b] of skeleton.edges) free[division.middle(a, b)!] = 0;
  const px = Float64Array.from(x);
  const py = Float64Array.from(y);
  smooth(px, py, division.quads, free, 8);

  const sides = new Map<string, number>();
  const allX = Array.from(px);
  const allY = Array.from(py);
  const middle = (a: number, b: number): number => {
    const key = keyOf(a, b);
    const known = sides.get(key);
    if (known !== undefined) return known;
    const bend = bent.get(key);
    const [mx, my] = bend ? curves[bend.curve]!.at(bend.s) : [(px[a]! + px[b]!) / 2, (py[a]! + py[b]!) / 2];
    allX.push(mx);
    allY.push(my);
    sides.set(key, allX.length - 1);
    return allX.length - 1;
  };
  const strips = top.braces.map((brace, i) => stripOf(brace, i).corners);
  const rectangles = top.patches.map(patchCorners);
  const quads: Int32Array[] = [];
  const bracesOf: number[][] = [];
  const patchesOf: number[][] = [];
  for (let at = 0; at < division.quads.length; at += 4) {
    const [a, b, c, d] = division.quads.subarray(at, at + 4) as unknown as [number, number, number, number];
    quads.push(Int32Array.of(a, b, c, d, middle(a, b), middle(b, c), middle(c, d), middle(d, a)));
    const [cx, cy] = [(px[a]! + px[b]! + px[c]! + px[d]!) / 4, (py[a]! + py[b]! + py[c]! + py[d]!) / 4];
    const covering = (shapes: readonly (readonly PointMm[])[]): number[] =>
      shapes.flatMap((shape, i) => (contains(shape, cx, cy) ? [i] : []));
    bracesOf.push(covering(strips));
    patchesOf.push(covering(rectangles));
  }
  const rim = rimPairs.map(([a, b]) => [a, b, middle(a, b)] as const);
  const mesh = {
    x: Float64Array.from(allX),
    y: Float64Array.from(allY),
    corners: px.length,
    quads,
    bracesOf,
    patchesOf,
    rim,
  };
  refuseBentQuads(top, mesh);
  return mesh;
}

const keyOf = (a: number, b: number): string => `${Math.min(a, b)} ${Math.max(a, b)}`;

/** Every corner must turn by clearly less than a half turn. */
function refuseBentQuads(top: SolidTop, { x, y, quads }: PlanMesh): void {
  for (const quad of quads) {
    for (let k = 0; k < 4; k++) {
      const [p, a, b] = [quad[k]!, quad[(k + 1) % 4]!, quad[(k + 3) % 4]!];
      const [ax, ay, bx, by] = [x[a]! - x[p]!, y[a]! - y[p]!, x[b]! - x[p]!, y[b]! - y[p]!];
      const sine = (ax * by - ay * bx) / Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by));
      if (!(sine > 0.1))
        throw new Error(`${top.name}: a bad quadrilateral near ${x[p]!.toFixed(1)}, ${y[p]!.toFixed(1)}.`);
    }
  }
}

/** mm: plate thickness at a place. */
export function plateThickness({ plate, outline_mm: outline }: SolidTop, x: number, y: number): number {
  if (!plate.taper) return plate.thickness_mm;
  const { edge_mm: edge, width_mm: width } = plate.taper;
  return edge + (plate.thickness_mm - edge) * Math.min(1, distanceToRim(outline, x, y) / width);
}
