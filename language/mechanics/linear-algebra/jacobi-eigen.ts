/**
 * Beside the faster `symmetric-eigen`, for matrices whose small eigenvalues decide: eigenvalues (rising) and unit eigenvectors of a small symmetric matrix by Jacobi's rotations; accurate to rounding,
 * including the small eigenvalues of positive matrices. Source: G.H. Golub & C.F. Van Loan, Matrix Computations, sec.
 * 8.5 (from memory).
 */
export function jacobiEigen(matrix: readonly (readonly number[])[]): { values: number[]; vectors: number[][] } {
  const n = matrix.length;
  const a = matrix.map((row) => [...row]);
  const v = a.map((_, i) => a.map((__, j) => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < 60; sweep += 1) {
    let off = 0;
    for (let p = 0; p < n; p += 1) {
      for (let q = p + 1; q < n; q += 1) {
        const scale = Math.sqrt(Math.abs(a[p]![p]! * a[q]![q]!));
        off = Math.max(off, Math.abs(a[p]![q]!) / (scale || 1));
        if (a[p]![q] !== 0) rotate(a, v, p, q);
      }
    }
    if (off < 1e-16) break;
  }
  const order = a.map((_, i) => i).sort((i, j) => a[i]![i]! - a[j]![j]!);
  return { values: order.map((i) => a[i]![i]!), vectors: order.map((i) => v.map((row) => row[i]!)) };
}

function rotate(a: number[][], v: number[][], p: number, q: number): void {
  const theta = (a[q]![q]! - a[p]![p]!) / (2 * a[p]![q]!);
  const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  const pivot = a[p]![q]!;
  a[p]![p]! -= t * pivot;
  a[q]![q]! += t * pivot;
  a[p]![q] = 0;
  a[q]![p] = 0;
  for (let i = 0; i < a.length; i += 1) {
    if (i !== p && i !== q) {
      const [x, y] = [a[i]![p]!, a[i]![q]!];
      a[i]![p] = a[p]![i] = c * x - s * y;
      a[i]![q] = a[q]![i] = s * x + c * y;
    }
    const [x, y] = [v[i]![p]!, v[i]![q]!];
    v[i]![p] = c * x - s * y;
    v[i]![q] = s * x + c * y;
  }
}
