/**
 * What each change did to one kind of reading: computed, from the builds alone, and both together. What the builds cannot
 * tell apart is named and given no number of its own; where builds and mechanics disagree, that is the finding.
 */
import type { Design, DesignVariable } from './design-matrix.js';
import type { EffectProblem, Factor, Fitted, Observation, Told } from './effect-model.js';
import type { Predicted, Predictor } from './predictor.js';
import { isVaried } from './least-squares.js';
import type { Response } from './responses.js';
import { type Separation, separate } from './separation.js';
import { placesInTime, wentWithTime } from './series.js';
import { type ThreeColumns, threeColumns } from './three-columns.js';

export interface ResponseEffects {
  readonly response: Response;
  /** Rows of the design it was read in. */
  readonly rows: readonly number[];
  readonly outcome: FittedResponse | NotFitted;
}

/** A change of the reading, SI: nineteen times in twenty within ± `band` of `amount`. */
export interface Interval {
  readonly amount: number;
  readonly band: number;
}

export interface ToldEffect {
  /** More than one: they always moved together, and this is what they did together. */
  readonly variables: readonly DesignVariable[];
  /** They came and went with time: what a hand learns meanwhile cannot be told from them. */
  readonly withTime: boolean;
  readonly computed?: Interval;
  /** Undefined where these builds cannot tell it from others. */
  readonly builds?: Interval;
  readonly together?: Interval;
  /** How much of what is told together comes from the builds, 0 … 1. */
  readonly share?: number;
  readonly verdict: Verdict;
  /** Instruments that were read before and after this change. */
  readonly beforeAndAfter: readonly string[];
  /** The same on the scale of the logarithm. */
  readonly log: { readonly builds?: Told; readonly together?: Told; readonly computed?: Factor['computed'] };
}

/** `disagrees`: builds and mechanics cannot both be right. `builds`: stands out of the builds alone; `together`: of both. */
export type Verdict = 'disagrees' | 'builds' | 'together' | 'hidden';

export interface FittedResponse {
  readonly kind: 'fitted';
  /** What the reference comes to, SI. */
  readonly start: number;
  readonly effects: readonly ToldEffect[];
  /** Variables that these builds cannot tell apart, a knot at a time. */
  readonly tangled: readonly (readonly DesignVariable[])[];
  /** Standard deviation of one reading among instruments built alike, as a share. */
  readonly scatter: Fitted['scatter'] & { readonly basis: 'builds' | 'builds and shop' | 'shop' | 'common practice' };
  readonly repeatability: Fitted['repeatability'];
  /** The order in which they were made shows in the readings: over the whole series, SI. */
  readonly drift?: Interval & { readonly chance: number };
  /** How far a plain number from these builds is computed too: the solver is still at some of it. */
  readonly pending: boolean;
  /** For each value of the response what is computed for that very instrument, SI. */
  readonly predicted: readonly (number | undefined)[];
  readonly columns: ThreeColumns;
}

export interface NotFitted {
  readonly kind: 'too-few-builds' | 'nothing-varied' | 'no-scatter';
  /** Effects to find, and the value they start from. */
  readonly unknowns: number;
}

export function fittedIn(outcome: ResponseEffects['outcome']): FittedResponse | undefined {
  return outcome.kind === 'fitted' ? outcome : undefined;
}

export interface EffectContext {
  readonly stated: (path: string) => EffectProblem['stated'];
  /** What a reading repeats to by common practice, as a share. */
  readonly repeats: (path: string, si: number) => number;
}

/** Every kind of reading that three rows have, or one instrument before and after a rework. */
export function responseEffects(
  design: Design,
  responses: readonly Response[],
  predictor: Predictor,
  context: EffectContext,
): readonly ResponseEffects[] {
  const times = placesInTime(design.builds);
  const prepared = responses
    .filter((response) => isEnough(design, response))
    .map((response) => prepare(design, response, times, predictor, context));
  const ready = prepared.filter((one) => one.problem !== undefined);
  const told = threeColumns(ready.map(({ problem }) => problem!));
  return prepared.map((one) => {
    const columns = told[ready.indexOf(one)];
    return { response: one.response, rows: one.rows, outcome: outcomeOf(design, one, columns) };
  });
}

function isEnough({ builds }: Design, { values }: Response): boolean {
  const rows = new Set(values.map(({ row }) => row));
  return rows.size >= 3 || new Set([...rows].map((row) => builds[row]!.owner)).size < rows.size;
}

interface Prepared {
  readonly response: Response;
  readonly rows: readonly number[];
  readonly separation: Separation;
  readonly groups: readonly (readonly DesignVariable[])[];
  readonly withTime: readonly boolean[];
  readonly predicted: readonly Predicted[];
  readonly pending: boolean;
  readonly problem?: EffectProblem;
}

function prepare(
  design: Design,
  response: Response,
  times: readonly number[],
  predictor: Predictor,
  context: EffectContext,
): Prepared {
  const rows = [...new Set(response.values.map(({ row }) => row))];
  const columns = design.variables.map(({ column }) => rows.map((row) => column[row]!));
  const separation = separate(columns);
  const groups = separation.groups.map((group) => group.map((i) => design.variables[i]!));
  const ownTimes = rows.map((row) => times[row]!);
  const predicted = response.values.map((value) => predictor.of(response, value));
  const factors = groups.map((group) => factorOf(group, response, predictor));
  const base = { response, rows, separation, groups, predicted };
  const whole = {
    ...base,
    withTime: separation.groups.map(([first]) => wentWithTime(columns[first!]!, ownTimes)),
    pending: predicted.includes('pending') || factors.includes('pending'),
  };
  if (groups.length === 0) return whole;
  const { si } = response.values[0]!;
  const observations = response.values.map((value, i): Observation => {
    const build = design.builds[value.row]!;
    const computed = predicted[i];
    return {
      log: Math.log(value.si),
      ...(typeof computed === 'number' ? { computed: Math.log(computed) } : {}),
      owner: build.owner,
      state: build.state,
      occasion: value.occasion,
      rounding: value.rounding,
      steps: groups.map(([first]) => (first!.column[value.row]! - first!.column[design.reference]!) / first!.step),
      time: times[value.row]!,
    };
  });
  const stated = context.stated(response.path);
  return {
    ...whole,
    problem: {
      observations,
      factors: factors.map((factor) => (factor === 'pending' ? {} : factor)),
      repeats: context.repeats(response.path, si),
      ...(stated ? { stated } : {}),
    },
  };
}

/** What is computed of a group: all of it, part of it, or nothing. */
function factorOf(group: readonly DesignVariable[], response: Response, predictor: Predictor): Factor | 'pending' {
  const whole = predictor.effect(response, group);
  if (whole === 'pending') return 'pending';
  if (!whole) return {};
  const isWhole = group.every((variable) => predictor.knows(variable));
  return isWhole ? { computed: whole } : { partly: whole.amount };
}

function outcomeOf(design: Design, one: Prepared, columns: ThreeColumns | undefined): FittedResponse | NotFitted {
  const { separation, groups, response } = one;
  const unknowns = groups.length + 1;
  if (groups.length === 0 || !columns) return { kind: 'nothing-varied', unknowns };
  const { builds, together, problem } = columns;
  const fitted = builds ?? together;
  if (!fitted) return { kind: one.rows.length < unknowns ? 'too-few-builds' : 'no-scatter', unknowns };
  const start = Math.exp(builds?.start ?? meanLog(response));
  const interval = ({ amount, half }: { readonly amount: number; readonly half: number }): Interval => ({
    amount: start * Math.expm1(amount),
    band: start * Math.expm1(half),
  });
  const clear = new Set(separation.clear.map((group) => separation.groups.indexOf(group)));
  const effects = groups.map((variables, j): ToldEffect => {
    const computed = problem.factors[j]!.computed;
    const alone = clear.has(j) ? builds?.effects[j] : undefined;
    // Without a word from mechanics there is nothing to put together; while mechanics are at work, nobody can say yet.
    const both = one.pending ? undefined : computed ? together?.effects[j] : alone;
    return {
      variables,
      withTime: one.withTime[j]!,
      ...(computed ? { computed: interval({ amount: computed.amount, half: 1.96 * computed.error }) } : {}),
      ...(alone ? { builds: interval(alone) } : {}),
      ...(both ? { together: interval(both) } : {}),
      ...(computed && both ? { share: 1 - Math.min(1, (both.error / computed.error) ** 2) } : {}),
      verdict: verdictOf(columns, j, alone, computed ? both : undefined),
      beforeAndAfter: beforeAndAfter(design, response, variables[0]!),
      log: { builds: alone, together: both, computed },
    };
  });
  if (effects.every((effect) => !effect.builds && !effect.together)) return { kind: 'too-few-builds', unknowns };
  const drift = columns.drift && (together ?? builds)?.drift;
  return {
    kind: 'fitted',
    start,
    effects,
    tangled: separation.tangled.map((knot) => knot.flat().map((i) => design.variables[i]!)),
    scatter: { ...fitted.scatter, basis: basisOf(fitted, problem) },
    repeatability: fitted.repeatability,
    ...(drift ? { drift: { ...interval(drift), chance: columns.drift.chance } } : {}),
    pending: one.pending,
    predicted: one.predicted.map((each) => (typeof each === 'number' ? each : undefined)),
    columns,
  };
}

function verdictOf({ disagrees, standsOut }: ThreeColumns, j: number, alone?: Told, both?: Told): Verdict {
  if (alone && disagrees[j]) return 'disagrees';
  if (alone && standsOut[j]) return 'builds';
  return both && Math.abs(both.amount) > both.half ? 'together' : 'hidden';
}

function basisOf({ scatter }: Fitted, { stated }: EffectProblem): FittedResponse['scatter']['basis'] {
  if (!Number.isFinite(scatter.freedom)) return stated!.basis;
  return stated?.basis === 'shop' ? 'builds and shop' : 'builds';
}

function beforeAndAfter({ builds }: Design, { values }: Response, { column }: DesignVariable): readonly string[] {
  const owners = [...new Set(values.map(({ row }) => builds[row]!.owner))];
  return owners.flatMap((owner) => {
    const own = values.filter(({ row }) => builds[row]!.owner === owner);
    const steps = own.map(({ row }) => column[row]!);
    return steps.length > 1 && isVaried(steps) ? [builds[own[0]!.row]!.definition.name.text] : [];
  });
}

function meanLog({ values }: Response): number {
  return values.reduce((sum, { si }) => sum + Math.log(si), 0) / values.length;
}
