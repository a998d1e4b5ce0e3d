/** Student's t, for the few instruments a maker has: how wide a band must be to hold a difference nineteen times in twenty. */
import { incompleteBeta } from './incomplete-beta.js';

/**
 * The t that |t| stays below with probability `within` (0 … 1) for `freedom` degrees of freedom (above 0, not necessarily
 * whole, or infinite for the normal distribution); found by halving.
 */
export function studentT(within: number, freedom: number): number {
  let [low, high] = [0, 1];
  while (1 - chanceBeyond(high, freedom) < within && high < 1e9) high *= 2;
  for (let step = 0; step < 80; step += 1) {
    const middle = (low + high) / 2;
    if (1 - chanceBeyond(middle, freedom) < within) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Chance that |t| is at least that large. Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 26.5.27 and 26.7.1. */
export function chanceBeyond(t: number, freedom: number): number {
  // Above this the normal distribution is right to five figures.
  const nu = Math.min(freedom, 1e5);
  return incompleteBeta(nu / (nu + t * t), nu / 2, 0.5);
}

/** Chance that F with these degrees of freedom is at least that large. Source: Abramowitz & Stegun, 26.5.28 and 26.6.2. */
export function chanceOfF(f: number, above: number, below: number): number {
  const nu = Math.min(below, 1e5);
  return f <= 0 ? 1 : incompleteBeta(nu / (nu + above * f), nu / 2, above / 2);
}
