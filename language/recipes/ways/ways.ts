/**
 * What would get me there? Every single change within plausible sizes that meets a wish, with the size it takes, what else it
 * moves and whether that can be told, until when it is possible, and how sure. Members laid out as a pair, as the two legs of
 * an X, are one change and are offered as one.
 */
import type { Freeze } from '../../catalogue/property.js';
import type { DerivedQuantity, Evaluation } from '../evaluation/evaluation.js';
import { type Effect, effectsBetween } from '../evaluation/effects.js';
import { uncertaintyOfStep } from '../evaluation/step-uncertainty.js';
import { computed, type Held } from '../instrument/instrument.js';
import type { Workshop } from '../workshop.js';
import { makeable } from './makeable.js';
import { aimOf, shortfall, type Wish } from './wish.js';

export interface Way {
  /** More than one: a pair that is changed as one. */
  readonly paths: readonly string[];
  readonly from: Held;
  /** SI */
  readonly old: number;
  readonly new: number;
  /** The quantity wished for, before and with it, SI. */
  readonly before: number;
  readonly after: number;
  /** Standard uncertainty of that difference, mechanics' own error with it, SI. */
  readonly error: number;
  /** What else it moves, the most noticeable first. */
  readonly also: readonly Effect[];
  /** Until when it can be done on an instrument in the making, this way. */
  readonly until: Pick<Freeze, 'costly' | 'impossible'>;
}

export interface Ways {
  readonly wish: Wish;
  readonly quantity?: DerivedQuantity;
  /** SI; undefined where it cannot be computed. */
  readonly now?: number;
  readonly isMet: boolean;
  /** The solver is still at it: ask again. */
  readonly pending: boolean;
  readonly ways: readonly Way[];
}

/** Mechanics may be wrong by a fifth of an effect until its model error is known quantity by quantity. */
const MODEL_ERROR = 0.2;

/** `held`: quantities a recipe holds: what moves them would be undone by the hold. */
export function waysTo(
  workshop: Workshop,
  values: ReadonlyMap<string, Held>,
  wish: Wish,
  held: readonly string[] = [],
): Ways {
  const quantity = workshop.derivedAt(wish.quantity);
  const here = workshop.evaluateInFull(values);
  const derived = here.derived(wish.quantity);
  const none = { wish, quantity, isMet: false, pending: false, ways: [] };
  if (!derived?.known) return { ...none, pending: derived?.known === false && derived.pending === true };
  const now = derived.si;
  if (shortfall(wish, now) === 0) return { ...none, now, isMet: true };
  const search = new Search(workshop, values, here, wish, now);
  const ways = candidates(workshop, values, here, wish.quantity, held).flatMap((paths) => search.along(paths) ?? []);
  // What needs no other mould first, then what upsets the rest least.
  const mould = ({ paths }: Way) => (workshop.classOf(paths[0]!) === 'body' ? 1 : 0);
  ways.sort((a, b) => mould(a) - mould(b) || upset(a) - upset(b));
  return { wish, quantity, now, isMet: false, pending: search.pending, ways };
}

/** How much of what a maker hears or feels moves beside what was asked for. */
function upset({ also }: Way): number {
  return also.reduce((sum, { difference, discernible }) => sum + Math.abs(difference) / (discernible || 1), 0);
}

/** What was fitted to readings, not made. */
const NOT_MADE = /(^|\.)rim-stiffness$/;

/** Numbers of the recipe that move the quantity, pairs together. */
function candidates(
  workshop: Workshop,
  values: ReadonlyMap<string, Held>,
  here: Evaluation,
  quantity: string,
  heldQuantities: readonly string[],
): readonly (readonly string[])[] {
  const slopes = here.gradient(quantity);
  const holding = heldQuantities.map((each) => here.gradient(each));
  const found: string[][] = [];
  for (const [path, { value, via }] of values) {
    const slope = slopes.get(path);
    if (value.kind !== 'quantity' || via === 'solved' || slope === undefined || slope === 0) continue;
    if (!['voicing', 'body', 'setup'].includes(workshop.classOf(path)) || NOT_MADE.test(path)) continue;
    if (holding.some((each) => (each.get(path) ?? 0) !== 0)) continue;
    const pair = found.find(([first]) => isPairOf(first!, path) && sameNumber(values.get(first!), values.get(path)));
    if (pair) pair.push(path);
    else found.push([path]);
  }
  return found;
}

/** `x-bass` and `x-treble`: what is told apart by the side it lies on. */
function isPairOf(a: string, b: string): boolean {
  return a !== b && a.replace(SIDE, '') === b.replace(SIDE, '');
}

const SIDE = /-(bass|treble)(?=\.|$)/;

function sameNumber(a: Held | undefined, b: Held | undefined): boolean {
  if (a?.value.kind !== 'quantity' || b?.value.kind !== 'quantity') return false;
  return Math.abs(a.value.quantity.si - b.value.quantity.si) <= 1e-9 * Math.abs(a.value.quantity.si);
}

class Search {
  pending = false;
  private readonly aim: number;
  /** Near enough, SI: rounding to what can be made moves it further. */
  private readonly near: number;

  constructor(
    private readonly workshop: Workshop,
    private readonly values: ReadonlyMap<string, Held>,
    private readonly here: Evaluation,
    private readonly wish: Wish,
    private readonly now: number,
  ) {
    this.aim = aimOf(wish, now);
    const { low, high } = wish;
    const width = low !== undefined && high !== undefined ? high - low : 0;
    this.near = Math.max(0.005 * Math.abs(this.aim - now), 0.15 * width);
  }

  along(paths: readonly string[]): Way | undefined {
    const { workshop, here, now, wish } = this;
    const from = this.values.get(paths[0]!)!;
    const span = workshop.catalogue.plausibleSpan(paths[0]!);
    if (from.value.kind !== 'quantity' || !span) return undefined;
    const old = from.value.quantity.si;
    const slopes = here.gradient(wish.quantity);
    const slope = paths.reduce((sum, path) => sum + (slopes.get(path) ?? 0), 0);
    const found = this.root(paths, old, slope, span);
    if (found === undefined) return undefined;
    for (const size of makeable(paths[0]!, from.value.quantity.dimension, found)) {
      if (size < span.low || size > span.high || Math.abs(size - old) < 1e-9) continue;
      const there = this.with(paths, size);
      const after = there.derived(wish.quantity);
      if (!after?.known || shortfall(wish, after.si) !== 0) continue;
      const inputs = uncertaintyOfStep(wish.quantity, here, there);
      const property = workshop.catalogue.property(paths[0]!, 'recipe');
      return {
        ...{ paths, from, old, new: size, before: now, after: after.si },
        error: Math.hypot(MODEL_ERROR * (after.si - now), inputs),
        also: effectsBetween(here, there).filter(({ path }) => path !== wish.quantity),
        until: untilOf(property?.freeze, size < old ? 'smaller' : 'larger'),
      };
    }
    return undefined;
  }

  /** By the secant, from the slope here; undefined where it leads out of what can be built. */
  private root(
    paths: readonly string[],
    old: number,
    slope: number,
    span: { readonly low: number; readonly high: number },
  ): number | undefined {
    let [x0, y0] = [old, this.now];
    let x1 = old + (this.aim - this.now) / slope;
    const room = span.high - span.low;
    for (let step = 0; step < 5; step += 1) {
      // A curve may bend back into reach, but not from far away.
      if (!(x1 > span.low - room / 2 && x1 < span.high + room / 2)) return undefined;
      x1 = Math.min(span.high, Math.max(span.low, x1));
      const there = this.with(paths, x1).derived(this.wish.quantity);
      if (!there?.known) {
        if (there?.pending === true) this.pending = true;
        return undefined;
      }
      const y1 = there.si;
      if (Math.abs(y1 - this.aim) < this.near) return x1;
      if (y1 === y0) return undefined;
      const next = x1 + ((this.aim - y1) * (x1 - x0)) / (y1 - y0);
      [x0, y0, x1] = [x1, y1, next];
    }
    return x1 > span.low && x1 < span.high ? x1 : undefined;
  }

  private with(paths: readonly string[], si: number): Evaluation {
    const changed = new Map(this.values);
    for (const path of paths) {
      const held = this.values.get(path)!;
      if (held.value.kind !== 'quantity') continue;
      const { quantity, span } = held.value;
      changed.set(path, { ...held, value: computed({ ...quantity, si }, span) });
    }
    return this.workshop.evaluateInFull(changed);
  }
}

function untilOf(freeze: Freeze | undefined, way: 'smaller' | 'larger'): Way['until'] {
  if (freeze?.easier?.way === way) return { costly: freeze.easier.costly, impossible: freeze.easier.impossible };
  return { costly: freeze?.costly, impossible: freeze?.impossible };
}
