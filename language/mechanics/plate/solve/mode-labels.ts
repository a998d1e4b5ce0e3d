/** Which mode of a free rectangular plate is which, by its nodal lines. */
import type { TopSolution } from '../solution.js';

/** Nodal lines that cross the plate's length (`along`) and its width (`across`): twist is 1, 1; the long-grain mode 2, 0. */
export interface ModeLabel {
  readonly along: number;
  readonly across: number;
}

/** βL of the bending modes of a free bar (textbook values; from memory). */
const FREE_BAR = [4.73004074, 7.85320462, 10.9956079, 14.1371655, 17.2787597];
const MOST_LINES = 5;

/**
 * Index of the mode that looks most like each label, by its correlation with products of free-bar shapes along x and y; every mode is used once, best
 * matches first. −1 when no mode resembles it (correlation below 0.5).
 */
export function labelledModes(solution: TopSolution, labels: readonly ModeLabel[]): readonly number[] {
  const { mesh, modes } = solution;
  const xs = spread(mesh.x);
  const ys = spread(mesh.y);
  const weights = nodalAreas(mesh);
  const barX = Array.from({ length: MOST_LINES + 1 }, (_, n) => xs.map((t) => freeBar(n, t)));
  const barY = Array.from({ length: MOST_LINES + 1 }, (_, n) => ys.map((t) => freeBar(n, t)));
  const matches: { label: number; mode: number; likeness: number }[] = [];
  labels.forEach(({ along, across }, label) => {
    if (along > MOST_LINES || across > MOST_LINES) return;
    modes.forEach(({ shape }, mode) => {
      let mixed = 0;
      let own = 0;
      let bar = 0;
      for (let i = 0; i < shape.length; i++) {
        const product = barX[along]![i]! * barY[across]![i]!;
        mixed += weights[i]! * shape[i]! * product;
        own += weights[i]! * shape[i]! ** 2;
        bar += weights[i]! * product ** 2;
      }
      matches.push({ label, mode, likeness: Math.abs(mixed) / Math.sqrt(own * bar) });
    });
  });
  matches.sort((p, q) => q.likeness - p.likeness);
  const result = labels.map(() => -1);
  const taken = new Set<number>();
  for (const { label, mode, likeness } of matches) {
    if (likeness < 0.5 || result[label]! >= 0 || taken.has(mode)) continue;
    result[label] = mode;
    taken.add(mode);
  }
  return result;
}

/** Places from −½ to ½. */
function spread(values: Float64Array): number[] {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return Array.from(values, (value) => (value - low) / (high - low) - 0.5);
}

/** Shape of a free bar with `lines` nodes at `t` from −½ to ½: level, tilted, then the bending modes. */
function freeBar(lines: number, t: number): number {
  if (lines === 0) return 1;
  if (lines === 1) return 2 * t;
  const k = FREE_BAR[lines - 2]!;
  return lines % 2 === 0
    ? Math.cos(k * t) / Math.cos(k / 2) + Math.cosh(k * t) / Math.cosh(k / 2)
    : Math.sin(k * t) / Math.sin(k / 2) + Math.sinh(k * t) / Math.sinh(k / 2);
}

function nodalAreas({ x, y, quads }: TopSolution['mesh']): Float64Array {
  const areas = new Float64Array(x.length);
  for (let q = 0; q < quads.length; q += 4) {
    const [a, b, c, d] = quads.subarray(q, q + 4) as unknown as [number, number, number, number];
    const area = ((x[c]! - x[a]!) * (y[d]! - y[b]!) - (x[d]! - x[b]!) * (y[c]! - y[a]!)) / 2;
    for (const node of [a, b, c, d]) areas[node]! += area / 4;
  }
  return areas;
}
