/**
 * `hold q by p`: find the value of p, within its plausible range, at which the derived quantity q equals the parent's
 * (or the value asked for). What a hold solves is a consequence of the other changes, not a change of its own.
 */
import type { Derived, Evaluation } from '../evaluation/evaluation.js';
import type { QuantityValue, Value } from '../../facts/facts.js';
import { computed, type Held, type HoldRequest, type Instrument, movedBy } from './instrument.js';

export type HoldOutcome =
  /** `before` is the value of p without the hold. */
  | {
      readonly kind: 'solved';
      readonly value: QuantityValue;
      readonly before: QuantityValue;
      readonly target: number;
      /** What went along with it. */
      readonly along: readonly {
        readonly path: string;
        readonly value: QuantityValue;
        readonly before: QuantityValue;
      }[];
    }
  | { readonly kind: 'unknown'; readonly missing: readonly string[]; readonly trouble?: string }
  /** The solver of plates is still at it; until then p stays as it was. */
  | { readonly kind: 'pending' }
  /** q is not a derived quantity, or p not a number of the recipe. */
  | { readonly kind: 'not-possible'; readonly what: 'quantity' | 'by' }
  /** q does not depend on p. */
  | { readonly kind: 'no-effect' }
  /** Within the range of p the nearest q is `reached`, at p = `closest`. All SI. */
  | {
      readonly kind: 'out-of-reach';
      readonly target: number;
      readonly reached: number;
      readonly closest: number;
      readonly low: number;
      readonly high: number;
    }
  /** The holds need each other; `paths` names the loop. */
  | { readonly kind: 'loop'; readonly paths: readonly string[] };

export interface SolvedHold {
  readonly request: HoldRequest;
  readonly outcome: HoldOutcome;
}

export interface HoldContext {
  readonly parent: Evaluation | undefined;
  readonly evaluate: (values: ReadonlyMap<string, Held>) => Evaluation;
  /** Plausible range of a path, SI. */
  readonly range: (path: string) => { readonly low: number; readonly high: number } | undefined;
}

export interface SolvedInstrument {
  readonly values: ReadonlyMap<string, Held>;
  readonly holds: readonly SolvedHold[];
}

export function solveHolds(instrument: Instrument, context: HoldContext): SolvedInstrument {
  if (instrument.holds.length === 0) return { values: instrument.values, holds: [] };
  const order = inOrderOfNeed(instrument, context);
  const outcomes = new Map<HoldRequest, HoldOutcome>(order.loops);
  let values: ReadonlyMap<string, Held> = instrument.values;
  for (const request of order.solvable) {
    const outcome = solve(request, values, context);
    outcomes.set(request, outcome);
    if (outcome.kind !== 'solved') continue;
    values = withValue(values, request.by, outcome.value, request);
    for (const { path, value } of outcome.along) values = withValue(values, path, value, request);
  }
  return { values, holds: instrument.holds.map((request) => ({ request, outcome: outcomes.get(request)! })) };
}

/** The same values with one of them replaced. */
export function withValue(
  values: ReadonlyMap<string, Held>,
  path: string,
  value: Value,
  request: HoldRequest,
): ReadonlyMap<string, Held> {
  const next = new Map(values);
  next.set(path, { path, value, from: request.from, via: 'solved', before: values.get(path) });
  return next;
}

/** A hold whose quantity depends on what another hold solves comes after it; a ring of such holds cannot be solved. */
function inOrderOfNeed(
  instrument: Instrument,
  context: HoldContext,
): { solvable: readonly HoldRequest[]; loops: readonly [HoldRequest, HoldOutcome][] } {
  if (instrument.holds.length === 1) return { solvable: instrument.holds, loops: [] };
  const evaluation = context.evaluate(instrument.values);
  const needs = new Map(
    instrument.holds.map((hold) => {
      const gradient = evaluation.gradient(hold.quantity);
      return [
        hold,
        instrument.holds.filter((other) => other !== hold && movedBy(other).some((by) => gradient.has(by))),
      ] as const;
    }),
  );
  const solvable: HoldRequest[] = [];
  let waiting = [...instrument.holds];
  for (let ready = waiting; ready.length > 0;) {
    ready = waiting.filter((hold) => needs.get(hold)!.every((other) => solvable.includes(other)));
    solvable.push(...ready);
    waiting = waiting.filter((hold) => !ready.includes(hold));
  }
  const paths = waiting.map((hold) => `${hold.quantity} by ${movedBy(hold).join(', ')}`);
  return { solvable, loops: waiting.map((hold) => [hold, { kind: 'loop', paths }]) };
}

function solve(request: HoldRequest, values: ReadonlyMap<string, Held>, context: HoldContext): HoldOutcome {
  const now = values.get(request.by)?.value;
  if (now?.kind !== 'quantity') return { kind: 'not-possible', what: 'by' };
  const others = othersOf(request, now, values);
  if (!others) return { kind: 'not-possible', what: 'by' };
  const evaluation = context.evaluate(values);
  const present = evaluation.derived(request.quantity);
  if (!present) return { kind: 'not-possible', what: 'quantity' };
  if (!present.known) return unknown(present);
  const target = targetOf(request, context.parent);
  if (typeof target !== 'number') return target;

  const valueAt = (si: number): QuantityValue =>
    computed({ ...now.quantity, si, tolerance: undefined }, request.statement.span) as QuantityValue;
  const waits: string[] = [];
  const miss = (si: number): number => {
    let tried = withValue(values, request.by, valueAt(si), request);
    for (const other of others) tried = withValue(tried, other.path, other.at(si), request);
    const derived = context.evaluate(tried).derived(request.quantity);
    if (derived?.known === false && derived.pending) waits.push(request.quantity);
    return derived?.known ? derived.si - target : Number.NaN;
  };
  const scale = Math.max(Math.abs(target), Math.abs(present.si)) || 1;
  const range = rangeOfAll(request, now, others, context);
  const effort = present.quantity.slow ? SOLVED : COMPUTED;
  const found = findRoot(miss, {
    start: now.quantity.si,
    ...range,
    close: effort.close * scale,
    steps: effort.steps,
    slope: present.quantity.slow ? slopeAlong(request, evaluation) : undefined,
    mayGoOn: () => waits.length === 0,
  });
  if (waits.length > 0) return { kind: 'pending' };
  if (found.kind === 'root') {
    const along = others.map(({ path, before, at }) => ({ path, before, value: at(found.at) }));
    return { kind: 'solved', value: valueAt(found.at), before: now, target, along };
  }
  if (found.kind === 'flat') return { kind: 'no-effect' };
  return { kind: 'out-of-reach', target, reached: found.miss + target, closest: found.at, ...range };
}

/** How exactly a hold is kept, as a share of the quantity, and how finely the range is searched if steps lead nowhere. */
const COMPUTED = { close: 1e-9, steps: 24 };
/** What takes the solver costs some ten milliseconds each time, and is known to less. */
const SOLVED = { close: 1e-6, steps: 8 };

/** How the quantity goes with `by` while the others go along; undefined where that is not known. */
export function slopeAlong(request: HoldRequest, evaluation: Evaluation): number | undefined {
  const gradient = evaluation.gradient(request.quantity);
  const first = evaluation.number(request.by);
  let slope: number | undefined;
  for (const path of movedBy(request)) {
    const leaf = evaluation.ground.leaf(path);
    const own = leaf && gradient.get(leaf.id);
    const value = evaluation.number(path);
    if (own === undefined || first === undefined || value === undefined || first === 0) continue;
    slope = (slope ?? 0) + (own * value) / first;
  }
  return slope;
}

interface Other {
  readonly path: string;
  readonly before: QuantityValue;
  readonly ratio: number;
  readonly at: (si: number) => QuantityValue;
}

/** What goes along with `by`, each in the proportion it has now; undefined where one has no number to start from. */
function othersOf(
  request: HoldRequest,
  by: QuantityValue,
  values: ReadonlyMap<string, Held>,
): readonly Other[] | undefined {
  const others: Other[] = [];
  for (const path of request.along) {
    const before = values.get(path)?.value;
    if (before?.kind !== 'quantity' || by.quantity.si === 0) return undefined;
    const ratio = before.quantity.si / by.quantity.si;
    const at = (si: number): QuantityValue =>
      computed({ ...before.quantity, si: si * ratio, tolerance: undefined }, request.statement.span) as QuantityValue;
    others.push({ path, before, ratio, at });
  }
  return others;
}

/** Between what all of them may be. */
function rangeOfAll(request: HoldRequest, now: QuantityValue, others: readonly Other[], context: HoldContext) {
  const own = context.range(request.by) ?? { low: now.quantity.si / 4, high: now.quantity.si * 4 };
  let { low, high } = own;
  for (const { path, ratio } of others) {
    const range = ratio > 0 ? context.range(path) : undefined;
    if (!range) continue;
    low = Math.max(low, range.low / ratio);
    high = Math.min(high, range.high / ratio);
  }
  return low <= high ? { low, high } : own;
}

function targetOf(request: HoldRequest, parent: Evaluation | undefined): number | HoldOutcome {
  const { at } = request.statement;
  if (at?.kind === 'quantity') return at.quantity.si;
  const held = parent?.derived(request.quantity);
  if (!held) return { kind: 'unknown', missing: [], trouble: 'there is no parent to hold it to; say `at` a value' };
  return held.known ? held.si : unknown(held);
}

function unknown(derived: Derived & { known: false }): HoldOutcome {
  if (derived.pending) return { kind: 'pending' };
  return { kind: 'unknown', missing: derived.missing, trouble: derived.trouble };
}

type Search =
  | { readonly kind: 'root'; readonly at: number }
  | { readonly kind: 'flat' }
  | { readonly kind: 'none'; readonly at: number; readonly miss: number };

interface SearchSpace {
  readonly start: number;
  readonly low: number;
  readonly high: number;
  /** A miss as small as this is none. */
  readonly close: number;
  readonly steps: number;
  /** At the start, where it is known. */
  readonly slope?: number;
  /** False as soon as the function has no answer yet. */
  readonly mayGoOn: () => boolean;
}

/**
 * Secant steps from the present value, since a hold usually moves p by a few per cent; if they leave the range or
 * stall, the range is scanned for a change of sign and bisected (Brent would save a few evaluations, not clarity).
 */
function findRoot(f: (x: number) => number, space: SearchSpace): Search {
  const { start, low, high, close, mayGoOn } = space;
  let a = start;
  let fa = f(a);
  if (Math.abs(fa) <= close) return { kind: 'root', at: a };
  let b = firstStep(fa, space);
  let fb = f(b);
  for (let round = 0; round < 12 && fb !== fa && mayGoOn(); round++) {
    if (Math.abs(fb) <= close) return { kind: 'root', at: b };
    const next = b - (fb * (b - a)) / (fb - fa);
    if (!Number.isFinite(next) || next < low || next > high) break;
    [a, fa] = [b, fb];
    b = next;
    fb = f(b);
  }
  if (Math.abs(fb) <= close) return { kind: 'root', at: b };
  return mayGoOn() ? scan(f, space) : NOTHING_YET;
}

const NOTHING_YET: Search = { kind: 'none', at: Number.NaN, miss: Number.NaN };

function firstStep(miss: number, { start, low, high, slope }: SearchSpace): number {
  const straight = slope ? start - miss / slope : Number.NaN;
  return straight > low && straight < high ? straight : start * 1.01 || low + 0.01 * (high - low);
}

function scan(f: (x: number) => number, space: SearchSpace): Search {
  const { low, high, close, steps, mayGoOn } = space;
  // All of them first: a solver elsewhere can then work at one after another without being asked again for each.
  const all = Array.from({ length: steps + 1 }, (_, i) => low + ((high - low) * i) / steps).map((at) => ({
    at,
    miss: f(at),
  }));
  if (!mayGoOn()) return NOTHING_YET;
  const known = all.filter(({ miss }) => Number.isFinite(miss));
  const crossing = known.findIndex(({ miss }, i) => i > 0 && known[i - 1]!.miss * miss <= 0);
  if (crossing > 0) return { kind: 'root', at: bisect(f, known[crossing - 1]!.at, known[crossing]!.at, space) };
  const misses = known.map(({ miss }) => miss);
  if (Math.max(...misses) - Math.min(...misses) <= close) return { kind: 'flat' };
  const best = known.reduce((nearest, one) => (Math.abs(one.miss) < Math.abs(nearest.miss) ? one : nearest));
  return { kind: 'none', ...best };
}

function bisect(f: (x: number) => number, from: number, to: number, { close, mayGoOn }: SearchSpace): number {
  let [a, b] = [from, to];
  let fa = f(a);
  for (let round = 0; round < 80; round++) {
    const middle = (a + b) / 2;
    const fm = f(middle);
    if (Math.abs(fm) <= close || !mayGoOn()) return middle;
    if (fa * fm <= 0) b = middle;
    else [a, fa] = [middle, fm];
  }
  return (a + b) / 2;
}
