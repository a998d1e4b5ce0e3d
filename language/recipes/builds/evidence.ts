/**
 * What a build may say: each reading held against the builds it descends from, like with like, and against the scatter
 * that instruments built alike show anyway.
 *
 * Builds of one recipe, or of recipes with no counted change between them, are replicates. Their scatter is pooled over
 * every such group along the line; while there are none, a stated share is used and named. Scatter is kept as a share of
 * the value (the standard deviation of its logarithm), since a heavier guitar does not answer in other hertz but in the
 * same per cent.
 */
import { type BuildRecord, CONDITIONS, type Condition, type Reading } from './builds.js';
import type { Held } from '../instrument/instrument.js';
import { studentT } from './statistics/student-t.js';
import { sameValue } from '../instrument/values.js';

export interface Scatter {
  /** Standard deviation, as a share of the value. */
  readonly share: number;
  /** Infinite for a stated share. */
  readonly freedom: number;
  readonly basis: 'replicates' | 'shop' | 'common practice';
  /** The builds it was found from. */
  readonly builds: readonly string[];
}

export interface Evidence {
  /** Canonical path of what was read. */
  readonly response: string;
  readonly reading: Reading;
  readonly read: Held;
  readonly outcome: Compared | NotComparable;
}

export interface Compared {
  readonly kind: 'compared';
  /** Names of the builds it was held against, and the mean of their readings, SI. */
  readonly against: readonly string[];
  readonly mean: number;
  readonly difference: number;
  /** A difference within ± this is what builds alike show anyway, 19 times in 20, SI. */
  readonly band: number;
  readonly scatter: Scatter;
  readonly distinguishable: boolean;
}

export interface NotComparable {
  readonly kind: 'not-comparable';
  readonly against: string;
  /** The nearest reading of the other build. */
  readonly reading: Reading;
  readonly reasons: readonly Disagreement[];
}

/** A condition in which two readings differ; undefined: not written down. */
export interface Disagreement {
  readonly condition: Condition;
  readonly here?: Held;
  readonly there?: Held;
}

export interface EvidenceContext {
  /** Groups of replicates along the line, the reference builds among them. */
  readonly groups: readonly (readonly BuildRecord[])[];
  /** Used while no group has two builds: a share of the value, for frequencies. */
  readonly stated: { readonly share: number; readonly basis: 'shop' | 'common practice' };
  readonly isFrequency: (path: string) => boolean;
}

/** Every reading of `build` that one of the `reference` builds has too. */
export function evidenceOf(
  build: BuildRecord,
  reference: readonly BuildRecord[],
  context: EvidenceContext,
): readonly Evidence[] {
  const evidence: Evidence[] = [];
  for (const reading of asFirstMade(build)) {
    for (const [response, read] of reading.values) {
      if (read.value.kind !== 'quantity' || !(read.value.quantity.si > 0)) continue;
      const outcome = heldAgainst(response, read.value.quantity.si, reading, reference, context);
      if (outcome) evidence.push({ response, reading, read, outcome });
    }
  }
  return evidence;
}

/** Scatter of one response among replicates, from readings comparable with `like`. Undefined while no two can be compared. */
export function pooledScatter(response: string, like: Reading, groups: EvidenceContext['groups']): Scatter | undefined {
  let [squares, freedom] = [0, 0];
  const builds: string[] = [];
  for (const group of groups) {
    const found = group.flatMap((build) => {
      const value = comparableValue(response, like, build);
      return value === undefined ? [] : [{ name: build.definition.name.text, log: Math.log(value) }];
    });
    if (found.length < 2) continue;
    const mean = found.reduce((sum, { log }) => sum + log, 0) / found.length;
    squares += found.reduce((sum, { log }) => sum + (log - mean) ** 2, 0);
    freedom += found.length - 1;
    builds.push(...found.map(({ name }) => name));
  }
  if (freedom === 0) return undefined;
  return { share: Math.sqrt(squares / freedom), freedom, basis: 'replicates', builds };
}

/** The conditions in which two readings of one response differ enough not to be compared in silence. */
export function disagreements(response: string, here: Reading, there: Reading): readonly Disagreement[] {
  return CONDITIONS.flatMap((condition) => {
    const [a, b] = [here.conditions.get(condition), there.conditions.get(condition)];
    const same = condition === 'days-strung' ? sameAge(response, here, there) : agree(condition, response, a, b);
    return same ? [] : [{ condition, here: a, there: b }];
  });
}

/** Days since stringing: stated, or told by the name of the occasion, `reading day-30 { … }`. */
export function daysStrung(reading: Reading): number | undefined {
  const stated = reading.conditions.get('days-strung')?.value;
  if (stated?.kind === 'quantity') return stated.quantity.si / DAY;
  const named = /^day-(\d{1,5})$/.exec(reading.name);
  return named ? Number(named[1]) : undefined;
}

/** A day, or a fifth of the time strung, apart. */
function sameAge(response: string, here: Reading, there: Reading): boolean {
  if (response.startsWith('deflection.')) return true;
  const [a, b] = [daysStrung(here), daysStrung(there)];
  if (a === undefined || b === undefined) return a === b;
  return Math.abs(a - b) <= Math.max(1, 0.2 * Math.max(a, b));
}

/** How far apart conditions may lie: 5 %RH, 5 K and 1 %MC, as a shop keeps them. (common practice) */
const NEAR: Partial<Record<Condition, number>> = { humidity: 0.05, temperature: 5, moisture: 0.01 };
const DAY = 86_400;

function agree(condition: Condition, response: string, a: Held | undefined, b: Held | undefined): boolean {
  // The day of the calendar is no condition; hygrometer and reader are listed as changes of their own.
  if (condition === 'date' || condition === 'hygrometer' || condition === 'reader') return true;
  const isSag = response.startsWith('deflection.');
  if (condition === 'rig') return !isSag || (a !== undefined && b !== undefined && sameValue(a.value, b.value));
  if (isSag && (condition === 'strings-damped' || condition === 'method')) return true;
  if (condition === 'stage' || condition === 'strings-damped') {
    if (a === undefined || b === undefined) return a === b;
  } else if (a === undefined || b === undefined) {
    return true;
  }
  if (a.value.kind !== 'quantity' || b.value.kind !== 'quantity') return sameValue(a.value, b.value);
  const [x, y] = [a.value.quantity.si, b.value.quantity.si];
  return Math.abs(x - y) <= (NEAR[condition] ?? 0) * (1 + 1e-9);
}

function heldAgainst(
  response: string,
  si: number,
  reading: Reading,
  reference: readonly BuildRecord[],
  context: EvidenceContext,
): Compared | NotComparable | undefined {
  const found = reference.flatMap((build) => {
    const value = comparableValue(response, reading, build);
    return value === undefined ? [] : [{ name: build.definition.name.text, log: Math.log(value) }];
  });
  if (found.length === 0) return notComparable(response, reading, reference);
  const scatter =
    pooledScatter(response, reading, context.groups) ??
    (context.isFrequency(response) ? { ...context.stated, freedom: Number.POSITIVE_INFINITY, builds: [] } : undefined);
  if (!scatter) return undefined;
  const log = found.reduce((sum, one) => sum + one.log, 0) / found.length;
  const half = studentT(0.95, scatter.freedom) * scatter.share * Math.sqrt(1 + 1 / found.length);
  const mean = Math.exp(log);
  return {
    kind: 'compared',
    against: found.map(({ name }) => name),
    mean,
    // Through the logarithm and back, equal readings differ in the last bit.
    difference: Math.abs(si - mean) < 1e-9 * mean ? 0 : si - mean,
    band: mean * Math.expm1(half),
    scatter,
    distinguishable: Math.abs(Math.log(si) - log) > half,
  };
}

/** After a rework it is another instrument than its recipe says. */
function asFirstMade({ readings }: BuildRecord): readonly Reading[] {
  return readings.filter(({ state }) => state === 0);
}

/** The reading of a build under the same conditions. */
function comparableValue(response: string, like: Reading, build: BuildRecord): number | undefined {
  for (const reading of asFirstMade(build)) {
    const held = reading.values.get(response);
    if (held?.value.kind !== 'quantity' || !(held.value.quantity.si > 0)) continue;
    if (disagreements(response, like, reading).length === 0) return held.value.quantity.si;
  }
  return undefined;
}

/** The nearest there is, with what keeps it from being compared. */
function notComparable(
  response: string,
  reading: Reading,
  reference: readonly BuildRecord[],
): NotComparable | undefined {
  let nearest: NotComparable | undefined;
  for (const build of reference) {
    for (const other of asFirstMade(build)) {
      if (!other.values.has(response)) continue;
      const reasons = disagreements(response, reading, other);
      if (nearest && nearest.reasons.length <= reasons.length) continue;
      nearest = { kind: 'not-comparable', against: build.definition.name.text, reading: other, reasons };
    }
  }
  return nearest;
}
