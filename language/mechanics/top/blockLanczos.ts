/**
 * The lowest modes of K φ = ω² M φ by shift-invert block Lanczos with full reorthogonalisation (R.G. Grimes, J.G. Lewis &
 * H.D. Simon, A shifted block Lanczos algorithm for solving sparse symmetric generalized eigenproblems, SIAM J. Matrix Anal.
 * Appl. 15, 1994, 228–272). A block finds equal frequencies that a single vector would miss.
 */
import { symmetricEigen } from './symmetricEigen.js';

export interface EigenProblem {
  readonly size: number;
  /** Solves (K + shift M) x = b in place. */
  solve(x: Float64Array): void;
  /** y ← M x */
  multiply(x: Float64Array, y: Float64Array): void;
  /** Known vectors to leave out (rigid motions), M-orthonormal. */
  readonly locked: readonly Float64Array[];
}

export interface Eigenpairs {
  /** Of (K + shift M) φ = λ M φ, ascending. */
  readonly values: Float64Array;
  /** M-normalised. */
  readonly vectors: readonly Float64Array[];
  /** Relative residual of each pair in the inverted problem. */
  readonly residuals: Float64Array;
}

/** The `wanted` lowest pairs to relative residual `tolerance`; fewer when the space is smaller; undefined when stopped or not converged within `most` vectors. */
export function lowestModes(
  problem: EigenProblem,
  start: readonly Float64Array[],
  wanted: number,
  tolerance: number,
  most: number,
  shouldStop: () => boolean,
): Eigenpairs | undefined {
  const { size, solve, multiply, locked } = problem;
  const lockedMass = locked.map((vector) => {
    const product = new Float64Array(size);
    multiply(vector, product);
    return product;
  });
  const basis: Float64Array[] = [];
  const massBasis: Float64Array[] = [];
  const t: Float64Array[] = [];
  const coefficients = new Float64Array(most + start.length);

  /** Orthonormalises `w` against everything so far and adds it; its components go into `coefficients`. False when nothing is left. */
  const append = (w: Float64Array): boolean => {
    coefficients.fill(0);
    const product = new Float64Array(size);
    multiply(w, product);
    const before = Math.sqrt(Math.max(0, dot(w, product)));
    for (let pass = 0; pass < 2; pass++) {
      for (let k = 0; k < locked.length; k++) subtract(w, dot(lockedMass[k]!, w), locked[k]!);
      for (let k = 0; k < basis.length; k++) {
        const c = dot(massBasis[k]!, w);
        coefficients[k]! += c;
        subtract(w, c, basis[k]!);
      }
    }
    multiply(w, product);
    const after = Math.sqrt(Math.max(0, dot(w, product)));
    if (!(after > 1e-11 * before)) return false;
    coefficients[basis.length] = after;
    for (let i = 0; i < size; i++) {
      w[i]! /= after;
      product[i]! /= after;
    }
    basis.push(w);
    massBasis.push(product);
    return true;
  };

  for (const vector of start) append(vector.slice());
  let from = 0;
  while (from < basis.length) {
    const to = basis.length;
    for (let k = from; k < to; k++) {
      if (shouldStop()) return undefined;
      const w = massBasis[k]!.slice();
      solve(w);
      append(w);
      t.push(coefficients.slice());
    }
    from = to;
    const complete = basis.length === to;
    if (to < Math.min(wanted + 2, size - locked.length) && !complete) continue;
    const found = ritz(t, to, basis.length);
    const count = Math.min(wanted, to);
    let converged = true;
    for (let i = 0; i < count; i++) converged &&= found.residuals[i]! <= tolerance * found.values[i]!;
    if (converged || complete) return pairs(found, basis, count, to, size);
    if (basis.length >= most) return undefined;
  }
  return undefined;
}

interface Ritz {
  readonly values: Float64Array;
  readonly vectors: readonly Float64Array[];
  readonly residuals: Float64Array;
}

/** `t[j]`: components of the inverted operator on basis vector j; rows `done`… are the part outside the space used so far. */
function ritz(t: readonly Float64Array[], done: number, all: number): Ritz {
  const square = Array.from({ length: done }, (_, i) =>
    Float64Array.from({ length: done }, (_, j) => (t[i]![j]! + t[j]![i]!) / 2),
  );
  const { values, vectors } = symmetricEigen(square, done);
  const residuals = Float64Array.from(vectors, (s) => {
    let sum = 0;
    for (let row = done; row < all; row++) {
      let part = 0;
      for (let j = 0; j < done; j++) part += t[j]![row]! * s[j]!;
      sum += part * part;
    }
    return Math.sqrt(sum);
  });
  return { values, vectors, residuals };
}

function pairs(found: Ritz, basis: readonly Float64Array[], count: number, done: number, size: number): Eigenpairs {
  const vectors = Array.from({ length: count }, (_, i) => {
    const vector = new Float64Array(size);
    for (let j = 0; j < done; j++) subtract(vector, -found.vectors[i]![j]!, basis[j]!);
    return vector;
  });
  return {
    values: Float64Array.from({ length: count }, (_, i) => 1 / found.values[i]!),
    vectors,
    residuals: Float64Array.from({ length: count }, (_, i) => found.residuals[i]! / found.values[i]!),
  };
}

function dot(a: Float64Array, b: Float64Array): number {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  const n = a.length;
  let i = 0;
  for (; i + 4 <= n; i += 4) {
    s0 += a[i]! * b[i]!;
    s1 += a[i + 1]! * b[i + 1]!;
    s2 += a[i + 2]! * b[i + 2]!;
    s3 += a[i + 3]! * b[i + 3]!;
  }
  for (; i < n; i++) s0 += a[i]! * b[i]!;
  return s0 + s1 + s2 + s3;
}

function subtract(y: Float64Array, factor: number, x: Float64Array): void {
  for (let i = 0; i < y.length; i++) y[i]! -= factor * x[i]!;
}
