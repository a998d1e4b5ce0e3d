/** The lower triangle L of a positive matrix, A = L·Lᵀ. Source: G.H. Golub & C.F. Van Loan, Matrix Computations, sec. 4.2 (from memory). */

export type Matrix = readonly (readonly number[])[];

/** Undefined where the matrix (n × n, symmetric) is not positive definite. */
export function cholesky(matrix: Matrix): Matrix | undefined {
  const lower: number[][] = [];
  for (let i = 0; i < matrix.length; i += 1) {
    const row: number[] = [];
    for (let j = 0; j <= i; j += 1) {
      let left = matrix[i]![j]!;
      const other = j === i ? row : lower[j]!;
      for (let k = 0; k < j; k += 1) left -= row[k]! * other[k]!;
      if (j < i) row.push(left / other[j]!);
      else if (left > 0) row.push(Math.sqrt(left));
      else return undefined;
    }
    lower.push(row);
  }
  return lower;
}

/** L⁻¹·b */
export function forward(lower: Matrix, right: readonly number[]): readonly number[] {
  const found: number[] = [];
  lower.forEach((row, i) => {
    let left = right[i]!;
    for (let k = 0; k < i; k += 1) left -= row[k]! * found[k]!;
    found.push(left / row[i]!);
  });
  return found;
}

/** L⁻ᵀ·b */
export function backward(lower: Matrix, right: readonly number[]): readonly number[] {
  const found = [...right];
  for (let i = lower.length - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < lower.length; k += 1) found[i]! -= lower[k]![i]! * found[k]!;
    found[i]! /= lower[i]![i]!;
  }
  return found;
}

/** log |A| of the matrix that was factored. */
export function logDeterminant(lower: Matrix): number {
  return 2 * lower.reduce((sum, row, i) => sum + Math.log(row[i]!), 0);
}
