/**
 * Dense kernels on row-major blocks inside typed arrays. Four rows by four columns at a time are kept in local variables, so
 * that each number read is used four times: two to three times faster than plain dot products.
 */

/**
 * Cholesky of the upper-left `n × n` of a row-major block with `rows` rows of length `n` at `at` (lower part read and
 * written), and L₂₁ = A₂₁ L₁₁⁻ᵀ in the rows below. Returns −1, or the column whose pivot is not above `least[column]`.
 */
export function factorPanel(a: Float64Array, at: number, n: number, rows: number, least: Float64Array, leastAt: number): number {
  for (let j0 = 0; j0 < n; j0 += 4) {
    const j1 = Math.min(j0 + 4, n);
    if (j0 > 0) {
      if (j1 - j0 === 4) {
        let i = j0;
        for (; i + 4 <= rows; i += 4) subtractTile(a, at + i * n, at + j0 * n, j0, n, a, at + i * n + j0, n);
        for (; i < rows; i++) subtractRow(a, at + i * n, at + j0 * n, j0, n, 4, at + i * n + j0);
      } else {
        for (let i = j0; i < rows; i++) subtractRow(a, at + i * n, at + j0 * n, j0, n, j1 - j0, at + i * n + j0);
      }
    }
    for (let j = j0; j < j1; j++) {
      const jj = at + j * n;
      let pivot = a[jj + j]!;
      for (let k = j0; k < j; k++) pivot -= a[jj + k]! * a[jj + k]!;
      if (!(pivot > least[leastAt + j]!)) return j;
      pivot = Math.sqrt(pivot);
      a[jj + j] = pivot;
      const inverse = 1 / pivot;
      for (let i = j + 1; i < rows; i++) {
        const ii = at + i * n;
        let sum = a[ii + j]!;
        for (let k = j0; k < j; k++) sum -= a[ii + k]! * a[jj + k]!;
        a[ii + j] = sum * inverse;
      }
    }
  }
  return -1;
}

/** C −= L Lᵀ, lower part: C is `m × m` at `c`; L has `m` rows of length `n` at `l`. Entries just above the diagonal may be touched. */
export function subtractSquare(a: Float64Array, l: number, n: number, m: number, out: Float64Array, c: number): void {
  let i = 0;
  for (; i + 4 <= m; i += 4) {
    for (let j = 0; j <= i; j += 4) subtractTile(a, l + i * n, l + j * n, n, n, out, c + i * m + j, m);
  }
  for (; i < m; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = 0; k < n; k++) sum += a[l + i * n + k]! * a[l + j * n + k]!;
      out[c + i * m + j]! -= sum;
    }
  }
}

/** Four rows at `p` against four rows at `q`, stride `n`, over `length` columns; subtracted from four rows of `out` at `c` with stride `m`. */
function subtractTile(
  a: Float64Array,
  p: number,
  q: number,
  length: number,
  n: number,
  out: Float64Array,
  c: number,
  m: number,
): void {
  let s00 = 0;
  let s01 = 0;
  let s02 = 0;
  let s03 = 0;
  let s10 = 0;
  let s11 = 0;
  let s12 = 0;
  let s13 = 0;
  let s20 = 0;
  let s21 = 0;
  let s22 = 0;
  let s23 = 0;
  let s30 = 0;
  let s31 = 0;
  let s32 = 0;
  let s33 = 0;
  const p1 = p + n;
  const p2 = p1 + n;
  const p3 = p2 + n;
  const q1 = q + n;
  const q2 = q1 + n;
  const q3 = q2 + n;
  for (let k = 0; k < length; k++) {
    const b0 = a[q + k]!;
    const b1 = a[q1 + k]!;
    const b2 = a[q2 + k]!;
    const b3 = a[q3 + k]!;
    const x0 = a[p + k]!;
    s00 += x0 * b0;
    s01 += x0 * b1;
    s02 += x0 * b2;
    s03 += x0 * b3;
    const x1 = a[p1 + k]!;
    s10 += x1 * b0;
    s11 += x1 * b1;
    s12 += x1 * b2;
    s13 += x1 * b3;
    const x2 = a[p2 + k]!;
    s20 += x2 * b0;
    s21 += x2 * b1;
    s22 += x2 * b2;
    s23 += x2 * b3;
    const x3 = a[p3 + k]!;
    s30 += x3 * b0;
    s31 += x3 * b1;
    s32 += x3 * b2;
    s33 += x3 * b3;
  }
  out[c]! -= s00;
  out[c + 1]! -= s01;
  out[c + 2]! -= s02;
  out[c + 3]! -= s03;
  out[c + m]! -= s10;
  out[c + m + 1]! -= s11;
  out[c + m + 2]! -= s12;
  out[c + m + 3]! -= s13;
  out[c + 2 * m]! -= s20;
  out[c + 2 * m + 1]! -= s21;
  out[c + 2 * m + 2]! -= s22;
  out[c + 2 * m + 3]! -= s23;
  out[c + 3 * m]! -= s30;
  out[c + 3 * m + 1]! -= s31;
  out[c + 3 * m + 2]! -= s32;
  out[c + 3 * m + 3]! -= s33;
}

function subtractRow(a: Float64Array, p: number, q: number, length: number, n: number, columns: number, c: number): void {
  for (let j = 0; j < columns; j++) {
    let sum = 0;
    const row = q + j * n;
    for (let k = 0; k < length; k++) sum += a[p + k]! * a[row + k]!;
    a[c + j]! -= sum;
  }
}

/** For a block of four interleaved vectors: solves L₁₁ Y = X in place at `xAt`, then writes L₂₁ Y into `below`. */
export function forwardPanel(a: Float64Array, at: number, n: number, rows: number, x: Float64Array, xAt: number, below: Float64Array): void {
  for (let i = 0; i < n; i++) {
    const row = at + i * n;
    const xi = xAt + 4 * i;
    let s0 = x[xi]!;
    let s1 = x[xi + 1]!;
    let s2 = x[xi + 2]!;
    let s3 = x[xi + 3]!;
    for (let k = 0, v = xAt; k < i; k++, v += 4) {
      const l = a[row + k]!;
      s0 -= l * x[v]!;
      s1 -= l * x[v + 1]!;
      s2 -= l * x[v + 2]!;
      s3 -= l * x[v + 3]!;
    }
    const inverse = 1 / a[row + i]!;
    x[xi] = s0 * inverse;
    x[xi + 1] = s1 * inverse;
    x[xi + 2] = s2 * inverse;
    x[xi + 3] = s3 * inverse;
  }
  let i = n;
  for (; i + 2 <= rows; i += 2) {
    const r0 = at + i * n;
    const r1 = r0 + n;
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    let s3 = 0;
    let t0 = 0;
    let t1 = 0;
    let t2 = 0;
    let t3 = 0;
    for (let k = 0, v = xAt; k < n; k++, v += 4) {
      const l = a[r0 + k]!;
      const m = a[r1 + k]!;
      const x0 = x[v]!;
      const x1 = x[v + 1]!;
      const x2 = x[v + 2]!;
      const x3 = x[v + 3]!;
      s0 += l * x0;
      s1 += l * x1;
      s2 += l * x2;
      s3 += l * x3;
      t0 += m * x0;
      t1 += m * x1;
      t2 += m * x2;
      t3 += m * x3;
    }
    const b = 4 * (i - n);
    below[b] = s0;
    below[b + 1] = s1;
    below[b + 2] = s2;
    below[b + 3] = s3;
    below[b + 4] = t0;
    below[b + 5] = t1;
    below[b + 6] = t2;
    below[b + 7] = t3;
  }
  for (; i < rows; i++) {
    for (let c = 0; c < 4; c++) {
      let sum = 0;
      for (let k = 0; k < n; k++) sum += a[at + i * n + k]! * x[xAt + 4 * k + c]!;
      below[4 * (i - n) + c] = sum;
    }
  }
}

/** For a block: X ← L₁₁⁻ᵀ (X − L₂₁ᵀ below), in place at `xAt`. */
export function backwardPanel(a: Float64Array, at: number, n: number, rows: number, x: Float64Array, xAt: number, below: Float64Array): void {
  let i = n;
  for (; i + 2 <= rows; i += 2) {
    const r0 = at + i * n;
    const r1 = r0 + n;
    const b = 4 * (i - n);
    const b0 = below[b]!;
    const b1 = below[b + 1]!;
    const b2 = below[b + 2]!;
    const b3 = below[b + 3]!;
    const c0 = below[b + 4]!;
    const c1 = below[b + 5]!;
    const c2 = below[b + 6]!;
    const c3 = below[b + 7]!;
    for (let k = 0, v = xAt; k < n; k++, v += 4) {
      const l = a[r0 + k]!;
      const m = a[r1 + k]!;
      x[v]! -= l * b0 + m * c0;
      x[v + 1]! -= l * b1 + m * c1;
      x[v + 2]! -= l * b2 + m * c2;
      x[v + 3]! -= l * b3 + m * c3;
    }
  }
  for (; i < rows; i++) {
    for (let k = 0; k < n; k++) {
      const l = a[at + i * n + k]!;
      for (let c = 0; c < 4; c++) x[xAt + 4 * k + c]! -= l * below[4 * (i - n) + c]!;
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    const row = at + k * n;
    const inverse = 1 / a[row + k]!;
    const xk = xAt + 4 * k;
    const x0 = x[xk]! * inverse;
    const x1 = x[xk + 1]! * inverse;
    const x2 = x[xk + 2]! * inverse;
    const x3 = x[xk + 3]! * inverse;
    x[xk] = x0;
    x[xk + 1] = x1;
    x[xk + 2] = x2;
    x[xk + 3] = x3;
    for (let m = 0, v = xAt; m < k; m++, v += 4) {
      const l = a[row + m]!;
      x[v]! -= l * x0;
      x[v + 1]! -= l * x1;
      x[v + 2]! -= l * x2;
      x[v + 3]! -= l * x3;
    }
  }
}
