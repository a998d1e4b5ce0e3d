/** Student's t, for the few instruments a maker has: how wide a band must be to hold a difference nineteen times in twenty. */

/**
 * The t that |t| stays below with probability `within` (0 … 1) for `freedom` degrees of freedom (a whole number ≥ 1, or
 * infinity for the normal distribution). Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 26.7.3 and
 * 26.7.4 (finite series for whole degrees of freedom), solved by halving.
 */
export function studentT(within: number, freedom: number): number {
  // Above this the normal distribution is right to four figures.
  const nu = Math.min(Math.max(1, Math.floor(freedom)), 20_000);
  let [low, high] = [0, 1];
  while (probabilityWithin(high, nu) < within && high < 1e6) high *= 2;
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (probabilityWithin(middle, nu) < within) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Probability that |t| is below `t`. */
function probabilityWithin(t: number, nu: number): number {
  const angle = Math.atan(t / Math.sqrt(nu));
  const [sine, square] = [Math.sin(angle), Math.cos(angle) ** 2];
  const odd = nu % 2 === 1;
  let term = odd ? Math.cos(angle) : 1;
  let sum = nu === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= nu - 2; k += 2) {
    term *= (square * (k - 1)) / k;
    sum += term;
    if (term < 1e-16) break;
  }
  return odd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum;
}
