/**
 * How far instruments differ from one another beyond what was changed on purpose and beyond what the same instrument reads
 * twice: the variance between instruments, by restricted maximum likelihood (H.D. Patterson & R. Thompson, Biometrika 58
 * (1971) 545), which for plain replicates is their pooled variance. A figure the shop states counts like so many more
 * degrees of freedom.
 */
import type { Matrix } from './cholesky.js';
import { generalised, type Prior } from './generalised.js';

export interface ScatterModel {
  /** n × k */
  readonly rows: Matrix;
  readonly y: readonly number[];
  /** Of each reading the instrument it was taken on, by number. */
  readonly owners: readonly number[];
  /** Variance of each reading about what its instrument has. */
  readonly errors: readonly number[];
  readonly priors: readonly Prior[];
  readonly stated?: { readonly variance: number; readonly weight: number };
}

/**
 * Variance between instruments; with `stated`, that of a reading of one instrument among others pooled with it. Zero where
 * the errors of reading explain it all; undefined where the unknowns cannot be found at all.
 */
export function varianceBetween(model: ScatterModel): number | undefined {
  const least = mean(model.errors);
  const spread = variance(model.y) + (model.stated?.variance ?? 0) + least;
  if (!(spread > 0)) return 0;
  const at = (between: number): number => {
    const found = generalised({ ...model, covariance: covarianceOf(model, between) });
    if (!found) return Number.NaN;
    const { stated } = model;
    const total = between + least;
    return found.logLikelihood - (stated ? (stated.weight / 2) * (Math.log(total) + stated.variance / total) : 0);
  };
  // A scatter of nothing at all is no scatter to reckon with.
  const low = Math.log(spread * 1e-9);
  const high = Math.log(spread * 4);
  const best = Math.exp(highest((x) => at(Math.exp(x)), low, high));
  if (Number.isNaN(at(best))) return undefined;
  return least > 0 && at(0) >= at(best) ? 0 : best;
}

/** n × n: what readings of one instrument share, and what each has of its own. */
export function covarianceOf({ owners, errors }: Pick<ScatterModel, 'owners' | 'errors'>, between: number): Matrix {
  return owners.map((a, i) => owners.map((b, j) => (a === b ? between : 0) + (i === j ? errors[i]! : 0)));
}

/** Where a curve with one top is highest: a coarse look, then golden section. */
function highest(curve: (x: number) => number, low: number, high: number): number {
  const steps = 24;
  const xs = Array.from({ length: steps + 1 }, (_, i) => low + ((high - low) * i) / steps);
  const values = xs.map((x) => curve(x));
  const top = values.reduce((best, value, i) => (value > values[best]! ? i : best), 0);
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [xs[Math.max(0, top - 1)]!, xs[Math.min(steps, top + 1)]!];
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)];
  let [atC, atD] = [curve(c), curve(d)];
  for (let step = 0; step < 30; step += 1) {
    if (atC > atD) {
      [b, d, atD] = [d, c, atC];
      c = b - golden * (b - a);
      atC = curve(c);
    } else {
      [a, c, atC] = [c, d, atD];
      d = a + golden * (b - a);
      atD = curve(d);
    }
  }
  return (a + b) / 2;
}

function variance(values: readonly number[]): number {
  const middle = mean(values);
  return values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / Math.max(1, values.length - 1);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}
