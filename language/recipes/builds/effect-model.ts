/**
 * What a dozen instruments teach about one kind of reading, in numbers alone:
 *
 *   ln reading = level of the occasion + Σ effect · step + drift · time + the instrument's own deviation + error of reading
 *
 * `fromBuilds` knows nothing beforehand. `together` holds every reading against what is computed for the very same
 * instrument, and knows of each effect what is computed for it, give or take. Both in closed form (generalised least
 * squares); the deviation of instruments by restricted maximum likelihood, pooled with the shop's own figure.
 */
import { covarianceOf, varianceBetween } from './statistics/scatter.js';
import { type Estimate, generalised, type Prior } from './statistics/generalised.js';
import type { Observation } from './observation.js';
import { repeatabilityOf } from './repeatability.js';
import { rankOf, standIn } from './statistics/rank.js';
import { studentT } from './statistics/student-t.js';

export type { Observation } from './observation.js';

/** Something whose effect is looked for: one thing changed, or several that always moved together. */
export interface Factor {
  /** What is computed for its step: change of ln reading, and its standard uncertainty, model error included. */
  readonly computed?: { readonly amount: number; readonly error: number };
  /** What of it is computed although not all is: a brace lowered and glued with another glue. */
  readonly partly?: number;
}

export interface EffectProblem {
  readonly observations: readonly Observation[];
  readonly factors: readonly Factor[];
  /** Standard deviation among instruments built alike as the shop states it, or common practice. */
  readonly stated?: { readonly share: number; readonly basis: 'shop' | 'common practice' };
  /** What a reading repeats to where nobody has read twice, as a share. */
  readonly repeats: number;
  /** The series is seen to drift: nothing is known beforehand of how much. */
  readonly drifts?: boolean;
  /** What is computed is off by more than it says: its uncertainty is so many times what it says. */
  readonly doubt?: number;
}

/** A change of ln reading: nineteen times in twenty within ± `half`. */
export interface Told {
  readonly amount: number;
  readonly half: number;
  readonly error: number;
  readonly freedom: number;
}

export interface Fitted {
  /** By factor; undefined where these builds cannot tell it from others. */
  readonly effects: readonly (Told | undefined)[];
  /** Of one reading among instruments built alike, as a share. */
  readonly scatter: { readonly share: number; readonly freedom: number };
  readonly repeatability: { readonly share: number; readonly freedom: number };
  /** Over the whole series. */
  readonly drift?: Told;
  /** ln reading at the reference on the first occasion. */
  readonly start: number;
  /** By observation, less everything fitted but the drift. */
  readonly leftover: readonly number[];
}

/** A figure the shop states weighs like so many more instruments built alike. */
export const STATED_WEIGHT = 4;

/** Ordinary knowledge from builds. Undefined where nothing says how far instruments built alike differ. */
export function fromBuilds(problem: EffectProblem): Fitted | undefined {
  const flat = problem.factors.map((): Prior => FLAT);
  return withDrift(problem, problem.observations.map(({ log }) => log), flat); // prettier-ignore
}

/** The same with mechanics beside it; what is computed for the factors in `aside` is not believed. */
export function together(problem: EffectProblem, aside: ReadonlySet<number> = new Set()): Fitted | undefined {
  const { observations, factors } = problem;
  const paired = observations.every(({ computed }) => computed !== undefined);
  const priors = factors.map(({ computed }, j): Prior => {
    if (!computed || aside.has(j)) return FLAT;
    return { mean: paired ? 0 : computed.amount, variance: (computed.error * (problem.doubt ?? 1)) ** 2 };
  });
  const y = observations.map(({ log, computed }) => (paired ? log - computed! : log));
  const found = withDrift(problem, y, priors);
  if (!found || !paired) return found;
  const back = (told: Told | undefined, j: number) =>
    told && { ...told, amount: told.amount + (factors[j]!.computed?.amount ?? factors[j]!.partly ?? 0) };
  return { ...found, effects: found.effects.map(back) };
}

/** A hand may improve, but one that improves by more than what instruments differ by anyway would be noticed. */
function withDrift(problem: EffectProblem, y: readonly number[], priors: readonly Prior[]): Fitted | undefined {
  const plain = fit(problem, y, priors, undefined);
  if (!plain || new Set(problem.observations.map(({ time }) => time)).size < 3) return plain;
  const drift = problem.drifts === true ? FLAT : { mean: 0, variance: Math.max(plain.scatter.share, 1e-6) ** 2 };
  return fit(problem, y, priors, drift) ?? plain;
}

const FLAT: Prior = { mean: 0, variance: Number.POSITIVE_INFINITY };

function fit(
  problem: EffectProblem,
  y: readonly number[],
  priors: readonly Prior[],
  drift: Prior | undefined,
): Fitted | undefined {
  const { observations, stated } = problem;
  const occasions = [...new Set(observations.map(({ occasion }) => occasion))];
  const levels = observations.map(({ occasion }) => occasions.map((each) => (each === occasion ? 1 : 0)));
  const whole = observations.map(({ steps, time }, i) => [...levels[i]!, ...steps, ...(drift ? [time] : [])]);
  const beforehand = [...occasions.map(() => FLAT), ...priors, ...(drift ? [drift] : [])];
  // Of columns that depend on one another enough stand in to take up what they explain; their own effects are not told.
  const flat = beforehand.map(({ variance }) => !Number.isFinite(variance));
  const { columns, clear } = standIn(whole, flat);
  const rows = whole.map((row) => columns.map((j) => row[j]!));
  const kept = columns.map((j) => beforehand[j]!);
  const repeatability = repeatabilityOf(observations, y, problem.repeats);
  const owners = observations.map(({ owner }) => owner);
  // Where nothing was read twice, scatter and error of reading are one.
  const twice = new Set(owners).size < owners.length;
  const errors = observations.map(({ rounding }) => (twice ? Math.max(repeatability.share ** 2, rounding) : rounding));
  const between = freedomBetween(rows, owners, kept);
  const isPooled = stated && (stated.basis === 'shop' || between < 2);
  if (between < 1 && !stated) return undefined;
  const model = {
    ...{ rows, y, owners, errors, priors: kept },
    ...(isPooled ? { stated: { variance: stated.share ** 2, weight: STATED_WEIGHT } } : {}),
  };
  const variance = varianceBetween(model);
  if (variance === undefined) return undefined;
  const estimate = generalised({ ...model, covariance: covarianceOf(model, variance) });
  if (!estimate) return undefined;
  const freedom = between < 1 ? Number.POSITIVE_INFINITY : between + (isPooled ? STATED_WEIGHT : 0);
  const tell = new Teller({
    estimate,
    priors: kept,
    owners,
    errors,
    between: variance,
    freedom,
    readingFreedom: repeatability.freedom,
  });
  const at = (j: number) => (clear.has(j) ? tell.of(columns.indexOf(j)) : undefined);
  const last = occasions.length + priors.length;
  return {
    effects: priors.map((_, j) => at(occasions.length + j)),
    scatter: { share: Math.sqrt(variance + mean(errors)), freedom },
    repeatability,
    ...(drift ? { drift: at(last) } : {}),
    start: estimate.means[0]!,
    leftover: rows.map((row, i) =>
      row.reduce((left, x, k) => (columns[k] === last ? left : left - x * estimate.means[k]!), y[i]!),
    ),
  };
}

interface Fit {
  readonly estimate: Estimate;
  readonly priors: readonly Prior[];
  readonly owners: readonly number[];
  readonly errors: readonly number[];
  readonly between: number;
  readonly freedom: number;
  readonly readingFreedom: number;
}

/**
 * Degrees of freedom by F.E. Satterthwaite (Biometrics Bulletin 2 (1946) 110): what comes from the scatter among instruments,
 * and what from reading; what is known beforehand has none to run out of.
 */
class Teller {
  constructor(private readonly fit: Fit) {}

  of(k: number): Told {
    const variance = this.fit.estimate.covariance[k]![k]!;
    const error = Math.sqrt(variance);
    const freedom = this.freedomOf(k, variance);
    return { amount: this.fit.estimate.means[k]!, error, freedom, half: studentT(0.95, freedom) * error };
  }

  private freedomOf(k: number, variance: number): number {
    const weights = this.fit.estimate.weights[k]!;
    const byOwner = new Map<number, { sum: number; squares: number; readings: number; error: number }>();
    this.fit.owners.forEach((owner, i) => {
      const so = byOwner.get(owner) ?? { sum: 0, squares: 0, readings: 0, error: 0 };
      so.sum += weights[i]!;
      so.squares += weights[i]! ** 2 * this.fit.errors[i]!;
      so.readings += 1;
      so.error += this.fit.errors[i]!;
      byOwner.set(owner, so);
    });
    let [among, reading] = [0, 0];
    for (const { sum, squares, readings, error } of byOwner.values()) {
      const shared = sum ** 2 * (this.fit.between + error / readings ** 2);
      among += shared;
      reading += Math.max(0, squares - (sum ** 2 * error) / readings ** 2);
    }
    const known = Math.max(0, variance - among - reading);
    if (!Number.isFinite(this.fit.priors[k]!.variance) && among + reading === 0) return this.fit.freedom;
    const parts = among ** 2 / this.fit.freedom + reading ** 2 / this.fit.readingFreedom;
    return parts === 0 ? Number.POSITIVE_INFINITY : Math.max(1, (among + reading + known) ** 2 / parts);
  }
}

/** Instruments beyond the unknowns that lie between them; an unknown of which something is known beforehand takes none. */
function freedomBetween(rows: readonly (readonly number[])[], owners: readonly number[], priors: readonly Prior[]) {
  const names = [...new Set(owners)];
  const means = names.map((name) => {
    const own = rows.filter((_, i) => owners[i] === name);
    return priors.flatMap(({ variance }, k) =>
      Number.isFinite(variance) ? [] : [own.reduce((sum, row) => sum + row[k]!, 0) / own.length],
    );
  });
  return names.length - rankOf(means);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
