/**
 * Whether one thing rises with another, whatever the curve: Spearman's rank correlation, with its chance counted out for few
 * and by Student's t for many. Source: M.G. Kendall & J.D. Gibbons, Rank Correlation Methods, ch. 4 (from memory).
 */
import { chanceBeyond } from './student-t.js';

export interface RankCorrelation {
  /** −1 … 1 */
  readonly rho: number;
  /** How likely as much either way is by chance alone. */
  readonly chance: number;
}

/** All orders of so many are counted. */
const COUNTED = 8;

/** Undefined for fewer than four, or where either is the same throughout. */
export function rankCorrelation(x: readonly number[], y: readonly number[]): RankCorrelation | undefined {
  const n = x.length;
  if (n < 4) return undefined;
  const [a, b] = [centred(ranks(x)), centred(ranks(y))];
  const size = Math.sqrt(dot(a, a) * dot(b, b));
  if (size === 0) return undefined;
  const rho = dot(a, b) / size;
  if (n <= COUNTED) return { rho, chance: shareAsFar(a, b) };
  const t = Math.abs(rho) >= 1 ? Infinity : rho * Math.sqrt((n - 2) / (1 - rho * rho));
  return { rho, chance: chanceBeyond(t, n - 2) };
}

/** From 1, the mean rank where several are alike. */
export function ranks(values: readonly number[]): readonly number[] {
  return values.map((value) => {
    const below = values.filter((other) => other < value).length;
    const alike = values.filter((other) => other === value).length;
    return below + (alike + 1) / 2;
  });
}

function shareAsFar(a: readonly number[], b: readonly number[]): number {
  const found = Math.abs(dot(a, b)) - 1e-9;
  const order = [...b];
  let [all, far] = [0, 0];
  const permute = (k: number): void => {
    if (k === order.length) {
      all += 1;
      if (Math.abs(dot(a, order)) >= found) far += 1;
      return;
    }
    for (let i = k; i < order.length; i += 1) {
      [order[k], order[i]] = [order[i]!, order[k]!];
      permute(k + 1);
      [order[k], order[i]] = [order[i]!, order[k]];
    }
  };
  permute(0);
  return far / all;
}

function centred(values: readonly number[]): readonly number[] {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.map((value) => value - mean);
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}
