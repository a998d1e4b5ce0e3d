/**
 * The lowest modes of K φ = ω² M φ by shift-invert block Lanczos with full reorthogonalisation (R.G. Grimes, J.G. Lewis &
 * H.D. Simon, A shifted block Lanczos algorithm for solving sparse symmetric generalized eigenproblems, SIAM J. Matrix Anal.
 * Appl. 15, 1994, 228–272). A block finds equal frequencies that a single vector would miss.
 */
import { BLOCK, columnOf, divideByTriangle, gramOf, subtractProduct, triangleOf } from './blocks.js';
import { symmetricEigen } from './symmetric-eigen.js';

export interface EigenProblem {
  readonly size: number;
  /** Solves (K + shift M) X = B in place, for a block. */
  readonly solve: (block: Float64Array) => void;
  /** Y ← M X, for a block. */
  readonly multiply: (x: Float64Array, y: Float64Array) => void;
  /** Blocks of known vectors to leave out (rigid motions), M-orthonormal. */
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

/** What is left of a vector after orthogonalising must be more than this share of its square. */
const DEPENDENT = 1e-24;

/** The `wanted` lowest pairs to relative residual `tolerance`; fewer when the space is smaller; undefined when stopped or not converged within `most` blocks. */
export function lowestModes(
  problem: EigenProblem,
  start: Float64Array,
  wanted: number,
  tolerance: number,
  most: number,
  shouldStop: () => boolean,
): Eigenpairs | undefined {
  const { size, locked } = problem;
  const solve: typeof problem.solve = (x) => problem.solve(x);
  const multiply: typeof problem.multiply = (x, y) => problem.multiply(x, y);
  const lockedMass = locked.map((block) => product(block, multiply));
  const basis: Float64Array[] = [];
  const massBasis: Float64Array[] = [];
  /** Components of the inverted operator: `t[j]` holds, for basis block j, 16 numbers for each row block. */
  const t: Float64Array[] = [];
  const gram = new Float64Array(16);

  /** Orthonormalises a block against everything so far and adds it. Its components go into `into`. False when nothing is left. */
  const append = (w: Float64Array, into: Float64Array): boolean => {
    for (let pass = 0; pass < 2; pass++) {
      for (let k = 0; k < locked.length; k++) {
        gramOf(lockedMass[k]!, w, gram);
        subtractProduct(w, locked[k]!, gram);
      }
      for (let k = 0; k < basis.length; k++) {
        gramOf(massBasis[k]!, w, gram);
        for (let i = 0; i < 16; i++) into[16 * k + i]! += gram[i]!;
        subtractProduct(w, basis[k]!, gram);
      }
    }
    const mass = product(w, multiply);
    gramOf(w, mass, gram);
    for (let c = 0; c < BLOCK; c++) {
      // By Pythagoras, the vector's square before was that of its components and of what is left.
      let before = gram[5 * c]!;
      for (let k = c; k < 16 * basis.length; k += BLOCK) before += into[k]! ** 2;
      if (!(gram[5 * c]! > DEPENDENT * before)) clear(gram, c);
    }
    const first = triangleOf(gram, 1e-13);
    divideByTriangle(w, first);
    divideByTriangle(mass, first);
    gramOf(w, mass, gram);
    const second = triangleOf(gram, 1e-13);
    divideByTriangle(w, second);
    divideByTriangle(mass, second);
    const total = triangleProduct(second, first);
    into.set(total, 16 * basis.length);
    if (!total.some((value) => value !== 0)) return false;
    basis.push(w);
    massBasis.push(mass);
    return true;
  };

  append(start.slice(), new Float64Array(16));
  for (let j = 0; j < basis.length; j++) {
    if (shouldStop()) return undefined;
    const w = massBasis[j]!.slice();
    solve(w);
    const components = new Float64Array(16 * (basis.length + 1));
    const complete = !append(w, components);
    t.push(components);
    const done = BLOCK * (j + 1);
    // Asking for the Ritz values earlier costs more than it can save.
    if (done < 3 * wanted && !complete) continue;
    const found = ritz(t, done);
    const count = Math.min(wanted, done);
    let converged = true;
    for (let i = 0; i < count; i++) converged &&= found.residuals[i]! <= tolerance * found.values[i]!;
    if (converged || complete) return pairs(found, basis, count, size);
    if (basis.length > most) return undefined;
  }
  return undefined;
}

function product(block: Float64Array, multiply: (x: Float64Array, y: Float64Array) => void): Float64Array {
  const result = new Float64Array(block.length);
  multiply(block, result);
  return result;
}

function clear(gram: Float64Array, c: number): void {
  for (let k = 0; k < 4; k++) gram[4 * k + c] = gram[4 * c + k] = 0;
}

/** R₂ R₁ of upper triangles. */
function triangleProduct(r2: Float64Array, r1: Float64Array): Float64Array {
  const result = new Float64Array(16);
  for (let i = 0; i < 4; i++) {
    for (let j = i; j < 4; j++) {
      for (let k = i; k <= j; k++) result[4 * i + j]! += r2[4 * i + k]! * r1[4 * k + j]!;
    }
  }
  return result;
}

interface Ritz {
  readonly values: Float64Array;
  readonly vectors: readonly Float64Array[];
  readonly residuals: Float64Array;
}

/** Entry of the projected operator: row and column counted over single vectors. */
function entry(t: readonly Float64Array[], row: number, column: number): number {
  return t[column >> 2]![16 * (row >> 2) + 4 * (row & 3) + (column & 3)] ?? 0;
}

/** `done`: vectors whose image is known; the rows after them are the part outside the space used so far. */
function ritz(t: readonly Float64Array[], done: number): Ritz {
  const square = Array.from({ length: done }, (_, i) =>
    Float64Array.from({ length: done }, (_, j) => (entry(t, i, j) + entry(t, j, i)) / 2),
  );
  const { values, vectors } = symmetricEigen(square, done);
  const residuals = Float64Array.from(vectors, (s) => {
    let sum = 0;
    for (let row = done; row < done + BLOCK; row++) {
      let part = 0;
      for (let j = done - BLOCK; j < done; j++) part += entry(t, row, j) * s[j]!;
      sum += part * part;
    }
    return Math.sqrt(sum);
  });
  return { values, vectors, residuals };
}

function pairs(found: Ritz, basis: readonly Float64Array[], count: number, size: number): Eigenpairs {
  const vectors: Float64Array[] = [];
  const weights = new Float64Array(16);
  for (let first = 0; first < count; first += BLOCK) {
    const block = new Float64Array(BLOCK * size);
    const width = Math.min(BLOCK, count - first);
    const blocks = found.vectors[0]!.length / BLOCK;
    for (let j = 0; j < blocks; j++) {
      weights.fill(0);
      for (let p = 0; p < BLOCK; p++) {
        for (let q = 0; q < width; q++) weights[4 * p + q] = -found.vectors[first + q]![BLOCK * j + p]!;
      }
      subtractProduct(block, basis[j]!, weights);
    }
    for (let q = 0; q < width; q++) vectors.push(columnOf(block, q));
  }
  return {
    values: Float64Array.from({ length: count }, (_, i) => 1 / found.values[i]!),
    vectors,
    residuals: Float64Array.from({ length: count }, (_, i) => found.residuals[i]! / found.values[i]!),
  };
}
