/** Where flat things lie on one another in the plan: SI, station from the tail and offset from the centre line. */
import { contains, crossing, distanceToRim, distanceToSegment } from '../plate/mesh/polygon.js';

/** `[station, offset]`, m. */
export type PlanPoint = readonly [number, number];

/** m from the rim of a closed ring of points: above zero outside it, below inside. */
export function outsideBy(ring: readonly PlanPoint[], [x, y]: PlanPoint): number {
  const distance = distanceToRim(ring, x, y);
  return contains(ring, x, y) ? -distance : distance;
}

/** Whether a point lies inside a closed ring, or on it; the sign of `outsideBy` without the distance. */
export function isWithin(ring: readonly PlanPoint[], [x, y]: PlanPoint): boolean {
  return contains(ring, x, y) || distanceToRim(ring, x, y) === 0;
}

/** m from a line through two or more points. */
export function distanceFromLine(line: readonly PlanPoint[], [x, y]: PlanPoint): number {
  return Math.min(...line.slice(1).map((to, i) => distanceToSegment(x, y, line[i]!, to)));
}

/** m of a line through two or more points that lie inside a closed ring. */
export function lengthInside(ring: readonly PlanPoint[], line: readonly PlanPoint[]): number {
  let sum = 0;
  for (let i = 1; i < line.length; i += 1) sum += segmentInside(ring, line[i - 1]!, line[i]!);
  return sum;
}

function segmentInside(ring: readonly PlanPoint[], a: PlanPoint, b: PlanPoint): number {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const cuts = [0, 1];
  const [low, high] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])];
  const [left, right] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
  let from = ring[ring.length - 1]!;
  for (const to of ring) {
    const isAside =
      (from[0] < low && to[0] < low) ||
      (from[0] > high && to[0] > high) ||
      (from[1] < left && to[1] < left) ||
      (from[1] > right && to[1] > right);
    const cut = isAside ? undefined : crossing(a, b, from, to);
    if (cut) cuts.push(cut.t);
    from = to;
  }
  cuts.sort((s, t) => s - t);
  let share = 0;
  for (let i = 1; i < cuts.length; i += 1) {
    const middle = (cuts[i - 1]! + cuts[i]!) / 2;
    const at = (k: 0 | 1) => a[k] + middle * (b[k] - a[k]);
    if (contains(ring, at(0), at(1))) share += cuts[i]! - cuts[i - 1]!;
  }
  return share * length;
}

/** The line moved sideways by `by` (m), to the left of its course where that is above zero; corners are mitred. */
export function beside(line: readonly PlanPoint[], by: number): readonly PlanPoint[] {
  const normals = line.slice(1).map((to, i) => {
    const from = line[i]!;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
    return [-(to[1] - from[1]) / length, (to[0] - from[0]) / length] as const;
  });
  return line.map(([x, y], i) => {
    const [before, after] = [normals[i - 1] ?? normals[i], normals[i] ?? normals[i - 1]];
    if (!before || !after) return [x, y];
    // Two sides moved by one meet on the mitre; a sharp corner is held to three times that.
    const scale = Math.max(1 + before[0] * after[0] + before[1] * after[1], 2 / 9);
    return [x + (by * (before[0] + after[0])) / scale, y + (by * (before[1] + after[1])) / scale];
  });
}

/** A strip of one width (m) along a line, as a closed ring, square-cut at its ends. */
export function strip(line: readonly PlanPoint[], width: number): readonly PlanPoint[] {
  return [...beside(line, width / 2), ...[...beside(line, -width / 2)].reverse()];
}

/** A rectangle across the centre line, its middle at a station; m. */
export function acrossCentre(station: number, along: number, across: number, offset = 0): readonly PlanPoint[] {
  const [x0, x1] = [station - along / 2, station + along / 2];
  const [y0, y1] = [offset - across / 2, offset + across / 2];
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}
