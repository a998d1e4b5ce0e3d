/** Shops made up with known effects, for judging what is told of them. */
import type { EffectProblem, Factor, Observation } from '../../../language/recipes/builds/effect-model.js';

export type Kind = 'computed right' | 'computed half' | 'confounded' | 'drifting' | 'nothing';

export interface MadeShop {
  readonly problem: EffectProblem;
  /** True effect of each factor, ln. */
  readonly truth: readonly number[];
}

/** A number from 0 to 1, the same series for the same seed: D.H. Lehmer’s generator with S.K. Park & K.W. Miller’s constants. */
export function randomFrom(seed: number): () => number {
  let state = (seed * 7919 + 12345) % 2147483647;
  const next = () => (state = (state * 48271) % 2147483647) / 2147483647;
  for (let i = 0; i < 5; i += 1) next();
  return next;
}

/** Normal with mean 0 and deviation 1, by G.E.P. Box & M.E. Muller (1958). */
export function normalFrom(random: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}

export function madeShop(kind: Kind, seed: number): MadeShop {
  const random = randomFrom(seed);
  const normal = normalFrom(random);
  const builds = kind === 'nothing' ? 17 : 12 + Math.floor(random() * 49);
  const count = Math.min(7, 2 + Math.floor(random() * (builds / 4)));
  const scatter = 0.01 + 0.01 * random();
  const factors = Array.from({ length: count }, (): Factor => {
    const amount = (random() < 0.5 ? -1 : 1) * (0.005 + 0.025 * random());
    return { computed: { amount, error: Math.hypot(0.2 * amount, 0.002) } };
  });
  const truth = factors.map(({ computed }) => {
    const { amount, error } = computed!;
    if (kind === 'nothing') return 0;
    return kind === 'computed half' ? 2 * amount : amount + error * normal();
  });
  const steps = stepsOf(builds, count, random);
  const drift = kind === 'drifting' ? (random() < 0.5 ? -1 : 1) * 0.04 : 0;
  const observations: Observation[] = [];
  for (let owner = 0; owner < builds; owner += 1) {
    const own = steps[owner]!;
    const time = owner / (builds - 1) - 0.5;
    // What the confounder does is nobody’s to compute: fish glue, two per cent.
    const level = truth.reduce((sum, effect, j) => sum + effect * own[j]!, drift * time + scatter * normal());
    const hidden = kind === 'confounded' ? 0.02 * own[0]! : 0;
    const computed = factors.reduce(
      (sum, factor, j) => sum + (kind === 'nothing' ? 0 : factor.computed!.amount) * own[j]!,
      Math.log(180),
    );
    for (const occasion of [0, 1]) {
      observations.push({
        ...{ owner, state: 0, occasion, computed, time, rounding: 0, steps: steps[owner]! },
        log: Math.log(180) + level + hidden - 0.02 * occasion + 0.003 * normal(),
      });
    }
  }
  return {
    problem: { observations, factors: known(kind, factors), repeats: 0.003, stated: { share: scatter, basis: 'shop' } },
    // What always moved together is told together.
    truth: kind === 'confounded' ? truth.map((effect, j) => (j === 0 ? effect + 0.02 : effect)) : truth,
  };
}

/** What can be computed: nothing of a pot of glue, nor of what always moved with it; in a shop where nothing matters, nothing. */
function known(kind: Kind, factors: readonly Factor[]): readonly Factor[] {
  return factors.map((factor, j) => {
    if (kind === 'nothing') return {};
    return kind === 'confounded' && j === 0 ? { partly: factor.computed!.amount } : factor;
  });
}

/** Three alike first; then a change or two at a time, often kept, sometimes undone. */
function stepsOf(builds: number, count: number, random: () => number): readonly (readonly number[])[] {
  const steps: number[][] = [];
  for (let owner = 0; owner < builds; owner += 1) {
    const before = steps[owner - 1] ?? Array.from({ length: count }, () => 0);
    const j = Math.floor(random() * count);
    steps.push(owner < 3 ? [...before] : before.map((step, i) => (i === j ? 1 - step : step)));
  }
  // A change nobody made is no change.
  for (let j = 0; j < count; j += 1) {
    if (!steps.some((step) => step[j] === 1)) steps[3 + (j % (builds - 3))]![j] = 1;
  }
  return steps;
}
