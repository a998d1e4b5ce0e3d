/**
 * What it takes to tell one effect: how many instruments more, and of what kind, until an effect of the size in question is
 * found four times in five. A replicate is among the candidates, and one instrument read before and after.
 */
import type { Design, DesignVariable } from './design-matrix.js';
import type { FittedResponse, ToldEffect } from './response-effects.js';
import { solveLeastSquares } from './statistics/orthogonal.js';
import { buildsUntilTold } from './statistics/power.js';

export interface NextFor {
  /** The size it is asked for, ln: what is computed, or else what the builds say. */
  readonly size: number;
  /** More instruments with the change, more without it (replicates), or reworks of one: the least that does; undefined: 30 do not. */
  readonly repeats?: number;
  readonly replicates?: number;
  readonly reworks?: number;
  readonly best?: 'told' | 'repeats' | 'replicates' | 'reworks';
}

export function nextFor(
  design: Design,
  outcome: FittedResponse,
  effect: ToldEffect,
  canRework: (variable: DesignVariable) => boolean,
): NextFor | undefined {
  const size = effect.log.computed?.amount ?? effect.log.builds?.amount;
  const { problem } = outcome.columns;
  const j = outcome.effects.indexOf(effect);
  if (size === undefined || j < 0 || !(Math.abs(size) > 0)) return undefined;
  const owners = [...new Set(problem.observations.map(({ owner }) => owner))];
  const rows = owners.map((owner) => problem.observations.find((each) => each.owner === owner)!.steps);
  const kept = problem.factors.map((_, k) => k).filter((k) => k === j || outcome.effects[k]!.builds !== undefined);
  const { share, freedom } = outcome.scatter;
  const after = (more: number, withChange: boolean) => {
    const added = Array.from({ length: more }, () => kept.map((k) => (withChange && k === j ? 1 : 0)));
    const all = [...rows.map((steps) => kept.map((k) => steps[k]!)), ...added].map((row) => [1, ...row]);
    const solved = solveLeastSquares(all, all.map(() => 0)); // prettier-ignore
    if (!solved) return undefined;
    const at = kept.indexOf(j) + 1;
    return { error: share * Math.sqrt(solved.inverse[at]![at]!), freedom: freedom + more };
  };
  const repeats = buildsUntilTold(size, (more) => after(more, true));
  const replicates = buildsUntilTold(size, (more) => after(more, false));
  const { repeatability } = outcome;
  const reworks = effect.variables.every(canRework)
    ? buildsUntilTold(size, (more) =>
        more === 0
          ? undefined
          : { error: repeatability.share * Math.sqrt(2 / more), freedom: repeatability.freedom + more - 1 },
      )
    : undefined;
  return { size, repeats, replicates, reworks, best: bestOf({ repeats, replicates, reworks }) };
}

/** One instrument in hand is worth more than another to be made: a rework first, where as few do. */
function bestOf({ repeats, replicates, reworks }: Omit<NextFor, 'size' | 'best'>): NextFor['best'] {
  if (repeats === 0) return 'told';
  const all = [
    ['reworks', reworks],
    ['repeats', repeats],
    ['replicates', replicates],
  ] as const;
  const known = all.filter(([, count]) => count !== undefined);
  const least = Math.min(...known.map(([, count]) => count!));
  return known.find(([, count]) => count === least)?.[0];
}
