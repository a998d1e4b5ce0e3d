/**
 * Generalised least squares with what is known beforehand: y = X·b + e, e normal with covariance V, each b normal about its
 * mean beforehand, or anything at all. Closed form: the rows are whitened by V, and each thing known beforehand is one more
 * row. Source: A. Gelman et al., Bayesian Data Analysis, sec. 14.8, "prior information as additional data" (from memory).
 */
import { backward, cholesky, forward, logDeterminant, type Matrix } from './cholesky.js';
import { solveLeastSquares } from './orthogonal.js';

/** What is known of an unknown before anything is read. */
export interface Prior {
  readonly mean: number;
  /** Infinite where nothing is known. */
  readonly variance: number;
}

export interface LinearModel {
  /** n × k */
  readonly rows: Matrix;
  readonly y: readonly number[];
  /** n × n, of the errors. */
  readonly covariance: Matrix;
  /** k */
  readonly priors: readonly Prior[];
}

export interface Estimate {
  readonly means: readonly number[];
  /** k × k */
  readonly covariance: Matrix;
  /** What each reading counts in each unknown, k × n. */
  readonly weights: Matrix;
  /** Of what was read, all unknowns integrated over; restricted in those of which nothing is known beforehand. */
  readonly logLikelihood: number;
}

/** Undefined where what was read and what is known beforehand leave an unknown open, or V is not positive. */
export function generalised({ rows, y, covariance, priors }: LinearModel): Estimate | undefined {
  const lower = cholesky(covariance);
  if (!lower) return undefined;
  const columns = priors.map((_, j) => forward(lower, rows.map((row) => row[j]!))); // prettier-ignore
  const known = priors.flatMap((prior, j) => (Number.isFinite(prior.variance) ? [{ j, ...prior }] : []));
  const augmented = [
    ...y.map((_, i) => columns.map((column) => column[i]!)),
    ...known.map(({ j, variance }) => priors.map((_, i) => (i === j ? 1 / Math.sqrt(variance) : 0))),
  ];
  const right = [...forward(lower, y), ...known.map(({ mean, variance }) => mean / Math.sqrt(variance))];
  const solved = solveLeastSquares(augmented, right);
  if (!solved) return undefined;
  // Xᵀ·V⁻¹, k × n
  const toY = columns.map((column) => backward(lower, column));
  const spread = known.reduce((sum, { variance }) => sum + Math.log(variance), 0);
  const free = y.length - (priors.length - known.length);
  return {
    means: solved.solution,
    covariance: solved.inverse,
    weights: solved.inverse.map((row) => y.map((_, i) => row.reduce((sum, c, j) => sum + c * toY[j]![i]!, 0))),
    logLikelihood:
      -(logDeterminant(lower) + spread + solved.logDeterminant + solved.squares + free * Math.log(2 * Math.PI)) / 2,
  };
}
