/** The footprints of braces as strips of their real width, cut across wherever another line crosses them and at regular steps between. */
import type { PointMm, SolidBrace } from './inputs.js';

export interface Strip {
  readonly brace: number;
  /** Unit vector along the brace. */
  readonly along: PointMm;
  readonly length: number;
  /** Corners: start right, end right, end left, start left (counter-clockwise). */
  readonly corners: readonly PointMm[];
}

export type Line = readonly [PointMm, PointMm];

export function stripOf(brace: SolidBrace, index: number): Strip {
  const [[x0, y0], [x1, y1]] = [brace.from_mm, brace.to_mm];
  const length = Math.hypot(x1 - x0, y1 - y0);
  const along: PointMm = [(x1 - x0) / length, (y1 - y0) / length];
  const half = brace.width_mm / 2;
  const beside = ([x, y]: PointMm, side: number): PointMm => [x - side * half * along[1], y + side * half * along[0]];
  const { from_mm: from, to_mm: to } = brace;
  return { brace: index, along, length, corners: [beside(from, -1), beside(to, -1), beside(to, 1), beside(from, 1)] };
}

/** The two long sides, right and left, both in the direction of the brace. */
export function longSides({ corners }: Strip): readonly [Line, Line] {
  return [
    [corners[0]!, corners[1]!],
    [corners[3]!, corners[2]!],
  ];
}

/**
 * Distances along the right and the left side where the strip is cut across, ends included. A line that crosses one side only
 * would cut a brace's footprint in part and is refused.
 */
export function cutsOf(
  strip: Strip,
  brace: SolidBrace,
  others: readonly Line[],
  spacing: number,
): readonly (readonly [number, number])[] {
  const [right, left] = longSides(strip);
  const cuts: (readonly [number, number])[] = [
    [0, 0],
    [strip.length, strip.length],
  ];
  for (const line of others) {
    const r = meeting(right, line);
    const l = meeting(left, line);
    if (!r && !l) continue;
    if (!r || !l) throw new Error(`A line ends within the footprint of ${brace.name}.`);
    cuts.push([r.t * strip.length, l.t * strip.length]);
  }
  if (typeof brace.height_mm !== 'number') {
    for (const [s] of brace.height_mm) if (s > 0 && s < strip.length) cuts.push([s, s]);
  }
  cuts.sort((p, q) => p[0] + p[1] - q[0] - q[1]);
  const apart = cuts.filter((cut, i) => i === 0 || cut[0] + cut[1] - cuts[i - 1]![0] - cuts[i - 1]![1] > 1e-6);
  return apart.flatMap((cut, i) => {
    const before = apart[i - 1];
    if (!before) return [cut];
    const [dr, dl] = [cut[0] - before[0], cut[1] - before[1]];
    if (!(dr > 0 && dl > 0)) throw new Error(`Two lines cross each other within the footprint of ${brace.name}.`);
    const pieces = Math.max(1, Math.round((dr + dl) / 2 / spacing));
    return Array.from({ length: pieces }, (_, k): readonly [number, number] => {
      const share = (k + 1) / pieces;
      return [before[0] + share * dr, before[1] + share * dl];
    });
  });
}

/** Where two lines meet, as parts along each; ends count. */
export function meeting([a, b]: Line, [c, d]: Line): { readonly t: number; readonly s: number } | undefined {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const det = ux * vy - uy * vx;
  if (Math.abs(det) < 1e-9 * Math.hypot(ux, uy) * Math.hypot(vx, vy)) return undefined;
  const [wx, wy] = [c[0] - a[0], c[1] - a[1]];
  const t = (wx * vy - wy * vx) / det;
  const s = (wx * uy - wy * ux) / det;
  const slack = 1e-9;
  return t >= -slack && t <= 1 + slack && s >= -slack && s <= 1 + slack ? { t, s } : undefined;
}
