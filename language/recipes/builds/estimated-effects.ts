/**
 * What each change did, told from all builds of a model at once: for every response read under one set of conditions the
 * effects that the builds can tell apart, by least squares on the logarithm of the reading, with the scatter of builds
 * alike as the measure of what can be found. What they cannot tell apart is named and not fitted.
 */
import type { Reading } from './builds.js';
import type { Design, DesignVariable } from './design-matrix.js';
import { type EvidenceContext, disagreements, pooledScatter } from './evidence.js';
import type { Held } from '../instrument/instrument.js';
import { type Fit, leastSquares } from './least-squares.js';
import { type Separation, separate } from './separation.js';
import { studentT } from './statistics/student-t.js';
import { lastDigitStep } from '../instrument/values.js';

export interface Response {
  /** Canonical path of what was read. */
  readonly path: string;
  /** The first such reading: the others were taken under the same conditions. */
  readonly reading: Reading;
  readonly held: Held;
  /** Reading by index of the build, SI. */
  readonly values: ReadonlyMap<number, number>;
}

export interface ResponseEffects {
  readonly response: Response;
  /** Index in the design of the builds it was read in. */
  readonly builds: readonly number[];
  readonly outcome: Fitted | NotFitted;
}

export interface Fitted {
  readonly kind: 'fitted';
  /** What the reference comes to, or the mean of the builds where it was not read in that, SI. */
  readonly start: number;
  readonly effects: readonly EstimatedEffect[];
  /** Variables that could not be told apart in these builds, a knot at a time. */
  readonly tangled: readonly (readonly DesignVariable[])[];
  readonly floor: Floor;
}

export interface NotFitted {
  readonly kind: 'too-few-builds' | 'nothing-varied' | 'no-scatter';
  /** Effects to find, and the value they start from. */
  readonly unknowns: number;
}

/**
 * What an effect is held against. `leftover`: what the effects leave unexplained, where it is more than builds alike show.
 * `reading`: the last digit that was written down, where builds alike show less.
 */
export interface Floor {
  /** Standard deviation of one reading, as a share of its value. */
  readonly share: number;
  readonly freedom: number;
  readonly basis: 'replicates' | 'shop' | 'common practice' | 'leftover' | 'reading';
  readonly builds: readonly string[];
}

export interface EstimatedEffect {
  /** More than one: they always moved together, and this is what they did together. */
  readonly variables: readonly DesignVariable[];
  /** What the step of the first variable did to the response, SI. */
  readonly amount: number;
  /** Nineteen times in twenty the effect is within ± this of the amount, SI. */
  readonly band: number;
  readonly distinguishable: boolean;
}

export interface EstimateContext extends EvidenceContext {
  /** Whether a number has a unit that fits what was read. */
  readonly isReadable: (path: string, held: Held) => boolean;
}

/** Every response that three or more builds have. */
export function estimatedEffects(design: Design, context: EstimateContext): readonly ResponseEffects[] {
  return responsesOf(design, context)
    .filter(({ values }) => values.size >= 3)
    .map((response) => {
      const builds = [...response.values.keys()];
      return { response, builds, outcome: estimate(design, response, builds, context) };
    });
}

function estimate(
  { variables, reference }: Design,
  response: Response,
  builds: readonly number[],
  context: EstimateContext,
): Fitted | NotFitted {
  const columns = variables.map(({ column }) => builds.map((row) => column[row]!));
  const separation = separate(columns);
  const unknowns = separation.groups.length + 1;
  if (separation.groups.length === 0) return { kind: 'nothing-varied', unknowns };
  if (builds.length < unknowns) return { kind: 'too-few-builds', unknowns };
  const logs = [...response.values.values()].map(Math.log);
  const fit = leastSquares(
    separation.groups.map(([first]) => columns[first!]!),
    logs,
  );
  const start = Math.exp(fit.fitted[builds.indexOf(reference)] ?? fit.mean);
  const floor = floorFor(response, start, fit, context);
  if (!floor) return { kind: 'no-scatter', unknowns };
  return {
    kind: 'fitted',
    start,
    effects: effectsIn(separation, fit, variables, start, floor),
    tangled: separation.tangled.map((knot) => knot.flat().map((i) => variables[i]!)),
    floor,
  };
}

function effectsIn(
  { groups, clear }: Separation,
  { slopes, variances }: Fit,
  variables: readonly DesignVariable[],
  start: number,
  { share, freedom }: Floor,
): readonly EstimatedEffect[] {
  const t = studentT(0.95, freedom);
  return clear.map((group) => {
    const i = groups.indexOf(group);
    const { step } = variables[group[0]!]!;
    const log = slopes[i]! * step;
    const half = t * share * Math.sqrt(variances[i]!) * Math.abs(step);
    return {
      variables: group.map((each) => variables[each]!),
      amount: start * Math.expm1(log),
      band: start * Math.expm1(half),
      distinguishable: Math.abs(log) > half,
    };
  });
}

/**
 * The scatter of builds alike, but never less than the last digit written down. Where the effects leave more unexplained than
 * that, and there are as many builds to say so, what is left over is the scatter: something else was at work.
 */
function floorFor(response: Response, start: number, { leftover }: Fit, context: EstimateContext): Floor | undefined {
  const alike = pooledScatter(response.path, response.reading, context.groups);
  const stated = context.isFrequency(response.path)
    ? { ...context.stated, freedom: Number.POSITIVE_INFINITY, builds: [] }
    : undefined;
  const known: Floor | undefined = alike ?? stated;
  const unexplained = leftover.freedom > 0 ? Math.sqrt(leftover.squares / leftover.freedom) : 0;
  const least = lastDigit(response.held) / start;
  const isMore = leftover.freedom >= Math.min(known?.freedom ?? 2, 2) && unexplained > (known?.share ?? 0) * (1 + 1e-6);
  const floor: Floor | undefined = isMore
    ? { share: unexplained, freedom: leftover.freedom, basis: 'leftover', builds: [] }
    : known;
  return floor && floor.share < least ? { ...floor, share: least, basis: 'reading' } : floor;
}

/** Standard uncertainty of a number rounded to the digits it was written with, SI: half a step, rectangular. */
function lastDigit({ value }: Held): number {
  if (value.kind !== 'quantity') return 0;
  return (lastDigitStep(value.written) * (value.quantity.unit?.factor ?? 1)) / 2 / Math.sqrt(3);
}

/** Readings of the same thing under the same conditions; of a build the first that fits. */
function responsesOf({ builds }: Design, context: EstimateContext): readonly Response[] {
  const found: (Response & { readonly values: Map<number, number> })[] = [];
  builds.forEach((build, row) => {
    for (const reading of build.readings) {
      for (const [path, held] of reading.values) {
        const { value } = held;
        if (value.kind !== 'quantity' || !(value.quantity.si > 0) || !context.isReadable(path, held)) continue;
        const same = found.find(
          (one) => one.path === path && !one.values.has(row) && disagreements(path, one.reading, reading).length === 0,
        );
        if (same) same.values.set(row, value.quantity.si);
        else if (!found.some((one) => one.path === path && one.reading === reading)) {
          found.push({ path, reading, held, values: new Map([[row, value.quantity.si]]) });
        }
      }
    }
  });
  return found;
}
