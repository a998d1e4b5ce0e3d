/** Outlines for the set, each a closed line through chosen places. All shapes are invented for it. */
import type { PointMm } from './inputs.js';

/** Places on the treble side (y > 0) from tail to neck, tail and neck end included; the bass side mirrors them. */
export function symmetric(upper: readonly PointMm[]): PointMm[] {
  const lower = upper
    .slice(1, -1)
    .reverse()
    .map(([x, y]): PointMm => [x, -y]);
  return smoothThrough([...upper, ...lower]);
}

/** As `symmetric`, with other places on the treble side from `from` mm on; they end at a corner beside the neck. */
export function withCutaway(upper: readonly PointMm[], from: number, cut: readonly PointMm[]): PointMm[] {
  const neck = upper[upper.length - 1]!;
  const bass = upper.slice(1, -1).map(([x, y]): PointMm => [x, -y]);
  const [tail] = upper as [PointMm];
  const treble = upper.slice(1).filter(([x]) => x < from);
  // An open line from the corner round by the tail to the neck end, so that the corner stays sharp.
  const path = [...[...treble, ...cut].reverse(), tail, ...bass, neck];
  return counterClockwise(spline(path, false));
}

function smoothThrough(places: readonly PointMm[]): PointMm[] {
  return counterClockwise(spline(places, true));
}

function counterClockwise(points: PointMm[]): PointMm[] {
  const twice = points.reduce((sum, [x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length]!;
    return sum + x * ny - nx * y;
  }, 0);
  return twice < 0 ? points.reverse() : points;
}

/** Centripetal Catmull–Rom curve through the places, eight points to a piece, rounded to 0.01 mm. */
function spline(places: readonly PointMm[], closed: boolean): PointMm[] {
  const n = places.length;
  const at = (i: number): PointMm => {
    if (closed) return places[(i + n) % n]!;
    const [inner, end] = i < 0 ? [places[1]!, places[0]!] : [places[n - 2]!, places[n - 1]!];
    return i < 0 || i >= n ? [2 * end[0] - inner[0], 2 * end[1] - inner[1]] : places[i]!;
  };
  const pieces = 8;
  const points: PointMm[] = [];
  for (let i = 0; i < (closed ? n : n - 1); i++) {
    for (let k = 0; k < pieces; k++) points.push(between(at(i - 1), at(i), at(i + 1), at(i + 2), k / pieces));
  }
  if (!closed) points.push(places[n - 1]!);
  return points.map(([x, y]): PointMm => [Math.round(x * 100) / 100, Math.round(y * 100) / 100]);
}

function between(p0: PointMm, p1: PointMm, p2: PointMm, p3: PointMm, share: number): PointMm {
  const gap = (a: PointMm, b: PointMm): number => Math.sqrt(Math.hypot(b[0] - a[0], b[1] - a[1]));
  const t0 = 0;
  const t1 = t0 + gap(p0, p1);
  const t2 = t1 + gap(p1, p2);
  const t3 = t2 + gap(p2, p3);
  const t = t1 + share * (t2 - t1);
  const mix = (a: PointMm, b: PointMm, from: number, to: number): PointMm => {
    const s = (t - from) / (to - from);
    return [a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1])];
  };
  const [a1, a2, a3] = [mix(p0, p1, t0, t1), mix(p1, p2, t1, t2), mix(p2, p3, t2, t3)];
  return mix(mix(a1, a2, t0, t2), mix(a2, a3, t1, t3), t1, t2);
}
