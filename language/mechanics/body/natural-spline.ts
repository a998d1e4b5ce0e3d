/** Natural cubic spline: second derivative zero at both ends, continuous throughout. */
import { MechanicsError } from '../error.js';
import { solveDense } from '../linear-algebra/dense-solve.js';

export interface Spline {
  /** Value at `x`; beyond the knots the end cubics go on. */
  value(x: number): number;
  slope(x: number): number;
}

/** Spline through the points (x, y). Throws unless the x rise strictly and there are at least two. */
export function naturalSpline(xs: readonly number[], ys: readonly number[]): Spline {
  const bends = secondDerivatives(xs, ys);
  const piece = (x: number): number => {
    let i = 0;
    while (i < xs.length - 2 && x > xs[i + 1]!) i += 1;
    return i;
  };
  return {
    value(x) {
      const i = piece(x);
      const h = xs[i + 1]! - xs[i]!;
      const a = (xs[i + 1]! - x) / h;
      const b = 1 - a;
      return a * ys[i]! + b * ys[i + 1]! + (((a ** 3 - a) * bends[i]! + (b ** 3 - b) * bends[i + 1]!) * h * h) / 6;
    },
    slope(x) {
      const i = piece(x);
      const h = xs[i + 1]! - xs[i]!;
      const a = (xs[i + 1]! - x) / h;
      const b = 1 - a;
      return (ys[i + 1]! - ys[i]!) / h + (((1 - 3 * a * a) * bends[i]! + (3 * b * b - 1) * bends[i + 1]!) * h) / 6;
    },
  };
}

/** Second derivative at each knot. */
export function secondDerivatives(xs: readonly number[], ys: readonly number[]): number[] {
  const n = xs.length;
  if (n < 2 || ys.length !== n) throw new MechanicsError('stations', 'A curve needs at least two points.');
  for (let i = 1; i < n; i += 1) {
    if (!(xs[i]! > xs[i - 1]!)) throw new MechanicsError('stations', 'The stations must rise from tail to neck.');
  }
  if (n === 2) return [0, 0];
  const size = n - 2;
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  for (let i = 1; i < n - 1; i += 1) {
    const before = xs[i]! - xs[i - 1]!;
    const after = xs[i + 1]! - xs[i]!;
    const row = matrix[i - 1]!;
    row[i - 1] = (before + after) / 3;
    if (i > 1) row[i - 2] = before / 6;
    if (i < n - 2) row[i] = after / 6;
    right[i - 1] = (ys[i + 1]! - ys[i]!) / after - (ys[i]! - ys[i - 1]!) / before;
  }
  return [0, ...solveDense(matrix, right), 0];
}
