/** Uncertainty of a computed value. Source: JCGM 100:2008 (GUM) section 5.1; sampling: JCGM 101:2008. */
import { computed, finite, MechanicsError, notNegative } from './error.js';

export interface Input {
  readonly value: number;
  /** standard uncertainty, same unit */
  readonly sigma: number;
}

export interface Propagated {
  readonly value: number;
  /** standard uncertainty */
  readonly sigma: number;
  /** part of sigma due to each input, |∂f/∂x| u(x), in the order of the inputs */
  readonly parts: readonly number[];
}

/**
 * First-order propagation of independent inputs: σ² = Σ (∂f/∂x · u)². Slopes are central differences over ± u (GUM
 * 5.1.3, note 2). An input with sigma 0 costs nothing. Right while f is nearly straight over ± 2u; the tests compare
 * it with sampling. Throws what `f` throws at the values themselves; a slope that cannot be had on one side is taken
 * from the other.
 */
export function propagate(f: (values: readonly number[]) => number, inputs: readonly Input[]): Propagated {
  const values = inputs.map((input) => finite('input', input.value));
  const value = computed('value', f(values));
  const parts = inputs.map(({ sigma }, i) => {
    if (notNegative('uncertainty', sigma) === 0) return 0;
    const at = (x: number): number | undefined => attempt(() => f(values.map((old, j) => (j === i ? x : old))));
    const up = at(values[i]! + sigma);
    const down = at(values[i]! - sigma);
    if (up !== undefined && down !== undefined) return Math.abs(up - down) / 2;
    if (up !== undefined) return Math.abs(up - value);
    if (down !== undefined) return Math.abs(value - down);
    throw new MechanicsError('uncertainty', 'The uncertainty of an input is larger than the input allows.');
  });
  return { value, sigma: Math.hypot(...parts), parts };
}

export interface Sampled {
  readonly mean: number;
  readonly sigma: number;
  /** draws for which `f` had no value */
  readonly failed: number;
}

/** The same by drawing `count` times from normal distributions; `start` sets the random sequence, so results repeat. */
export function sample(
  f: (values: readonly number[]) => number,
  inputs: readonly Input[],
  count = 20000,
  start = 1,
): Sampled {
  const normal = normalDraws(start);
  let [n, mean, squares] = [0, 0, 0];
  for (let k = 0; k < count; k += 1) {
    const y = attempt(() => f(inputs.map(({ value, sigma }) => value + sigma * normal())));
    if (y === undefined) continue;
    n += 1;
    const delta = y - mean;
    mean += delta / n;
    squares += delta * (y - mean);
  }
  if (n < 2) throw new MechanicsError('uncertainty', 'The value cannot be computed for any input near these.');
  return { mean, sigma: Math.sqrt(squares / (n - 1)), failed: count - n };
}

function attempt(compute: () => number): number | undefined {
  try {
    const y = compute();
    return Number.isFinite(y) ? y : undefined;
  } catch (error) {
    if (error instanceof MechanicsError) return undefined;
    throw error;
  }
}

/**
 * Standard normal numbers: G.E.P. Box & M.E. Muller (1958) on a 32-bit counter hash, the same sequence for the same
 * start.
 */
function normalDraws(start: number): () => number {
  let state = start >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}
