/** A small system of equations. */

/** Solves `matrix` x = `right` by elimination with row exchange; undefined when a pivot falls below `least` of the greatest entry. */
export function solveDense(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
  least = 1e-12,
): number[] | undefined {
  const n = right.length;
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  const scale = Math.max(...rows.map((row) => Math.max(...row.slice(0, n).map(Math.abs))));
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[pivot]![k]!)) pivot = i;
    if (!(Math.abs(rows[pivot]![k]!) > least * scale)) return undefined;
    [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
    for (let i = k + 1; i < n; i++) {
      const factor = rows[i]![k]! / rows[k]![k]!;
      for (let j = k; j <= n; j++) rows[i]![j]! -= factor * rows[k]![j]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let sum = rows[k]![n]!;
    for (let j = k + 1; j < n; j++) sum -= rows[k]![j]! * x[j]!;
    x[k] = sum / rows[k]![k]!;
  }
  return x;
}
