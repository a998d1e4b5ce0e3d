/** Uncertainty of a computed value. Source: JCGM 100:2008 (GUM) section 5.1; sampling: JCGM 101:2008. */
import { MechanicsError } from './error.js';

export interface Input {
  readonly value: number;
  /** standard uncertainty, same unit */
  readonly sigma: number;
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
