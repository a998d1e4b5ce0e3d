import { MechanicsError } from '../error.js';

/**
 * Solves a small square system by elimination with row pivoting; the inputs stay untouched. Throws when it is
 * singular.
 */
export function solveDense(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length;
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  for (let column = 0; column < n; column += 1) {
    let best = column;
    for (let i = column + 1; i < n; i += 1) {
      if (Math.abs(rows[i]![column]!) > Math.abs(rows[best]![column]!)) best = i;
    }
    [rows[column], rows[best]] = [rows[best]!, rows[column]!];
    const pivot = rows[column]!;
    if (!(Math.abs(pivot[column]!) > 0)) {
      throw new MechanicsError('curve', 'These dimensions do not define a curve.');
    }
    for (let i = column + 1; i < n; i += 1) {
      const row = rows[i]!;
      const factor = row[column]! / pivot[column]!;
      if (factor === 0) continue;
      for (let j = column; j <= n; j += 1) row[j] = row[j]! - factor * pivot[j]!;
    }
  }
  const solution = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = rows[i]![n]!;
    for (let j = i + 1; j < n; j += 1) sum -= rows[i]![j]! * solution[j]!;
    solution[i] = sum / rows[i]![i]!;
  }
  return solution;
}
