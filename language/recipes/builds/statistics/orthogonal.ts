/**
 * Least squares by Householder's reflections: exact to rounding where normal equations lose half the digits. Source: G.H.
 * Golub & C.F. Van Loan, Matrix Computations, sec. 5.3 (from memory).
 */
import type { Matrix } from './cholesky.js';

export interface Solved {
  readonly solution: readonly number[];
  /** (XᵀX)⁻¹, k × k. */
  readonly inverse: Matrix;
  /** Sum of squares of what is left over. */
  readonly squares: number;
  /** log |XᵀX| */
  readonly logDeterminant: number;
}

/** A column with less than this of its length outside the others cannot be told from them. */
const DEPENDENT = 1e-9;

/** `rows`: n × k with n ≥ k, `right`: n. Undefined where the columns depend on one another. */
export function solveLeastSquares(rows: Matrix, right: readonly number[]): Solved | undefined {
  const width = rows[0]?.length ?? 0;
  if (rows.length < width) return undefined;
  const a = rows.map((row, i) => [...row, right[i]!]);
  for (let k = 0; k < width; k += 1) {
    const whole = Math.hypot(...a.map((row) => row[k]!));
    const length = Math.hypot(...a.slice(k).map((row) => row[k]!));
    if (!(length > DEPENDENT * whole)) return undefined;
    reflect(a, k, length);
  }
  const upper = a.slice(0, width).map((row) => row.slice(0, width));
  const inverse = inverseOfUpper(upper);
  const top = a.slice(0, width).map((row) => row[width]!);
  return {
    solution: inverse.map((row) => row.reduce((sum, value, j) => sum + value * top[j]!, 0)),
    inverse: inverse.map((x) => inverse.map((y) => x.reduce((sum, value, j) => sum + value * y[j]!, 0))),
    squares: a.slice(width).reduce((sum, row) => sum + row[width]! ** 2, 0),
    logDeterminant: 2 * upper.reduce((sum, row, i) => sum + Math.log(Math.abs(row[i]!)), 0),
  };
}

function reflect(a: number[][], k: number, length: number): void {
  const alpha = a[k]![k]! > 0 ? -length : length;
  const mirror = a.map((row, i) => (i < k ? 0 : i === k ? row[k]! - alpha : row[k]!));
  const square = mirror.reduce((sum, value) => sum + value * value, 0);
  if (square === 0) return;
  for (let j = k; j < a[0]!.length; j += 1) {
    let along = 0;
    for (let i = k; i < a.length; i += 1) along += mirror[i]! * a[i]![j]!;
    const factor = (2 * along) / square;
    for (let i = k; i < a.length; i += 1) a[i]![j]! -= factor * mirror[i]!;
  }
}

function inverseOfUpper(upper: Matrix): number[][] {
  const n = upper.length;
  const inverse = upper.map(() => new Array<number>(n).fill(0));
  for (let j = 0; j < n; j += 1) {
    inverse[j]![j] = 1 / upper[j]![j]!;
    for (let i = j - 1; i >= 0; i -= 1) {
      let sum = 0;
      for (let k = i + 1; k <= j; k += 1) sum += upper[i]![k]! * inverse[k]![j]!;
      inverse[i]![j] = -sum / upper[i]![i]!;
    }
  }
  return inverse;
}
