/**
 * Derived quantities of one set of values, computed when asked and remembered.
 *
 * A derived quantity is a pure function that asks for what it needs by path. Because it asks, the evaluation knows
 * what it read: the inputs behind a number, which of them came from a handbook, which are missing, and, by moving one
 * input at a time, how much the number moves with each. First-order uncertainty (JCGM 100:2008, GUM, clause 5.1.2)
 * and every "0.1 mm here does …" come from those slopes; slopes of slopes are chained, so that a thickness that
 * matters by two roads is counted once, with its sign.
 *
 * Invariants
 * - A missing input is never zero: what depends on it is unknown and names it.
 * - Nothing is computed before it is asked for.
 */
import { english } from '../../wording/wording.js';
import { MechanicsError } from '../../mechanics/error.js';
import { type Analyst, NO_ANALYST } from './analyst.js';
import { Asking, isAbsent, isPending, PENDING, shortReply } from './asking.js';
import type { Derivations, Found } from './derivations.js';
import type { Ask, Derived, DerivedQuantity, Ground, Known, Leaf, Reply, Unknown } from './derived-quantity.js';
import type { Value } from '../../facts/facts.js';
import { makePart } from './part.js';
import type { Answering, NumberReply, Part } from './respondent.js';
import { nameOfPart } from './leanings.js';
import { Likeness } from './likeness.js';
import { type Asked, differenceTo, leavesOfDoubts, slopesOf } from './slopes.js';
import { type Trace, Traces } from './traces.js';

export { Derivations } from './derivations.js';
export type * from './derived-quantity.js';

/** Evaluations whose answers may be the same here. It makes no difference to any answer whether there are such. */
export interface Kin {
  /** One with nearly the same values, such as that of the parent. It is not kept for this. */
  readonly like?: Evaluation | undefined;
  /** One that this stands in the place of. */
  readonly before?: Evaluation | undefined;
}

export class Evaluation implements Answering {
  private readonly answers = new Map<string, Derived>();
  private readonly found = new Map<string, Trace>();
  private readonly replies = new Map<string, NumberReply>();
  private readonly slopes = new Map<string, ReadonlyMap<string, number>>();
  private readonly parts = new Map<string, Part>();
  /** What was pending, and in which round of the analyst. */
  private readonly pendingIn = new Map<string, unknown>();
  private readonly pendingParts = new Map<string, { readonly part: Part; readonly round: unknown }>();
  private readonly running: string[] = [];
  private readonly likeness: Likeness<Evaluation> | undefined;
  /** @internal Of what is known of who leans on what. */
  readonly era: number;

  constructor(
    readonly derivations: Derivations,
    readonly ground: Ground,
    /** Shared between evaluations that stand on much the same ground. */
    private readonly traces: Traces = new Traces(),
    /** @internal */
    readonly analyst: Analyst = NO_ANALYST,
    { like, before }: Kin = {},
  ) {
    this.era = traces.leanings.era;
    if (like && this.isOfKindOf(like)) this.likeness = new Likeness(ground, like, traces.leanings);
    if (before && this.isOfKindOf(before)) this.takeOver(before);
  }

  /** The derived quantity at `path`; undefined when there is no such quantity. */
  derived(path: string): Derived | undefined {
    const known = this.answers.get(path);
    if (known) return known;
    const found = this.derivations.find(path);
    if (!found) return undefined;
    const same = this.sameAs(path, (like) => (this.mayCome ? like.answers.get(path) : like.derived(path)));
    if (same) {
      this.answers.set(path, same);
      return same;
    }
    const given = this.given(path, found.quantity);
    if (given) return given;
    // Said of the thing itself, but so that it cannot be used: no computed one takes its place.
    if (this.ground.value(path) !== undefined) return { known: false, quantity: found.quantity, missing: [path] };
    if (this.running.includes(path)) {
      return { known: false, quantity: found.quantity, missing: [], trouble: `${path} would need itself` };
    }
    this.running.push(path);
    try {
      const answer = this.run(path, found.quantity, found.member);
      if (!isPending(answer) || !this.mayCome) this.answers.set(path, answer);
      return answer;
    } finally {
      this.running.pop();
    }
  }

  /** Whether what is pending may be answered later on; where nobody solves anything it is pending for good. */
  private get mayCome(): boolean {
    return this.analyst !== NO_ANALYST;
  }

  /** The same, also of what a path leads to: `top.wood.density`. */
  derivedAnywhere(path: string): Derived | undefined {
    const other = this.derivations.find(path) ? undefined : this.ground.elsewhere(path);
    return other ? other.evaluation.derived(other.path) : this.derived(path);
  }

  /** A quantity that can be computed but was stated or weighed: what somebody says of the thing itself comes first. */
  private given(path: string, quantity: DerivedQuantity): Known | undefined {
    const leaf = this.ground.leaf(path);
    if (!leaf) return undefined;
    this.leaves.set(leaf.id, leaf);
    const answer: Known = {
      known: true,
      given: true,
      si: leaf.si,
      quantity,
      basis: new Set([leaf.basis]),
      assumptions: [],
      doubts: [],
      inputs: [],
    };
    this.answers.set(path, answer);
    return answer;
  }

  /** The number at a path, derived or given, in SI. */
  number(path: string): number | undefined {
    const leaf = this.ground.leaf(path);
    if (leaf) return leaf.si;
    const other = this.ground.elsewhere(path);
    if (other) return other.evaluation.number(other.path);
    const derived = this.derived(path);
    return derived?.known ? derived.si : undefined;
  }

  /** d(path)/d(leaf) for every leaf the number depends on, SI per SI. Empty when unknown. */
  gradient(path: string): ReadonlyMap<string, number> {
    const known = this.slopes.get(path);
    if (known) return known;
    const gradient = this.sameAs(path, (like) => this.gradientOf(path, like)) ?? this.computeGradient(path);
    // Without slopes it may only be pending.
    if (gradient.size > 0) this.slopes.set(path, gradient);
    return gradient;
  }

  /** Standard uncertainty, SI (GUM eq. 10). Zero when unknown: ask `derived` first. */
  uncertainty(path: string): number {
    let sum = 0;
    for (const [id, slope] of this.gradient(path)) sum += (slope * this.sigma(id)) ** 2;
    return Math.sqrt(sum);
  }

  /** The leaf behind an id met in a gradient. */
  sigma(id: string): number {
    return this.leaves.get(id)?.sigma ?? 0;
  }

  leafOf(id: string): Leaf | undefined {
    return this.leaves.get(id);
  }

  private readonly leaves = new Map<string, Leaf>();

  /** The answer of the evaluation this one is like, where it is the same for both. */
  private sameAs<T>(name: string, ask: (like: Evaluation) => T): T | undefined {
    const like = this.likeness?.for(name);
    if (!like) return undefined;
    const answer = ask(like);
    // Only now is all known that it leans on.
    return this.likeness?.holdsFor(name, like) === true ? answer : undefined;
  }

  private gradientOf(path: string, other: Evaluation): ReadonlyMap<string, number> | undefined {
    const gradient = other.gradient(path);
    if (gradient.size === 0) return undefined;
    for (const id of gradient.keys()) this.leaves.set(id, other.leafOf(id)!);
    return gradient;
  }

  private isOfKindOf({ derivations, traces, analyst }: Evaluation): boolean {
    return this.derivations === derivations && this.traces === traces && this.analyst === analyst;
  }

  /** What stood here before an edit: whatever the edit does not reach is so still. */
  private takeOver(before: Evaluation): void {
    const likeness = new Likeness(this.ground, before, this.traces.leanings);
    const copy = <T>(from: ReadonlyMap<string, T>, to: Map<string, T>, nameOf = (key: string) => key) => {
      for (const [key, value] of from) if (likeness.holdsFor(nameOf(key), before)) to.set(key, value);
    };
    copy(before.answers, this.answers);
    copy(before.found, this.found);
    copy(before.replies, this.replies);
    copy(before.slopes, this.slopes);
    copy(before.parts, this.parts, nameOfPart);
    if (this.slopes.size > 0) for (const [id, leaf] of before.leaves) this.leaves.set(id, leaf);
  }

  /** What a quantity was worked out from, here or where the answer was taken from. */
  private traceOf(path: string): Trace | undefined {
    return this.found.get(path) ?? this.likeness?.for(path)?.traceOf(path);
  }

  private run(path: string, quantity: DerivedQuantity, member: string): Derived {
    if (quantity.slow && !this.mayCome) return pendingOf(quantity);
    // The round is asked for only where something was pending: whoever asks is asked again with the next one.
    if (this.pendingIn.has(path) && this.pendingIn.get(path) === this.analyst.round?.()) return pendingOf(quantity);
    const known = this.traces.answers.find(path, this);
    if (known) {
      this.found.set(path, known);
      return known.answer;
    }
    const asked = new Asking(this, member, undefined);
    const answer = this.compute(quantity, asked);
    if (isPending(answer)) {
      const round = this.analyst.round?.();
      if (round !== undefined) this.pendingIn.set(path, round);
      if (!this.mayCome) this.traces.leanings.note(path, asked.questions);
      return answer;
    }
    const trace: Trace = { questions: asked.questions, answer, partials: new Map() };
    this.traces.answers.add(path, trace);
    this.traces.leanings.note(path, trace.questions);
    this.found.set(path, trace);
    return answer;
  }

  private compute(quantity: DerivedQuantity, asked: Asking): Derived {
    let si: number;
    try {
      si = quantity.compute(asked);
    } catch (error) {
      if (asked.pending) return pendingOf(quantity);
      if (asked.absent.length > 0) return this.without(asked.absent, quantity);
      if (error instanceof MechanicsError) {
        return { known: false, quantity, missing: [], trouble: error.message, about: error.quantity };
      }
      return { known: false, quantity, missing: [], trouble: OWN_FAULT, fault: error };
    }
    if (asked.pending) return pendingOf(quantity);
    if (asked.absent.length > 0) return this.without(asked.absent, quantity);
    if (!Number.isFinite(si)) return { known: false, quantity, missing: [], trouble: 'these values give no number' };
    return {
      known: true,
      si,
      quantity,
      basis: asked.basis,
      assumptions: unique(asked.assumptions),
      doubts: asked.doubts,
      inputs: [...asked.read].map(([path, value]) => ({ path, si: value })),
    };
  }

  /** What is missing; when it is only quantities that cannot be computed, nobody can give those: then their trouble is this one's. */
  private without(absent: readonly string[], quantity: DerivedQuantity): Unknown {
    const missing = unique(absent);
    const troubles = missing.map((path) => (this.derivations.find(path) ? this.derived(path) : undefined));
    const [first] = troubles;
    if (first?.known !== false || first.trouble === undefined) return { known: false, quantity, missing };
    if (!troubles.every((each) => each?.known === false && each.trouble !== undefined)) {
      return { known: false, quantity, missing };
    }
    return { known: false, quantity, missing: [], trouble: first.trouble, about: first.about, fault: first.fault };
  }

  /** @internal */
  replyTo(path: string): NumberReply {
    const known = this.replies.get(path);
    if (known) return known;
    const answer = this.answer(path);
    const reply = shortReply(
      answer !== PENDING && isAbsent(answer) ? answer.map((path) => (this.isSaid(path) ? `${path}!` : path)) : answer,
    );
    if (answer !== PENDING) this.replies.set(path, reply);
    return reply;
  }

  /** @internal Whether anything is written for it, usable or not. */
  isSaid(path: string): boolean {
    return this.ground.isSaid(path);
  }

  /** @internal */
  members(part: string): readonly string[] {
    return this.ground.members(part);
  }

  /** @internal */
  value(path: string): Value | undefined {
    return this.ground.value(path);
  }

  /** @internal */
  part(name: string, make: (ask: Ask) => unknown): Part {
    const waiting = this.pendingParts.get(name);
    if (waiting && waiting.round === this.analyst.round?.()) return waiting.part;
    const kept = this.parts.get(name);
    if (kept) return kept;
    const node = nameOfPart(name);
    const same = this.sameAs(node, (like) => (this.mayCome ? like.parts.get(name) : like.part(name, make)));
    if (same) {
      this.parts.set(name, same);
      return same;
    }
    const known = this.traces.parts.find(name, this);
    const part = known ?? makePart(make, new Asking(this, '', undefined));
    if (part.pending && this.mayCome) {
      const round = this.analyst.round?.();
      if (round !== undefined) this.pendingParts.set(name, { part, round });
      return part;
    }
    if (!known) {
      if (!part.pending) this.traces.parts.add(name, part);
      this.traces.leanings.note(node, part.questions);
    }
    this.parts.set(name, part);
    return part;
  }

  /** @internal One question of a computation. */
  answer(path: string): Reply {
    const leaf = this.ground.leaf(path);
    if (leaf) {
      this.leaves.set(leaf.id, leaf);
      return { si: leaf.si, basis: [leaf.basis], assumptions: [] };
    }
    const other = this.ground.elsewhere(path);
    if (other) {
      const answer = other.evaluation.answer(other.path);
      return isAbsent(answer) ? answer.map((missing) => `${other.prefix}.${missing}`) : answer;
    }
    const derived = this.derived(path);
    if (!derived) return [path];
    if (derived.known) return derived;
    if (derived.pending) return PENDING;
    return derived.missing.length > 0 ? derived.missing : [path];
  }

  private computeGradient(path: string): ReadonlyMap<string, number> {
    const leaf = this.ground.leaf(path);
    if (leaf) {
      this.leaves.set(leaf.id, leaf);
      return new Map([[leaf.id, 1]]);
    }
    const other = this.ground.elsewhere(path);
    if (other) {
      const gradient = other.evaluation.gradient(other.path);
      for (const id of gradient.keys()) this.leaves.set(id, other.evaluation.leafOf(id)!);
      return gradient;
    }
    const derived = this.derived(path);
    const found = this.derivations.find(path);
    if (!derived?.known || !found) return new Map();
    const slopes = this.ownSlopes(path, found);
    if (slopes === 'not now') return new Map();
    const total = new Map<string, number>();
    for (const leaf of leavesOfDoubts(derived.doubts, this.ground.owner)) {
      this.leaves.set(leaf.id, leaf);
      total.set(leaf.id, (total.get(leaf.id) ?? 0) + derived.si);
    }
    for (const input of derived.inputs) {
      const inner = this.gradient(input.path);
      if (inner.size === 0) continue;
      const slope = slopes ? (slopes.get(input.path) ?? 0) : this.partial(path, found, input);
      if (slope === 0) continue;
      for (const [id, inside] of inner) total.set(id, (total.get(id) ?? 0) + slope * inside);
    }
    return total;
  }

  /** Of a quantity that knows its slopes, all at once. */
  private ownSlopes(path: string, { quantity, member }: Found): ReadonlyMap<string, number> | 'not now' | undefined {
    if (!quantity.slopes) return undefined;
    const trace = this.traceOf(path);
    const own = trace?.own ?? slopesOf(this, quantity.slopes, member);
    if (trace && own) trace.own = own;
    return own ?? 'not now';
  }

  private partial(path: string, { quantity, member }: Found, input: Asked): number {
    const partials = this.traceOf(path)?.partials;
    const known = partials?.get(input.path);
    if (known !== undefined) return known;
    const slope = differenceTo(this, quantity, member, input);
    partials?.set(input.path, slope);
    return slope;
  }
}

/** A bug, and no reason to lose everything else. */
const OWN_FAULT = english('a fault of Bookmatch’s own came in between');

function pendingOf(quantity: DerivedQuantity): Unknown {
  return { known: false, quantity, missing: [], pending: true };
}

function unique<T>(items: readonly T[]): readonly T[] {
  return [...new Set(items)];
}
