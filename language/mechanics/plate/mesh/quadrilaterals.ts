/** Pairs triangles into quadrilaterals and divides everything into quadrilaterals that meet side to side. */
import type { Triangulation } from './triangulation.js';

/** Polygons of three or four corners, counter-clockwise. */
export type Facet = readonly number[];

/**
 * Joins neighbouring triangles across unwanted sides, best-shaped pairs first. `kept`: 1 for each triangle that is part of the plate.
 */
export function pairTriangles(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  { corners, twins, wanted }: Triangulation,
  kept: ArrayLike<number>,
): Facet[] {
  const pairs: { side: number; quality: number }[] = [];
  for (let side = 0; side < corners.length; side++) {
    const twin = twins[side]!;
    if (twin < side || wanted[side] || !kept[(side / 3) | 0] || !kept[(twin / 3) | 0]) continue;
    const quad = quadOf(corners, side, twin);
    const quality = quadQuality(x, y, quad);
    if (quality > 0.2 && !flatCorner(x, y, quad)) pairs.push({ side, quality });
  }
  pairs.sort((p, q) => q.quality - p.quality || p.side - q.side);
  const used = new Uint8Array(corners.length / 3);
  const facets: Facet[] = [];
  for (const { side } of pairs) {
    const twin = twins[side]!;
    const one = (side / 3) | 0;
    const other = (twin / 3) | 0;
    if (used[one] || used[other]) continue;
    used[one] = used[other] = 1;
    facets.push(quadOf(corners, side, twin));
  }
  for (let t = 0; t < used.length; t++) {
    if (kept[t] && !used[t]) facets.push([corners[3 * t]!, corners[3 * t + 1]!, corners[3 * t + 2]!]);
  }
  return facets;
}

function quadOf(corners: Int32Array, side: number, twin: number): Facet {
  const base = side - (side % 3);
  const twinBase = twin - (twin % 3);
  const far = corners[twinBase + ((twin + 2) % 3)]!;
  return [corners[side]!, far, corners[base + ((side + 1) % 3)]!, corners[base + ((side + 2) % 3)]!];
}

/** Least sine of the four corner angles, counted negative for a corner that points inward: 1 for a rectangle, ≤ 0 when not convex. */
export function quadQuality(x: ArrayLike<number>, y: ArrayLike<number>, quad: ArrayLike<number>, at = 0): number {
  let least = 1;
  for (let k = 0; k < 4; k++) {
    const p = quad[at + k]!;
    const a = quad[at + ((k + 1) & 3)]!;
    const b = quad[at + ((k + 3) & 3)]!;
    const ax = x[a]! - x[p]!;
    const ay = y[a]! - y[p]!;
    const bx = x[b]! - x[p]!;
    const by = y[b]! - y[p]!;
    const sine = (ax * by - ay * bx) / (Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by)) || 1);
    if (sine < least) least = sine;
  }
  return least;
}

/** Whether a corner is wider than 150°: divided, it would leave a quadrilateral that is nearly a triangle. */
function flatCorner(x: ArrayLike<number>, y: ArrayLike<number>, quad: Facet): boolean {
  return quad.some((p, k) => {
    const a = quad[(k + 1) & 3]!;
    const b = quad[(k + 3) & 3]!;
    const [ax, ay, bx, by] = [x[a]! - x[p]!, y[a]! - y[p]!, x[b]! - x[p]!, y[b]! - y[p]!];
    return ax * bx + ay * by < WIDEST * Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by));
  });
}

const WIDEST = Math.cos((150 * Math.PI) / 180);

export interface Division {
  /** Four nodes per quadrilateral. */
  readonly quads: Int32Array;
  /** Which facet each quadrilateral came from. */
  readonly facetOf: Int32Array;
  /** New nodes are numbered after the corners: first one per side, in this order … */
  readonly sides: readonly (readonly [number, number])[];
  /** … then one per facet. */
  readonly facets: readonly Facet[];
  /** Node in the middle of side a–b. */
  middle(a: number, b: number): number | undefined;
}

/** Divides each facet at its middle and the middles of its sides: four quadrilaterals for each quadrilateral, three for each triangle. */
export function divide(facets: readonly Facet[], cornerCount: number): Division {
  const sides: (readonly [number, number])[] = [];
  const numbered = new Map<number, number>();
  const keyOf = (a: number, b: number): number => Math.min(a, b) * cornerCount + Math.max(a, b);
  for (const facet of facets) {
    facet.forEach((a, k) => {
      const b = facet[(k + 1) % facet.length]!;
      const key = keyOf(a, b);
      if (numbered.has(key)) return;
      numbered.set(key, cornerCount + sides.length);
      sides.push([a, b]);
    });
  }
  const middle = (a: number, b: number): number | undefined => numbered.get(keyOf(a, b));
  const quads: number[] = [];
  const facetOf: number[] = [];
  facets.forEach((facet, index) => {
    const centre = cornerCount + sides.length + index;
    facet.forEach((a, k) => {
      const after = facet[(k + 1) % facet.length]!;
      const before = facet[(k + facet.length - 1) % facet.length]!;
      quads.push(a, middle(a, after)!, centre, middle(before, a)!);
      facetOf.push(index);
    });
  });
  return { quads: Int32Array.from(quads), facetOf: Int32Array.from(facetOf), sides, facets, middle };
}
