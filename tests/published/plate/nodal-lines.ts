/** Names a mode of a free rectangular plate by counting its nodal lines, without the bar shapes the solver's own labels use. */
import type { TopSolution } from '../../../language/mechanics/plate/index.js';

const ALONG = 41;
const ACROSS = 21;
/** Below this share of the greatest movement the sign tells nothing. */
const FAINT = 0.03;

/**
 * Name of each mode as the data sets write it: first the nodal lines that run along the grain (x), then those that cross it.
 * Counted as changes of sign on lines along and across the plate; the count that the most strongly moving lines show.
 */
export function modeNames({ mesh, modes }: TopSolution): readonly string[] {
  const places = nearestNodes(mesh);
  return modes.map(({ shape }) => {
    const grid = places.map((row) => row.map((node) => shape[node]!));
    const columns = grid[0]!.map((_, i) => grid.map((row) => row[i]!));
    const most = Math.max(...grid.flat().map(Math.abs));
    return `${crossings(columns, most)}${crossings(grid, most)}`;
  });
}

/**
 * Whether a mode's lines can be relied on: 21 and 03 have the same symmetry, and where their frequencies lie close each borrows of
 * the other's shape, so that only the symmetry is left to be counted.
 */
export function expectedName(mode: string, frequency: (mode: string) => number): RegExp {
  const borrows = (mode === '21' || mode === '03') && Math.abs(frequency('21') / frequency('03') - 1) < 0.08;
  return borrows ? /^[02][13]$/ : new RegExp(`^${mode}$`);
}

/** Rows along x, each from end to end. */
function nearestNodes({ x, y }: TopSolution['mesh']): number[][] {
  const [length, width] = [Math.max(...x), Math.max(...y)];
  return Array.from({ length: ACROSS }, (_, j) =>
    Array.from({ length: ALONG }, (__, i) => {
      const [px, py] = [(length * i) / (ALONG - 1), (width * j) / (ACROSS - 1)];
      let best = 0;
      for (let n = 1; n < x.length; n++) {
        if (Math.hypot(x[n]! - px, y[n]! - py) < Math.hypot(x[best]! - px, y[best]! - py)) best = n;
      }
      return best;
    }),
  );
}

function crossings(lines: readonly (readonly number[])[], most: number): number {
  const votes = new Map<number, number>();
  for (const line of lines) {
    const moving = line.filter((value) => Math.abs(value) > FAINT * most);
    let count = 0;
    for (let i = 1; i < moving.length; i++) if (moving[i]! * moving[i - 1]! < 0) count++;
    const weight = line.reduce((sum, value) => sum + value * value, 0);
    votes.set(count, (votes.get(count) ?? 0) + weight);
  }
  return [...votes].reduce((best, vote) => (vote[1] > best[1] ? vote : best))[0];
}
