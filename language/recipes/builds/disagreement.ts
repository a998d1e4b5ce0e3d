/** Where builds and mechanics say what cannot both be true, and which effects stand out of the scatter. */
import type { Told } from './effect-model.js';
import { standOut } from './statistics/false-discovery.js';
import { chanceBeyond } from './statistics/student-t.js';

/** Of what is named, one in twenty may be chance. */
export const FALSE_SHARE = 0.05;

export interface TwoSides {
  readonly computed?: { readonly amount: number; readonly error: number };
  readonly builds?: Told;
}

/** By index: the two differ by more than both their uncertainties, all comparisons considered. */
export function disagreeing(all: readonly TwoSides[]): readonly boolean[] {
  return standOut(
    all.map(({ computed, builds }) => {
      if (!computed || !builds) return 1;
      const error = Math.hypot(computed.error, builds.error);
      return error > 0 ? chanceBeyond((builds.amount - computed.amount) / error, builds.freedom) : 1;
    }),
    FALSE_SHARE,
  );
}

/** By index: an effect that builds alone set apart from nothing. */
export function standingOut(all: readonly (Told | undefined)[]): readonly boolean[] {
  return standOut(
    all.map((told) => (told && told.error > 0 ? chanceBeyond(told.amount / told.error, told.freedom) : 1)),
    FALSE_SHARE,
  );
}

/**
 * How many times what it says the uncertainty of what is computed must be, for the effects on one reading to be as far from
 * the builds as chance allows (R.T. Birge, Phys. Rev. 40 (1932) 207, applied to what is known beforehand); at least 1.
 */
export function doubtIn(all: readonly TwoSides[]): number {
  const known = all.flatMap(({ computed, builds }) => (computed && builds ? [{ computed, builds }] : []));
  if (known.length === 0) return 1;
  const misfit = (doubt: number) =>
    known.reduce(
      (sum, { computed, builds }) =>
        sum + (builds.amount - computed.amount) ** 2 / (builds.error ** 2 + (doubt * computed.error) ** 2),
      0,
    ) / known.length;
  let [low, high] = [1, 50];
  if (misfit(low) <= 1) return 1;
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2;
    if (misfit(middle) > 1) low = middle;
    else high = middle;
  }
  return high;
}
