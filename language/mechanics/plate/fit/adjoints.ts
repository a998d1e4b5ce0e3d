/**
 * Vectors with which the slope of a figure costs no more than that of a frequency. Of the static case: K a = e, e being
 * one where the plate sinks or rises most. Of a mode φ and a figure g·φ linear in it: (K − ω² M) v = g without its part
 * along M φ, so that d(g·φ)/dp = −vᵀ(K′ − ω² M′)φ − ½ (φᵀM′φ) g·φ (R.L. Fox & M.P. Kapoor 1968, turned round to be solved
 * once per figure and not once per size). The part of v along modes that are known is written down; the rest comes by
 * v ← K⁻¹(g + ω² M v), which shrinks what is wrong by (f/f₇)² each time, f₇ being the first mode that is not known.
 */
import { BLOCK, columnOf, interleave } from '../../linear-algebra/blocks.js';
import { areaWeights, bentBy, dot, heightsOf } from '../solve/describe.js';
import { fromNodes, type FactoredTop } from '../solve/factored-top.js';
import { loadedPatch } from '../solve/loads.js';
import { peaksOf, type Peak } from '../solve/peaks.js';
import type { SolvedState } from '../solution.js';

export interface Adjoints {
  /** Index of the mode whose shape is meant. */
  readonly mode: number;
  /** Absent where nothing sinks or rises. */
  readonly dip?: Float64Array;
  readonly belly?: Float64Array;
  /** Of the movement the mode is felt by: see `amplitude`. */
  readonly felt: Float64Array;
  /** Of the air it displaces. */
  readonly volume: Float64Array;
}

/** A linear figure of a shape: weights on the movement w of each node. */
export type NodeWeights = Float64Array;

export function adjointsOf(state: SolvedState, factored: FactoredTop, mode: number): Adjoints {
  const [felt, volume] = shapeAdjoints(state, factored, mode, [feltWeights(state, mode), areaWeights(state, -1).level]);
  return { mode, ...staticAdjoints(state, factored), felt: felt!, volume: volume! };
}

/** Weights whose sum is the mean movement of the loaded patch; without one, the movement of the point that moves most. */
export function feltWeights(state: SolvedState, mode: number): NodeWeights {
  const patch = loadedPatch(state.model);
  if (patch >= 0) return meanOver(state, patch);
  const shape = heightsOf(state, state.vectors[mode]!);
  let most = 0;
  for (let node = 0; node < shape.length; node++) if (Math.abs(shape[node]!) > Math.abs(shape[most]!)) most = node;
  const weights = new Float64Array(shape.length);
  weights[most] = 1;
  return weights;
}

export function meanOver(state: Pick<SolvedState, 'top' | 'model'>, patch: number): NodeWeights {
  const { level, area } = areaWeights(state, patch);
  return level.map((weight) => weight / area);
}

function staticAdjoints(state: SolvedState, factored: FactoredTop): Pick<Adjoints, 'dip' | 'belly'> {
  if (!state.displacement) return {};
  const patch = loadedPatch(state.model);
  const bridge = patch < 0 ? undefined : areaWeights(state, patch);
  const { dip, belly } = peaksOf(state, bentBy(state, state.displacement), bridge?.centre);
  const at = (peak: Peak | undefined) => {
    const five = new Float64Array(5 * state.top.x.length);
    peak?.nodes.forEach((node, i) => five.set([peak.weights[i]!, peak.turnsX[i]!, peak.turnsY[i]!], 5 * node + 2));
    return five;
  };
  const block = blockOf(factored, [at(dip), at(belly)]);
  factored.solve(block);
  return {
    ...(dip ? { dip: columnOf(block, 0) } : {}),
    ...(belly ? { belly: columnOf(block, 1) } : {}),
  };
}

function onFive(weights: NodeWeights): Float64Array {
  const five = new Float64Array(5 * weights.length);
  weights.forEach((weight, node) => (five[5 * node + 2] = weight));
  return five;
}

/** Vectors in the order of elimination, from weights on the five unknowns of each node. */
function blockOf({ unknowns }: FactoredTop, full: readonly Float64Array[]): Float64Array {
  const block = new Float64Array(BLOCK * unknowns.pattern.unknowns);
  fromNodes(unknowns, interleave(full, full[0]!.length), block);
  return block;
}

const ROUNDS = 60;
/** Share of a vector that one more round may change: slopes are good to a few thousandths anyway. */
const CLOSE = 1e-5;

function shapeAdjoints(
  state: SolvedState,
  factored: FactoredTop,
  mode: number,
  weights: readonly NodeWeights[],
): readonly Float64Array[] {
  const { vectors, squares } = state;
  const square = squares[mode]!;
  const heavy = timesMass(factored, vectors);
  const block = blockOf(factored, weights.map(onFive));
  const columns = weights.map((_, c) => columnOf(block, c));
  const parts = columns.map((column) => vectors.map((vector) => dot(vector, column)));
  // What is left of the figures without the modes that are known.
  columns.forEach((column, c) => heavy.forEach((vector, j) => subtract(column, vector, parts[c]![j]!)));
  const right = interleave(columns, columns[0]!.length);
  let rest: Float64Array = new Float64Array(right.length);
  const moved = new Float64Array(right.length);
  for (let round = 0; round < ROUNDS; round++) {
    factored.multiply(rest, moved);
    const next = Float64Array.from(right, (value, i) => value + square * moved[i]!);
    factored.solve(next);
    const cleaned = weights.map((_, c) => {
      const column = columnOf(next, c);
      heavy.forEach((vector, j) => subtract(column, vectors[j]!, dot(vector, column)));
      return column;
    });
    const before = rest;
    rest = interleave(cleaned, cleaned[0]!.length);
    if (distance(rest, before) <= CLOSE * Math.sqrt(dot(rest, rest))) break;
  }
  return weights.map((_, c) => {
    const column = columnOf(rest, c);
    vectors.forEach((vector, j) => {
      if (j !== mode) subtract(column, vector, -parts[c]![j]! / (squares[j]! - square));
    });
    return column;
  });
}

/** M φ of each mode. */
function timesMass({ multiply }: FactoredTop, vectors: readonly Float64Array[]): readonly Float64Array[] {
  const products: Float64Array[] = [];
  for (let first = 0; first < vectors.length; first += BLOCK) {
    const some = vectors.slice(first, first + BLOCK);
    const block = interleave(some, some[0]!.length);
    const product = new Float64Array(block.length);
    multiply(block, product);
    products.push(...some.map((_, c) => columnOf(product, c)));
  }
  return products;
}

/** y −= factor · x */
function subtract(y: Float64Array, x: Float64Array, factor: number): void {
  for (let i = 0; i < y.length; i++) y[i]! -= factor * x[i]!;
}

function distance(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i]! - b[i]!) ** 2;
  return Math.sqrt(sum);
}
