/**
 * Least squares for few rows and columns that may depend on one another: what the columns can tell apart, and for that
 * alone a slope. Worked through the eigenvectors of the columns' correlation matrix, since these say at once which
 * combinations nobody has varied (eigenvalue near zero), and what each slope's variance is. Source: D.A. Belsley, E. Kuh
 * & R.E. Welsch, Regression Diagnostics, ch. 3 (from memory).
 */
import { jacobiEigen } from '../../mechanics/linear-algebra/jacobi-eigen.js';

export interface Directions {
  /** Of the correlation matrix of the columns. */
  readonly values: readonly number[];
  readonly vectors: readonly (readonly number[])[];
  /** Eigenvalues below this count as never varied. */
  readonly least: number;
  /** Lengths of the centred columns. */
  readonly lengths: readonly number[];
}

export interface Fit {
  /** Change of y for one unit of each column; means nothing for a column that is not clear of the others. */
  readonly slopes: readonly number[];
  /** Variance of each slope for a scatter of one in y. */
  readonly variances: readonly number[];
  /** Value at the mean of every column. */
  readonly mean: number;
  /** What each row comes to with the slopes. */
  readonly fitted: readonly number[];
  /** What is left over: sum of squares, and rows beyond the number of unknowns. */
  readonly leftover: { readonly squares: number; readonly freedom: number };
}

/** A variance inflated a hundredfold: by common practice the columns cannot be told apart any more. */
export const LEAST_VARIED = 0.01;

/** `columns`: each as long as there are rows, none of them constant. `y`: a number for each row. */
export function leastSquares(
  columns: readonly (readonly number[])[],
  y: readonly number[],
  least: number = LEAST_VARIED,
): Fit {
  const centred = columns.map(centre);
  const { values, vectors, lengths } = directionsOf(columns, least);
  const mean = meanOf(y);
  const right = centred.map((column, i) => dot(column, centre(y)) / lengths[i]!);
  const slopes = columns.map(() => 0);
  const variances = columns.map(() => 0);
  let rank = 0;
  values.forEach((value, k) => {
    if (value < least) return;
    rank += 1;
    const along = dot(vectors[k]!, right) / value;
    vectors[k]!.forEach((part, i) => {
      slopes[i]! += (along * part) / lengths[i]!;
      variances[i]! += part ** 2 / value / lengths[i]! ** 2;
    });
  });
  const fitted = y.map((_, row) => slopes.reduce((at, slope, i) => at + slope * centred[i]![row]!, mean));
  const squares = y.reduce((sum, one, row) => sum + (one - fitted[row]!) ** 2, 0);
  return { slopes, variances, mean, fitted, leftover: { squares, freedom: y.length - 1 - rank } };
}

export function directionsOf(columns: readonly (readonly number[])[], least: number = LEAST_VARIED): Directions {
  const centred = columns.map(centre);
  const lengths = centred.map((column) => Math.sqrt(dot(column, column)));
  const correlation = centred.map((a, i) => centred.map((b, j) => dot(a, b) / (lengths[i]! * lengths[j]!)));
  return { ...jacobiEigen(correlation), least, lengths };
}

export function correlationOf(a: readonly number[], b: readonly number[]): number {
  const [x, y] = [centre(a), centre(b)];
  return dot(x, y) / Math.sqrt(dot(x, x) * dot(y, y));
}

/** Whether anything happens in a column beyond rounding. */
export function isVaried(column: readonly number[]): boolean {
  return Math.max(...column) - Math.min(...column) > 1e-9 * Math.max(...column.map(Math.abs));
}

function centre(column: readonly number[]): readonly number[] {
  const mean = meanOf(column);
  return column.map((value) => value - mean);
}

function meanOf(column: readonly number[]): number {
  return column.reduce((sum, value) => sum + value, 0) / column.length;
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}
