/**
 * How far apart nodes stand: as wished on the open plate, closer where two lines of the plan come near each other without meeting,
 * such as the end of a brace and the outline, and growing evenly from there. Without it flat, overstiff quadrilaterals lie in
 * just those places. (After the local feature size of J. Ruppert, A Delaunay refinement algorithm, J. Algorithms 18, 1995.)
 */
import { distanceToSegment } from './polygon.js';
import type { PlanarGraph } from './planar-graph.js';

/** m: wished distance between neighbours around a place. */
export type SizeAt = (x: number, y: number) => number;

/** Wished size over the gap there. */
const OVER_GAP = 1.4;
/** How fast it grows with distance. */
const GROWTH = 0.8;
/** Never below this share of the wished size on the open plate. */
const LEAST = 0.22;

export function sizeField({ vertices, edges, shortEnds }: PlanarGraph, coarse: number): SizeAt {
  const ends = new Map<number, number>();
  for (const { a, b } of edges) for (const v of [a, b]) ends.set(v, (ends.get(v) ?? 0) + 1);
  const narrow = shortEnds.map(({ end: [x, y], size }) => ({ x, y, size }));
  for (const [v, degree] of ends) {
    if (degree > 1) continue;
    const { x, y } = vertices[v]!;
    let gap = Infinity;
    for (const { a, b } of edges) {
      if (a === v || b === v) continue;
      const p = vertices[a]!;
      const q = vertices[b]!;
      gap = Math.min(gap, distanceToSegment(x, y, [p.x, p.y], [q.x, q.y]));
    }
    const size = Math.max(OVER_GAP * gap, LEAST * coarse);
    if (size < coarse) narrow.push({ x, y, size });
  }
  return (x, y) => {
    let least = coarse;
    for (const place of narrow) {
      const [dx, dy] = [x - place.x, y - place.y];
      const size = place.size + GROWTH * Math.max(0, Math.sqrt(dx * dx + dy * dy) - place.size);
      if (size < least) least = size;
    }
    return least;
  };
}

/** Parts of the way, ascending and without 0 and 1, that divide a line into pieces of the wished size. */
export function divisions(length: number, at: (t: number) => readonly [number, number], sizeAt: SizeAt): number[] {
  const samples = 8;
  const sum = new Float64Array(samples + 1);
  for (let k = 0; k < samples; k++) {
    const [x, y] = at((k + 0.5) / samples);
    sum[k + 1] = sum[k]! + length / samples / sizeAt(x, y);
  }
  const whole = sum[samples]!;
  const pieces = Math.max(1, Math.round(whole));
  const found: number[] = [];
  let k = 0;
  for (let piece = 1; piece < pieces; piece++) {
    const wanted = (piece * whole) / pieces;
    while (sum[k + 1]! < wanted) k++;
    found.push((k + (wanted - sum[k]!) / (sum[k + 1]! - sum[k]!)) / samples);
  }
  return found;
}
