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
import { MechanicsError } from '../mechanics/error.js';
import type { Dimension } from '../quantities/dimension.js';
import { type Analyst, NO_ANALYST, type PlateAnalysis, type PlateTask } from './analyst.js';
import type { Value } from './facts.js';
import { type NumberReply, type Question, type Respondent, type Trace, Traces } from './traces.js';

/** Where a number ultimately comes from, weakest last. */
export type Basis = 'measured' | 'recipe' | 'handbook' | 'assumed';

/** A number nobody computed: a value of the recipe, a reading of a wood set, a handbook figure. */
export interface Leaf {
  /** Unique across evaluations when the thing itself is shared (a wood set); otherwise just the path. */
  readonly id: string;
  readonly si: number;
  /** Standard uncertainty, SI. */
  readonly sigma: number;
  readonly basis: Basis;
}

export interface DerivedQuantity {
  /** `*` stands for one member's name. */
  readonly path: string;
  readonly dimension: Dimension;
  /** Symbol of the unit it is shown in. */
  readonly unit: string;
  /** One plain sentence. */
  readonly sentence: string;
  /** The formula, in the symbols of its source. */
  readonly formula: string;
  readonly source: string;
  /** A maker hears or feels it: used to count, and to say what is too small to tell. */
  readonly voicing?: boolean;
  readonly compute: (ask: Ask) => number;
  /**
   * Slopes that the computation knows better than a difference would: d(quantity)/d(input) by the path asked for.
   * What is not in the map does not move the quantity.
   */
  readonly slopes?: (ask: Ask) => ReadonlyMap<string, number>;
  /**
   * Share by which two instruments built alike differ in it whatever the numbers say: the prior for a shop without
   * replicates. A difference inside it is not distinguishable.
   */
  readonly scatter?: number;
  /** Needs the solver: comes after everything else, and never holds it up. */
  readonly slow?: boolean;
}

/** What a derived quantity may ask. Everything is SI. */
export interface Ask {
  /** The member a `*` in the quantity's path stands for. */
  readonly member: string;
  /** A value of the recipe or another derived quantity. Missing: the asker becomes unknown. */
  number(path: string): number;
  /** Likewise, with a stated assumption where the recipe is silent. */
  numberOr(path: string, fallback: number, assumption: string): number;
  /** The value when there is one; its absence is fine. */
  numberIf(path: string): number | undefined;
  /** A word such as `parabolic`. */
  word(path: string): string | undefined;
  value(path: string): Value | undefined;
  /** Names of the members of a part (`bracing` → x-bass, x-treble, …) in the order written. */
  members(part: string): readonly string[];
  /** Says that `path` is needed and absent. */
  missing(path: string): never;
  /** Records an assumption made. */
  assume(text: string): void;
  /** Modes and statics of a plate; what asks is pending until the solver has delivered. */
  analyse(task: PlateTask): PlateAnalysis;
}

export interface Known {
  readonly known: true;
  /** Stated or weighed, not computed. */
  readonly given?: boolean;
  readonly si: number;
  readonly quantity: DerivedQuantity;
  readonly basis: ReadonlySet<Basis>;
  /** Plain sentences: "the grain of brace x-bass is taken to run along it". */
  readonly assumptions: readonly string[];
  /** What was asked for, with the number used, in the order asked. */
  readonly inputs: readonly { readonly path: string; readonly si: number }[];
}

export interface Unknown {
  readonly known: false;
  readonly quantity?: DerivedQuantity;
  /** Paths that would make it known. */
  readonly missing: readonly string[];
  /** Why it cannot be computed although nothing is missing. */
  readonly trouble?: string;
  /** The solver is still at it; ask again when it has delivered. */
  readonly pending?: true;
}

export type Derived = Known | Unknown;

/** What an evaluation stands on. */
export interface Ground {
  leaf(path: string): Leaf | undefined;
  value(path: string): Value | undefined;
  members(part: string): readonly string[];
  /** A path that another evaluation answers: `top.wood.density` is the wood set's `density`. */
  elsewhere(
    path: string,
  ): { readonly evaluation: Evaluation; readonly path: string; readonly prefix: string } | undefined;
}

/** The derived quantities an evaluation knows, found by path. */
export class Derivations {
  private readonly exact = new Map<string, DerivedQuantity>();
  private readonly patterns: { readonly pattern: RegExp; readonly quantity: DerivedQuantity }[] = [];

  constructor(readonly all: readonly DerivedQuantity[]) {
    for (const quantity of all) {
      if (!quantity.path.includes('*')) this.exact.set(quantity.path, quantity);
      else {
        const source = quantity.path.split('.').map((word) => (word === '*' ? '([^.]+)' : escape(word)));
        this.patterns.push({ pattern: new RegExp(`^${source.join('\\.')}$`), quantity });
      }
    }
  }

  find(path: string): { readonly quantity: DerivedQuantity; readonly member: string } | undefined {
    const exact = this.exact.get(path);
    if (exact) return { quantity: exact, member: '' };
    for (const { pattern, quantity } of this.patterns) {
      const match = pattern.exec(path);
      if (match) return { quantity, member: match[1] ?? '' };
    }
    return undefined;
  }
}

export class Evaluation implements Respondent {
  private readonly answers = new Map<string, Derived>();
  private readonly found = new Map<string, Trace>();
  private readonly replies = new Map<string, NumberReply>();
  private readonly slopes = new Map<string, ReadonlyMap<string, number>>();
  private readonly running: string[] = [];

  constructor(
    readonly derivations: Derivations,
    readonly ground: Ground,
    /** Shared between evaluations that stand on much the same ground. */
    private readonly traces: Traces = new Traces(),
    /** @internal */
    readonly analyst: Analyst = NO_ANALYST,
  ) {}

  /** The derived quantity at `path`; undefined when there is no such quantity. */
  derived(path: string): Derived | undefined {
    const known = this.answers.get(path);
    if (known) return known;
    const found = this.derivations.find(path);
    if (!found) return undefined;
    const given = this.given(path, found.quantity);
    if (given) return given;
    if (this.running.includes(path)) {
      return { known: false, quantity: found.quantity, missing: [], trouble: `${path} would need itself` };
    }
    this.running.push(path);
    try {
      const answer = this.run(path, found.quantity, found.member);
      if (!isPending(answer)) this.answers.set(path, answer);
      return answer;
    } finally {
      this.running.pop();
    }
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
    const gradient = this.computeGradient(path);
    this.slopes.set(path, gradient);
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

  private run(path: string, quantity: DerivedQuantity, member: string): Derived {
    if (quantity.slow && this.analyst === NO_ANALYST) return { known: false, quantity, missing: [], pending: true };
    const known = this.traces.find(path, this);
    if (known) {
      this.found.set(path, known);
      return known.answer;
    }
    const asked = new Asking(this, member, undefined);
    const answer = this.compute(quantity, asked);
    if (isPending(answer)) return answer;
    const trace: Trace = { questions: asked.questions, answer, partials: new Map() };
    this.traces.add(path, trace);
    this.found.set(path, trace);
    return answer;
  }

  private compute(quantity: DerivedQuantity, asked: Asking): Derived {
    let si: number;
    try {
      si = quantity.compute(asked);
    } catch (error) {
      if (asked.pending) return { known: false, quantity, missing: [], pending: true };
      if (asked.absent.length > 0) return { known: false, quantity, missing: unique(asked.absent) };
      if (error instanceof MechanicsError) return { known: false, quantity, missing: [], trouble: error.message };
      throw error;
    }
    if (asked.pending) return { known: false, quantity, missing: [], pending: true };
    if (asked.absent.length > 0) return { known: false, quantity, missing: unique(asked.absent) };
    if (!Number.isFinite(si)) return { known: false, quantity, missing: [], trouble: 'these values give no number' };
    return {
      known: true,
      si,
      quantity,
      basis: asked.basis,
      assumptions: unique(asked.assumptions),
      inputs: [...asked.read].map(([path, value]) => ({ path, si: value })),
    };
  }

  /** @internal */
  replyTo(path: string): NumberReply {
    const known = this.replies.get(path);
    if (known) return known;
    const answer = this.answer(path);
    const reply = shortReply(answer);
    if (answer !== PENDING) this.replies.set(path, reply);
    return reply;
  }

  /** @internal */
  members(part: string): readonly string[] {
    return this.ground.members(part);
  }

  /** @internal */
  value(path: string): Value | undefined {
    return this.ground.value(path);
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
    const total = new Map<string, number>();
    for (const input of derived.inputs) {
      const inner = this.gradient(input.path);
      if (inner.size === 0) continue;
      const slope = this.partialOf(path, found, input);
      if (slope === 0) continue;
      for (const [id, inside] of inner) total.set(id, (total.get(id) ?? 0) + slope * inside);
    }
    return total;
  }

  private partialOf(
    path: string,
    found: { quantity: DerivedQuantity; member: string },
    input: { path: string; si: number },
  ): number {
    const partials = this.found.get(path)?.partials;
    const known = partials?.get(input.path);
    if (known !== undefined) return known;
    const slope = this.slopeOf(found.quantity, found.member, input);
    partials?.set(input.path, slope);
    return slope;
  }

  private slopeOf(quantity: DerivedQuantity, member: string, input: { path: string; si: number }): number {
    if (!quantity.slopes) return this.partial(quantity, member, input);
    try {
      return quantity.slopes(new Asking(this, member, undefined)).get(input.path) ?? 0;
    } catch {
      return 0; // the analysis has been dropped since; it will be asked for again with the quantity itself
    }
  }

  /** Central difference with respect to one direct input, everything else it asked for kept as it was. */
  private partial(quantity: DerivedQuantity, member: string, input: { path: string; si: number }): number {
    const step = Math.abs(input.si) * 1e-4 || 1e-9;
    const at = (si: number) => {
      try {
        return quantity.compute(new Asking(this, member, { path: input.path, si }));
      } catch {
        return Number.NaN; // at the edge of what the formula allows; the one-sided slope below is used instead
      }
    };
    const up = at(input.si + step);
    const down = at(input.si - step);
    if (Number.isFinite(up) && Number.isFinite(down)) return (up - down) / (2 * step);
    const here = at(input.si);
    if (Number.isFinite(up)) return (up - here) / step;
    if (Number.isFinite(down)) return (here - down) / step;
    return 0;
  }
}

/** A number with where it comes from, or the paths that are missing. */
type Reply = { si: number; basis: Iterable<Basis>; assumptions: readonly string[] } | readonly string[];

function shortReply(reply: Reply): NumberReply {
  if (isAbsent(reply)) return { si: undefined, grounds: reply.join(' ') };
  const basis = [...reply.basis].join(' ');
  return { si: reply.si, grounds: reply.assumptions.length === 0 ? basis : `${basis} ${reply.assumptions.join('|')}` };
}

/** The reply of a quantity whose solver has not delivered: it is the same as no other reply, and is not remembered. */
const PENDING: readonly string[] = ['(pending)'];

function isPending(derived: Derived): boolean {
  return !derived.known && derived.pending === true;
}

class Absent extends Error {}
class Waiting extends Error {}

class Asking implements Ask {
  readonly questions: Question[] = [];
  readonly absent: string[] = [];
  pending = false;
  readonly assumptions: string[] = [];
  readonly basis = new Set<Basis>();
  readonly read = new Map<string, number>();

  constructor(
    private readonly evaluation: Evaluation,
    readonly member: string,
    private readonly moved: { readonly path: string; readonly si: number } | undefined,
  ) {}

  number(path: string): number {
    const si = this.find(path);
    if (si !== undefined) return si;
    // Go on with a harmless number, so that one question names everything that is missing; the result is thrown away.
    return 1;
  }

  numberIf(path: string): number | undefined {
    const before = this.absent.length;
    const si = this.find(path);
    this.absent.length = before;
    return si;
  }

  numberOr(path: string, fallback: number, assumption: string): number {
    const si = this.numberIf(path);
    if (si !== undefined) return si;
    this.assume(assumption);
    return fallback;
  }

  word(path: string): string | undefined {
    const value = this.value(path);
    return value?.kind === 'name' ? value.name : value?.kind === 'text' ? value.text : undefined;
  }

  value(path: string): Value | undefined {
    const value = this.evaluation.ground.value(path);
    this.questions.push({ kind: 'value', path, reply: value });
    return value;
  }

  members(part: string): readonly string[] {
    const members = this.evaluation.ground.members(part);
    this.questions.push({ kind: 'members', path: part, reply: members });
    return members;
  }

  missing(path: string): never {
    this.absent.push(path);
    throw new Absent(path);
  }

  analyse(task: PlateTask): PlateAnalysis {
    // With something missing the task is made of placeholders: not worth a solver's time.
    if (this.pending || this.absent.length > 0) throw new Waiting();
    const analysis = this.evaluation.analyst.analysis(task);
    if (analysis) return analysis;
    this.pending = true;
    throw new Waiting();
  }

  assume(text: string): void {
    this.assumptions.push(text);
    this.basis.add('assumed');
  }

  private find(path: string): number | undefined {
    if (this.moved?.path === path) return this.moved.si;
    const answer = this.evaluation.answer(path);
    // Questions asked while an input is moved for a slope are not kept.
    if (!this.moved) this.questions.push({ kind: 'number', path, reply: this.evaluation.replyTo(path) });
    if (answer === PENDING) {
      this.pending = true;
      return undefined;
    }
    if (isAbsent(answer)) {
      this.absent.push(...answer);
      return undefined;
    }
    for (const basis of answer.basis) this.basis.add(basis);
    this.assumptions.push(...answer.assumptions);
    this.read.set(path, answer.si);
    return answer.si;
  }
}

function isAbsent(answer: Reply): answer is readonly string[] {
  return Array.isArray(answer);
}

function unique<T>(items: readonly T[]): readonly T[] {
  return [...new Set(items)];
}

function escape(word: string): string {
  return word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
