/** First-order propagation, as the evaluation does it along its slopes, for functions by themselves. */
import { computed, finite, MechanicsError, notNegative } from '../../language/mechanics/error.js';
import type { Input } from '../../language/mechanics/gum.js';

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

function attempt(compute: () => number): number | undefined {
  try {
    const y = compute();
    return Number.isFinite(y) ? y : undefined;
  } catch (error) {
    if (error instanceof MechanicsError) return undefined;
    throw error;
  }
}
