/** What somebody wishes of an instrument: a computed quantity within bounds. */
import type { Definition } from '../../facts/facts.js';
import type { Evaluation } from '../evaluation/evaluation.js';
import { checkExpectations } from '../instrument/expectations.js';

export interface Wish {
  /** Canonical path of a computed quantity. */
  readonly quantity: string;
  /** SI; open where absent. */
  readonly low?: number;
  readonly high?: number;
}

/** The first `expect q: …` or `change q: by …` of a definition, which may be one that is on no shelf; undefined where there is none. */
export function wishIn(
  definition: Definition,
  evaluation: Evaluation,
  canonical: (path: string) => string,
): Wish | undefined {
  for (const statement of definition.statements) {
    if (statement.kind === 'expect') {
      const whole = { ...definition, statements: [statement] };
      const [found] = checkExpectations(whole, evaluation, canonical);
      if (!found || found.outcome === 'not-a-bound' || found.outcome === 'not-a-quantity') return undefined;
      return { quantity: found.path, low: found.low, high: found.high };
    }
    if (statement.kind === 'change' && statement.by) {
      const quantity = canonical(statement.path.text);
      const now = evaluation.number(quantity);
      if (now === undefined || !evaluation.derived(quantity)) return undefined;
      const { si, unit } = statement.by.quantity;
      const by = unit?.symbol === '%' ? now * si : si;
      // Sizes that can be made come no nearer than a fifth of a small step.
      const half = Math.abs(by) / 5;
      return { quantity, low: now + by - half, high: now + by + half };
    }
  }
  return undefined;
}

/** How far a value is from what is wished, with the sign of the way to go; 0 where it is met. */
export function shortfall({ low, high }: Wish, value: number): number {
  if (low !== undefined && value < low) return low - value;
  if (high !== undefined && value > high) return high - value;
  return 0;
}

/** A little within the nearer bound, so that what is made need not be exact. */
export function aimOf({ low, high }: Wish, value: number): number {
  if (low !== undefined && high !== undefined) {
    const width = high - low;
    // Of a single value its middle.
    if (width < 0.02 * Math.abs(high)) return (low + high) / 2;
    return value < low ? low + width / 10 : high - width / 10;
  }
  const bound = (low ?? high)!;
  return bound + Math.sign(bound - value) * 0.002 * Math.abs(bound);
}
