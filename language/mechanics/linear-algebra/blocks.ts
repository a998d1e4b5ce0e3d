/**
 * Blocks of four vectors, interleaved: number c of entry i stands at 4 i + c. Every number read is used four times, which is
 * what makes solving and orthogonalising fast in plain JavaScript.
 */

export const BLOCK = 4;

/** Interleaves up to four vectors; missing ones are zero. */
export function interleave(vectors: readonly Float64Array[], size: number): Float64Array {
  const block = new Float64Array(BLOCK * size);
  vectors.forEach((vector, c) => {
    for (let i = 0; i < size; i++) block[BLOCK * i + c] = vector[i]!;
  });
  return block;
}

/** Vector `c` of a block. */
export function columnOf(block: Float64Array, c: number): Float64Array {
  const vector = new Float64Array(block.length / BLOCK);
  for (let i = 0; i < vector.length; i++) vector[i] = block[BLOCK * i + c]!;
  return vector;
}

/** `gram[4 p + q]` = aₚ · b_q */
export function gramOf(a: Float64Array, b: Float64Array, gram: Float64Array): void {
  let g00 = 0;
  let g01 = 0;
  let g02 = 0;
  let g03 = 0;
  let g10 = 0;
  let g11 = 0;
  let g12 = 0;
  let g13 = 0;
  let g20 = 0;
  let g21 = 0;
  let g22 = 0;
  let g23 = 0;
  let g30 = 0;
  let g31 = 0;
  let g32 = 0;
  let g33 = 0;
  for (let i = 0; i < a.length; i += 4) {
    const b0 = b[i]!;
    const b1 = b[i + 1]!;
    const b2 = b[i + 2]!;
    const b3 = b[i + 3]!;
    const a0 = a[i]!;
    g00 += a0 * b0;
    g01 += a0 * b1;
    g02 += a0 * b2;
    g03 += a0 * b3;
    const a1 = a[i + 1]!;
    g10 += a1 * b0;
    g11 += a1 * b1;
    g12 += a1 * b2;
    g13 += a1 * b3;
    const a2 = a[i + 2]!;
    g20 += a2 * b0;
    g21 += a2 * b1;
    g22 += a2 * b2;
    g23 += a2 * b3;
    const a3 = a[i + 3]!;
    g30 += a3 * b0;
    g31 += a3 * b1;
    g32 += a3 * b2;
    g33 += a3 * b3;
  }
  gram.set([g00, g01, g02, g03, g10, g11, g12, g13, g20, g21, g22, g23, g30, g31, g32, g33]);
}

/** y −= x H, with H 4 × 4 as `gramOf` writes it. */
export function subtractProduct(y: Float64Array, x: Float64Array, h: Float64Array): void {
  const [h00, h01, h02, h03, h10, h11, h12, h13, h20, h21, h22, h23, h30, h31, h32, h33] = h as unknown as Sixteen;
  for (let i = 0; i < y.length; i += 4) {
    const x0 = x[i]!;
    const x1 = x[i + 1]!;
    const x2 = x[i + 2]!;
    const x3 = x[i + 3]!;
    y[i]! -= x0 * h00 + x1 * h10 + x2 * h20 + x3 * h30;
    y[i + 1]! -= x0 * h01 + x1 * h11 + x2 * h21 + x3 * h31;
    y[i + 2]! -= x0 * h02 + x1 * h12 + x2 * h22 + x3 * h32;
    y[i + 3]! -= x0 * h03 + x1 * h13 + x2 * h23 + x3 * h33;
  }
}

/** x ← x R⁻¹ for upper triangular R (4 p + q, p ≤ q); a zero on its diagonal makes that vector zero. */
export function divideByTriangle(x: Float64Array, r: Float64Array): void {
  const [r00, r01, r02, r03, , r11, r12, r13, , , r22, r23, , , , r33] = r as unknown as Sixteen;
  const d0 = r00 > 0 ? 1 / r00 : 0;
  const d1 = r11 > 0 ? 1 / r11 : 0;
  const d2 = r22 > 0 ? 1 / r22 : 0;
  const d3 = r33 > 0 ? 1 / r33 : 0;
  for (let i = 0; i < x.length; i += 4) {
    const x0 = x[i]! * d0;
    const x1 = (x[i + 1]! - x0 * r01) * d1;
    const x2 = (x[i + 2]! - x0 * r02 - x1 * r12) * d2;
    x[i] = x0;
    x[i + 1] = x1;
    x[i + 2] = x2;
    x[i + 3] = (x[i + 3]! - x0 * r03 - x1 * r13 - x2 * r23) * d3;
  }
}

/** Upper triangular R with Rᵀ R = the 4 × 4 `gram`; a pivot below `least` of its own start gives a zero row. */
export function triangleOf(gram: Float64Array, least: number): Float64Array {
  const r = new Float64Array(16);
  for (let j = 0; j < 4; j++) {
    let pivot = gram[5 * j]!;
    for (let k = 0; k < j; k++) pivot -= r[4 * k + j]! ** 2;
    if (!(pivot > least * gram[5 * j]!)) continue;
    const root = Math.sqrt(pivot);
    r[5 * j] = root;
    for (let q = j + 1; q < 4; q++) {
      let sum = gram[4 * j + q]!;
      for (let k = 0; k < j; k++) sum -= r[4 * k + j]! * r[4 * k + q]!;
      r[4 * j + q] = sum / root;
    }
  }
  return r;
}

type Sixteen = readonly [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
];
