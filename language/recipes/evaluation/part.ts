/**
 * Something several quantities of one instrument are made from: the outline of the body, the braced plate as the solver
 * wants it. It is made once for all of them, and again only when something it asked for has another answer.
 */
import type { Asking } from './asking.js';
import type { Ask, Basis } from './derived-quantity.js';
import type { Question } from './traces.js';

export interface Part {
  /** What was made, or the exception that ended the making. */
  readonly outcome: { readonly made: unknown } | { readonly failed: unknown };
  /** What making it asked for: whoever uses it has asked for it too. */
  readonly questions: readonly Question[];
  readonly absent: readonly string[];
  readonly pending: boolean;
  readonly assumptions: readonly string[];
  readonly basis: ReadonlySet<Basis>;
  readonly read: ReadonlyMap<string, number>;
}

export function makePart(make: (ask: Ask) => unknown, asking: Asking): Part {
  const outcome = outcomeOf(() => make(asking));
  const { questions, absent, pending, assumptions, basis, read } = asking;
  return { outcome, questions, absent, pending, assumptions, basis, read };
}

function outcomeOf(make: () => unknown): Part['outcome'] {
  try {
    return { made: make() };
  } catch (failed) {
    return { failed };
  }
}
