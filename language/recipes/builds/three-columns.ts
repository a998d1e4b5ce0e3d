/** Computed, builds alone, and together: the steps from readings to what is told of them, for all kinds of reading of a model. */
import { disagreeing, doubtIn, standingOut } from './disagreement.js';
import { type EffectProblem, fromBuilds, type Fitted, together } from './effect-model.js';
import { rankCorrelation } from './statistics/rank-correlation.js';

export interface ThreeColumns {
  readonly problem: EffectProblem;
  /** Undefined where nothing says how far instruments built alike differ. */
  readonly builds?: Fitted;
  readonly together?: Fitted;
  /** By factor. */
  readonly disagrees: readonly boolean[];
  readonly standsOut: readonly boolean[];
  /** The series drifts: how likely as much is by chance. */
  readonly drift?: { readonly rho: number; readonly chance: number };
}

/** Of all kinds of reading at once, as the rate of false alarms is that of everything shown. */
export function threeColumns(problems: readonly EffectProblem[]): readonly ThreeColumns[] {
  const alone = problems.map((problem) => {
    const drift = driftIn(problem);
    const seen = drift ? { ...problem, drifts: true } : problem;
    return { problem: seen, drift, builds: fromBuilds(seen) };
  });
  const sides = alone.flatMap(({ problem, builds }) =>
    problem.factors.map(({ computed }, j) => ({ computed, builds: builds?.effects[j] })),
  );
  const apart = disagreeing(sides);
  const out = standingOut(sides.map(({ builds }) => builds));
  let from = 0;
  return alone.map(({ problem, drift, builds }) => {
    const to = from + problem.factors.length;
    const [disagrees, own] = [apart.slice(from, to), sides.slice(from, to)];
    const standsOut = out.slice(from, to);
    from = to;
    const doubt = doubtIn(own);
    const aside = new Set(disagrees.flatMap((is, j) => (is ? [j] : [])));
    return { problem, builds, together: together({ ...problem, doubt }, aside), disagrees, standsOut, drift };
  });
}

/** Whether what the effects leave over goes with the order in which the instruments were made. */
function driftIn(problem: EffectProblem): ThreeColumns['drift'] {
  const plain = fromBuilds({ ...problem, observations: problem.observations.map((each) => ({ ...each, time: 0 })) });
  if (!plain) return undefined;
  const byOwner = new Map<number, { time: number; left: number[] }>();
  problem.observations.forEach(({ owner, time }, i) => {
    const own = byOwner.get(owner) ?? { time, left: [] };
    own.left.push(plain.leftover[i]!);
    byOwner.set(owner, own);
  });
  const all = [...byOwner.values()];
  const found = rankCorrelation(
    all.map(({ time }) => time),
    all.map(({ left }) => left.reduce((sum, each) => sum + each, 0) / left.length),
  );
  return found && found.chance < 0.05 ? found : undefined;
}
