/** What the same instrument reads twice. */
import type { Observation } from './observation.js';

export interface Repeatability {
  /** Standard deviation of one reading, as a share. */
  readonly share: number;
  readonly freedom: number;
}

/** What common practice is worth until somebody has read twice. */
const WEIGHT = 2;

/**
 * From readings of one instrument in one state, the level of each occasion taken off; pooled with `usual`, a share by common
 * practice. `y`: what was read, by observation.
 */
export function repeatabilityOf(
  observations: readonly Observation[],
  y: readonly number[],
  usual: number,
): Repeatability {
  const stateOf = (i: number) => `${observations[i]!.owner} ${observations[i]!.state}`;
  const groups = new Map<string, number[]>();
  y.forEach((_, i) => groups.set(stateOf(i), [...(groups.get(stateOf(i)) ?? []), i]));
  const more = [...groups.values()].filter((group) => group.length > 1);
  const among = more.flat();
  const occasions = new Set(among.map((i) => observations[i]!.occasion));
  const levels = new Map([...occasions].map((occasion) => [occasion, 0]));
  const states = more.map(() => 0);
  const left = (i: number, state: number) => y[i]! - levels.get(observations[i]!.occasion)! - states[state]!;
  // Two ways, state and occasion: each in turn until both are at rest.
  for (let round = 0; round < 50; round += 1) {
    more.forEach((group, s) => (states[s]! += mean(group.map((i) => left(i, s)))));
    for (const occasion of occasions) {
      const own = more.flatMap((group, s) =>
        group.flatMap((i) => (observations[i]!.occasion === occasion ? [left(i, s)] : [])),
      );
      levels.set(occasion, levels.get(occasion)! + mean(own));
    }
  }
  const squares = more.reduce((sum, group, s) => sum + group.reduce((own, i) => own + left(i, s) ** 2, 0), 0);
  const freedom = Math.max(0, among.length - more.length - Math.max(0, occasions.size - 1));
  const share = Math.sqrt((squares + WEIGHT * usual ** 2) / (freedom + WEIGHT));
  return { share, freedom: freedom + WEIGHT };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
