/**
 * A changed top from its last full solution: the old factor gives how each mode and the deflection change to first order, and
 * the best combination of old vectors and these changes (Rayleigh–Ritz; U. Kirsch, Reanalysis of Structures, 2008, combined
 * approximations) is right to third order in the change.
 */
import { BLOCK, columnOf, gramOf, interleave, subtractProduct } from '../../linear-algebra/blocks.js';
import { discreteTop } from './discrete.js';
import { elementChanges } from '../fit/element-changes.js';
import { massOperator, type FactoredTop } from './factored-top.js';
import { loadBlock } from './full-solve.js';
import type { TopModel } from '../model.js';
import type { PlateElement } from '../element/plate-element.js';
import type { SolvedState } from '../solution.js';
import { SmallSystem } from '../../linear-algebra/small-system.js';

/** Relative shift of a mode by the first-order changes beyond which a full solution is due: the error left is of the order of its square. */
const MOST_SHIFT = 0.01;

/** Undefined when the change is too large, or of a kind that needs a full solution. */
export function solveQuickly(
  model: TopModel,
  base: SolvedState,
  factored: FactoredTop,
  element: PlateElement,
): SolvedState | undefined {
  const { unknowns } = base;
  const size = unknowns.pattern.unknowns;
  const modes = base.vectors.length;
  const top = discreteTop(model, base.top.mesh, base.top);
  const changes = elementChanges(base.top, top, unknowns, element, factored);
  if (!changes || modes === 0) return undefined;
  const { displacement, adjoint } = base;
  const loads = displacement && adjoint ? [displacement, adjoint] : [];
  const old = blocksOf([...base.vectors, ...loads], size);
  const load = loads.length > 0 ? loadBlock(model, { top, unknowns }) : undefined;
  const columns = modes + loads.length;

  // K X of the old top: M X Λ for its modes, its loads for its deflections.
  const oldStiff = old.map((x, b) => {
    const y = new Float64Array(x.length);
    factored.multiply(x, y);
    scaleColumns(y, (c) => base.squares[BLOCK * b + c] ?? 0);
    return y;
  });
  if (load) putLoads(oldStiff, loadBlock(base.model, base), modes);
  const multiply = massOperator(unknowns, changes.mass);
  const oldMass = old.map((x) => product(x, multiply));
  const stiff = oldStiff.map((y, b) => {
    const sum = y.slice();
    changes.apply(old[b]!, sum);
    return sum;
  });
  // What is out of balance in the new top; solved with the old factor.
  const step = stiff.map((y, b) => {
    const rest = oldMass[b]!.slice();
    scaleColumns(rest, (c) => base.squares[BLOCK * b + c] ?? 0);
    for (let i = 0; i < rest.length; i++) rest[i]! -= y[i]!;
    return rest;
  });
  if (load) addLoads(step, load, modes);
  const stepStiff = step.map((rest) => rest.slice());
  for (const block of step) factored.solve(block);
  step.forEach((block, b) => changes.apply(block, stepStiff[b]!));

  const basis = [...old, ...step];
  const k = project(basis, [...stiff, ...stepStiff]);
  const m = project(basis, [...oldMass, ...step.map((x) => product(x, multiply))]);
  const used = usedColumns(old.length, columns);
  const whole = new SmallSystem(k, used);
  const first = new SmallSystem(k, used.slice(0, modes)).lowest(m, modes);
  const best = whole.lowest(m, modes);
  if (!first || !best) return undefined;
  const moved = best.values.some((value, i) => !(Math.abs(first.values[i]! / value - 1) < 2 * MOST_SHIFT));
  if (moved || best.values.some((value) => !(value > 0))) return undefined;
  const combined = combinations(basis, used, best.vectors, size);
  if (!load) return { model, top, unknowns, vectors: combined, squares: best.values };
  const answers = combinations(basis, used, loadWeights(whole, basis, used, load), size);
  return {
    model,
    top,
    unknowns,
    vectors: combined,
    squares: best.values,
    displacement: answers[0],
    adjoint: answers[1],
  };
}

function blocksOf(vectors: readonly Float64Array[], size: number): Float64Array[] {
  const blocks: Float64Array[] = [];
  for (let k = 0; k < vectors.length; k += BLOCK) blocks.push(interleave(vectors.slice(k, k + BLOCK), size));
  return blocks;
}

function product(x: Float64Array, multiply: (x: Float64Array, y: Float64Array) => void): Float64Array {
  const y = new Float64Array(x.length);
  multiply(x, y);
  return y;
}

function scaleColumns(block: Float64Array, factor: (column: number) => number): void {
  const factors = [0, 1, 2, 3].map(factor);
  for (let i = 0; i < block.length; i++) block[i]! *= factors[i & 3]!;
}

/** Columns `from` and `from + 1` over all blocks become the first two of `load`. */
function putLoads(blocks: readonly Float64Array[], load: Float64Array, from: number): void {
  for (let c = 0; c < 2; c++) {
    const block = blocks[(from + c) >> 2]!;
    for (let i = 0; i < block.length; i += BLOCK) block[i + ((from + c) & 3)] = load[i + c]!;
  }
}

function addLoads(blocks: readonly Float64Array[], load: Float64Array, from: number): void {
  for (let c = 0; c < 2; c++) {
    const block = blocks[(from + c) >> 2]!;
    for (let i = 0; i < block.length; i += BLOCK) block[i + ((from + c) & 3)]! += load[i + c]!;
  }
}

/** Places of the true columns among the padded blocks: the old vectors, then their changes. */
function usedColumns(blocks: number, columns: number): number[] {
  return [0, 1].flatMap((half) => Array.from({ length: columns }, (_, c) => BLOCK * blocks * half + c));
}

function project(left: readonly Float64Array[], right: readonly Float64Array[]): number[][] {
  const n = BLOCK * left.length;
  const matrix = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  const gram = new Float64Array(16);
  for (let a = 0; a < left.length; a++) {
    for (let b = 0; b <= a; b++) {
      gramOf(left[a]!, right[b]!, gram);
      for (let p = 0; p < BLOCK; p++) {
        for (let q = 0; q < BLOCK; q++) {
          const value = gram[4 * p + q]!;
          matrix[BLOCK * a + p]![BLOCK * b + q] = value;
          matrix[BLOCK * b + q]![BLOCK * a + p] = value;
        }
      }
    }
  }
  return matrix;
}

/** Weights of the used columns that answer the first two vectors of `load`. */
function loadWeights(
  whole: SmallSystem,
  basis: readonly Float64Array[],
  used: readonly number[],
  load: Float64Array,
): readonly Float64Array[] {
  const gram = new Float64Array(BLOCK * BLOCK);
  const products = basis.map((x) => {
    gramOf(x, load, gram);
    return gram.slice();
  });
  return [0, 1].map((c) => whole.solve(used.map((j) => products[j >> 2]![BLOCK * (j & 3) + c]!)));
}

/** One vector for each list of weights of the used columns, four at a time. */
function combinations(
  basis: readonly Float64Array[],
  used: readonly number[],
  weights: readonly ArrayLike<number>[],
  size: number,
): Float64Array[] {
  const vectors: Float64Array[] = [];
  const h = new Float64Array(BLOCK * BLOCK);
  for (let first = 0; first < weights.length; first += BLOCK) {
    const some = weights.slice(first, first + BLOCK);
    const block = new Float64Array(BLOCK * size);
    basis.forEach((x, b) => {
      h.fill(0);
      used.forEach((j, i) => {
        if (j >> 2 === b) some.forEach((each, c) => (h[BLOCK * (j & 3) + c] = -each[i]!));
      });
      subtractProduct(block, x, h);
    });
    some.forEach((_, c) => vectors.push(columnOf(block, c)));
  }
  return vectors;
}
