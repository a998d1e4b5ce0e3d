/** Eigenvalues and vectors of a small dense symmetric matrix: Householder tridiagonalisation and implicit QL (B.N. Parlett, The Symmetric Eigenvalue Problem, ch. 7–8; EISPACK tred2/tql2; from memory). */

export interface SymmetricEigen {
  /** Descending. */
  readonly values: Float64Array;
  /** Row i is the vector of value i. */
  readonly vectors: readonly Float64Array[];
}

/** `matrix`: rows of at least `n` numbers, symmetric; not changed. */
export function symmetricEigen(matrix: readonly ArrayLike<number>[], n: number): SymmetricEigen {
  const z = Array.from({ length: n }, (_, i) => Float64Array.from({ length: n }, (_, j) => matrix[i]![j]!));
  const d = new Float64Array(n);
  const e = new Float64Array(n);
  tridiagonalise(z, d, e, n);
  implicitQL(z, d, e, n);
  const order = Array.from({ length: n }, (_, i) => i).sort((a, b) => d[b]! - d[a]!);
  return {
    values: Float64Array.from(order, (i) => d[i]!),
    vectors: order.map((i) => Float64Array.from({ length: n }, (_, k) => z[k]![i]!)),
  };
}

function tridiagonalise(z: Float64Array[], d: Float64Array, e: Float64Array, n: number): void {
  for (let i = n - 1; i > 0; i--) {
    const row = z[i]!;
    let h = 0;
    let scale = 0;
    for (let k = 0; k < i; k++) scale += Math.abs(row[k]!);
    if (i === 1 || scale === 0) {
      e[i] = row[i - 1]!;
    } else {
      for (let k = 0; k < i; k++) {
        row[k]! /= scale;
        h += row[k]! * row[k]!;
      }
      const f = row[i - 1]!;
      const g = f >= 0 ? -Math.sqrt(h) : Math.sqrt(h);
      e[i] = scale * g;
      h -= f * g;
      row[i - 1] = f - g;
      let sum = 0;
      for (let j = 0; j < i; j++) {
        z[j]![i] = row[j]! / h;
        let t = 0;
        for (let k = 0; k <= j; k++) t += z[j]![k]! * row[k]!;
        for (let k = j + 1; k < i; k++) t += z[k]![j]! * row[k]!;
        e[j] = t / h;
        sum += e[j]! * row[j]!;
      }
      const hh = sum / (h + h);
      for (let j = 0; j < i; j++) {
        const fj = row[j]!;
        const gj = e[j]! - hh * fj;
        e[j] = gj;
        for (let k = 0; k <= j; k++) z[j]![k]! -= fj * e[k]! + gj * row[k]!;
      }
    }
    d[i] = h;
  }
  d[0] = 0;
  e[0] = 0;
  for (let i = 0; i < n; i++) {
    if (d[i] !== 0) {
      for (let j = 0; j < i; j++) {
        let g = 0;
        for (let k = 0; k < i; k++) g += z[i]![k]! * z[k]![j]!;
        for (let k = 0; k < i; k++) z[k]![j]! -= g * z[k]![i]!;
      }
    }
    d[i] = z[i]![i]!;
    z[i]![i] = 1;
    for (let j = 0; j < i; j++) z[j]![i] = z[i]![j] = 0;
  }
}

function implicitQL(z: Float64Array[], d: Float64Array, e: Float64Array, n: number): void {
  for (let i = 1; i < n; i++) e[i - 1] = e[i]!;
  e[n - 1] = 0;
  for (let l = 0; l < n; l++) {
    for (let sweep = 0; sweep < 60; sweep++) {
      let m = l;
      for (; m < n - 1; m++) {
        const near = Math.abs(d[m]!) + Math.abs(d[m + 1]!);
        if (Math.abs(e[m]!) <= Number.EPSILON * near) break;
      }
      if (m === l) break;
      let g = (d[l + 1]! - d[l]!) / (2 * e[l]!);
      let r = Math.hypot(g, 1);
      g = d[m]! - d[l]! + e[l]! / (g + (g >= 0 ? r : -r));
      let s = 1;
      let c = 1;
      let p = 0;
      let i = m - 1;
      for (; i >= l; i--) {
        const f = s * e[i]!;
        const b = c * e[i]!;
        r = Math.hypot(f, g);
        e[i + 1] = r;
        if (r === 0) {
          d[i + 1]! -= p;
          e[m] = 0;
          break;
        }
        s = f / r;
        c = g / r;
        g = d[i + 1]! - p;
        r = (d[i]! - g) * s + 2 * c * b;
        p = s * r;
        d[i + 1] = g + p;
        g = c * r - b;
        for (let k = 0; k < n; k++) {
          const row = z[k]!;
          const high = row[i + 1]!;
          row[i + 1] = s * row[i]! + c * high;
          row[i] = c * row[i]! - s * high;
        }
      }
      if (r === 0 && i >= l) continue;
      d[l]! -= p;
      e[l] = g;
      e[m] = 0;
    }
  }
}
