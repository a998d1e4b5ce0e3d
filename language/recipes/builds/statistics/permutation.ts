/**
 * Whether two groups of marks differ: the sum of the ranks of one, against every way of dealing out the same ranks. Source:
 * F. Wilcoxon, Biometrics Bulletin 1 (1945) 80; R.A. Fisher, The Design of Experiments, 1935 (from memory).
 */
import { ranks } from './rank-correlation.js';

/** More ways than this are not counted out. */
const MOST = 2_000_000;

/** How likely as large a difference either way is by chance alone. Undefined where either is empty or there are too many. */
export function chanceOfRanks(a: readonly number[], b: readonly number[]): number | undefined {
  const all = ranks([...a, ...b]);
  if (a.length === 0 || b.length === 0 || ways(all.length, a.length) > MOST) return undefined;
  const middle = (a.length * (all.length + 1)) / 2;
  const found = Math.abs(all.slice(0, a.length).reduce((sum, rank) => sum + rank, 0) - middle) - 1e-9;
  let [count, far] = [0, 0];
  const deal = (from: number, left: number, sum: number): void => {
    if (left === 0) {
      count += 1;
      if (Math.abs(sum - middle) >= found) far += 1;
      return;
    }
    for (let i = from; i <= all.length - left; i += 1) deal(i + 1, left - 1, sum + all[i]!);
  };
  deal(0, a.length, 0);
  return far / count;
}

function ways(n: number, k: number): number {
  let count = 1;
  for (let i = 1; i <= k; i += 1) count = (count * (n - k + i)) / i;
  return count;
}
