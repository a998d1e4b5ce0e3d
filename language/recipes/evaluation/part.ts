/** Making what several quantities of one instrument share. */
import type { Asking } from './asking.js';
import type { Ask } from './derived-quantity.js';
import type { Part } from './respondent.js';

export function makePart(make: (ask: Ask) => unknown, asking: Asking): Part {
  const outcome = outcomeOf(() => make(asking));
  const { questions, absent, pending, assumptions, doubts, basis, read } = asking;
  return { outcome, questions, absent, pending, assumptions, doubts, basis, read };
}

function outcomeOf(make: () => unknown): Part['outcome'] {
  try {
    return { made: make() };
  } catch (failed) {
    return { failed };
  }
}
