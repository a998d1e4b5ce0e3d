/**
 * Dense kernels on row-major blocks inside typed arrays. Three rows by three columns at a time are kept in local variables, so
 * that each number read is used three times: measured two to three times faster than plain dot products, and faster than four
 * by four, which runs out of registers.
 */

/**
 * Cholesky of the upper-left `n × n` of a row-major block with `rows` rows of length `n` at `at` (lower part read and
 * written), and L₂₁ = A₂₁ L₁₁⁻ᵀ in the rows below. Returns −1, or the column whose pivot is not above `least[leastAt + column]`.
 */
export function factorPanel(
  a: Float64Array,
  at: number,
  n: number,
  rows: number,
  least: Float64Array,
  leastAt: number,
): number {
  let j0 = 0;
  for (; j0 + 3 <= n; j0 += 3) {
    if (j0 > 0) {
      let i = j0;
      for (; i + 3 <= rows; i += 3) subtractTile(a, at + i * n, at + j0 * n, j0, n, a, at + i * n + j0, n);
      for (; i < rows; i++) subtractRow(a, at + i * n, at + j0 * n, j0, n, 3, a, at + i * n + j0);
    }
    const r0 = at + j0 * n + j0;
    const r1 = r0 + n;
    const r2 = r1 + n;
    const p0 = a[r0]!;
    if (!(p0 > least[leastAt + j0]!)) return j0;
    const l00 = Math.sqrt(p0);
    const d0 = 1 / l00;
    const l10 = a[r1]! * d0;
    const p1 = a[r1 + 1]! - l10 * l10;
    if (!(p1 > least[leastAt + j0 + 1]!)) return j0 + 1;
    const l11 = Math.sqrt(p1);
    const d1 = 1 / l11;
    const l20 = a[r2]! * d0;
    const l21 = (a[r2 + 1]! - l20 * l10) * d1;
    const p2 = a[r2 + 2]! - l20 * l20 - l21 * l21;
    if (!(p2 > least[leastAt + j0 + 2]!)) return j0 + 2;
    const l22 = Math.sqrt(p2);
    const d2 = 1 / l22;
    a[r0] = l00;
    a[r1] = l10;
    a[r1 + 1] = l11;
    a[r2] = l20;
    a[r2 + 1] = l21;
    a[r2 + 2] = l22;
    for (let i = j0 + 3, r = r2 + n; i < rows; i++, r += n) {
      const x0 = a[r]! * d0;
      const x1 = (a[r + 1]! - x0 * l10) * d1;
      a[r] = x0;
      a[r + 1] = x1;
      a[r + 2] = (a[r + 2]! - x0 * l20 - x1 * l21) * d2;
    }
  }
  for (; j0 < n; j0++) {
    const row = at + j0 * n;
    for (let i = j0; i < rows; i++) subtractRow(a, at + i * n, row, j0, n, 1, a, at + i * n + j0);
    const pivot = a[row + j0]!;
    if (!(pivot > least[leastAt + j0]!)) return j0;
    const root = Math.sqrt(pivot);
    a[row + j0] = root;
    for (let i = j0 + 1; i < rows; i++) a[at + i * n + j0]! /= root;
  }
  return -1;
}

/** C −= L Lᵀ, lower part: C is `m × m` at `c`; L has `m` rows of length `n` at `l`. Entries just above the diagonal may be touched. */
export function subtractSquare(a: Float64Array, l: number, n: number, m: number, out: Float64Array, c: number): void {
  let i = 0;
  for (; i + 3 <= m; i += 3) {
    for (let j = 0; j <= i; j += 3) subtractTile(a, l + i * n, l + j * n, n, n, out, c + i * m + j, m);
  }
  for (; i < m; i++) subtractRow(a, l + i * n, l, n, n, i + 1, out, c + i * m);
}

/** Three rows at `p` against three rows at `q`, stride `n`, over `length` columns; subtracted from three rows of `out` at `c` with stride `m`. */
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
  let s10 = 0;
  let s11 = 0;
  let s12 = 0;
  let s20 = 0;
  let s21 = 0;
  let s22 = 0;
  const p1 = p + n;
  const p2 = p1 + n;
  const q1 = q + n;
  const q2 = q1 + n;
  for (let k = 0; k < length; k++) {
    const b0 = a[q + k]!;
    const b1 = a[q1 + k]!;
    const b2 = a[q2 + k]!;
    const x0 = a[p + k]!;
    s00 += x0 * b0;
    s01 += x0 * b1;
    s02 += x0 * b2;
    const x1 = a[p1 + k]!;
    s10 += x1 * b0;
    s11 += x1 * b1;
    s12 += x1 * b2;
    const x2 = a[p2 + k]!;
    s20 += x2 * b0;
    s21 += x2 * b1;
    s22 += x2 * b2;
  }
  out[c]! -= s00;
  out[c + 1]! -= s01;
  out[c + 2]! -= s02;
  const c1 = c + m;
  out[c1]! -= s10;
  out[c1 + 1]! -= s11;
  out[c1 + 2]! -= s12;
  const c2 = c1 + m;
  out[c2]! -= s20;
  out[c2 + 1]! -= s21;
  out[c2 + 2]! -= s22;
}

/** One row at `p` against `columns` rows from `q` on, stride `n`. */
function subtractRow(
  a: Float64Array,
  p: number,
  q: number,
  length: number,
  n: number,
  columns: number,
  out: Float64Array,
  c: number,
): void {
  for (let j = 0; j < columns; j++) {
    let sum = 0;
    const row = q + j * n;
    for (let k = 0; k < length; k++) sum += a[p + k]! * a[row + k]!;
    out[c + j]! -= sum;
  }
}

/** For a block of four interleaved vectors: solves L₁₁ Y = X in place at `xAt`, then writes L₂₁ Y into `below`. */
export function forwardPanel(
  a: Float64Array,
  at: number,
  n: number,
  rows: number,
  x: Float64Array,
  xAt: number,
  below: Float64Array,
): void {
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
export function backwardPanel(
  a: Float64Array,
  at: number,
  n: number,
  rows: number,
  x: Float64Array,
  xAt: number,
  below: Float64Array,
): void {
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
