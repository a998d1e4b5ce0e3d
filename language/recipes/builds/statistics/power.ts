/** How large an effect can be told, and how many builds more it takes. */
import { studentT } from './student-t.js';

/** Shown nineteen times in twenty only where there is something, and found four times in five where there is. (common practice) */
const [CERTAINTY, POWER] = [0.95, 0.8];

/**
 * Smallest effect found with 80 % power, for a standard error of one: t for 95 % both sides plus t for 80 % one side. Source:
 * G.W. Snedecor & W.G. Cochran, Statistical Methods, sec. 6.14 (from memory).
 */
export function findable(freedom: number): number {
  return studentT(CERTAINTY, freedom) + studentT(2 * POWER - 1, freedom);
}

/**
 * Builds more until an effect can be told; `after(n)` gives its standard error and degrees of freedom after n more. Undefined
 * where not even `most` would do.
 */
export function buildsUntilTold(
  effect: number,
  after: (more: number) => { readonly error: number; readonly freedom: number } | undefined,
  most = 30,
): number | undefined {
  for (let more = 0; more <= most; more += 1) {
    const then = after(more);
    if (then && then.freedom > 0 && findable(then.freedom) * then.error <= Math.abs(effect)) return more;
  }
  return undefined;
}
