/**
 * What a derived quantity is, what it may ask, and what comes of it. The catalogue of those there are is in
 * `derived/`; an `Evaluation` works them out for one set of values.
 */
import type { Dimension } from '../../quantities/dimension.js';
import type { PlateAnalysis, PlateTask, WoodFit, WoodTask } from './analyst.js';
import type { Value } from '../../facts/facts.js';

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
  /** It is no number of the recipe but how far a formula may be off: 1 ± σ, times what it computes. */
  readonly model?: ModelError;
}

/**
 * How far a formula itself may be off, whatever goes into it: relative standard uncertainties. Bodies of one kind are
 * computed alike, so most of it is the same for all of them and cancels when two are compared; the rest does not.
 */
export interface ModelError {
  /** One cause has one key, a word without spaces. */
  readonly key: string;
  /** In plain words, after "comes from": `the plate solver`. */
  readonly name: string;
  /** Share that is the same in all that this formula computes: it cancels in a difference. */
  readonly common: number;
  /** Share that differs from one instrument, or one board, to the next. */
  readonly own: number;
  readonly source: string;
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
  /** The value when there is one; that nobody says anything is fine, but what is said and cannot be used is missing. */
  numberIf(path: string): number | undefined;
  /** A word such as `parabolic`. */
  word(path: string): string | undefined;
  value(path: string): Value | undefined;
  /** Names of the members of a part (`bracing` → x-bass, x-treble, …) in the order written. */
  members(part: string): readonly string[];
  /** Says that `path` is needed and absent. */
  missing(path: string): never;
  /**
   * Something several quantities are made from, made once for all of them. `name` always stands for the same way of
   * making it; what that asks for counts as asked for here.
   */
  shared<T>(name: string, make: (ask: Ask) => T): T;
  /** Records how far the formula itself may be off. */
  doubt(error: ModelError): void;
  /** Records an assumption made. */
  assume(text: string): void;
  /** Modes and statics of a plate; what asks is pending until the solver has delivered. */
  analyse(task: PlateTask): PlateAnalysis;
  /** Likewise, moduli of a wood fitted to what was read on it. */
  fit(task: WoodTask): WoodFit;
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
  /** How far the formula itself may be off. */
  readonly doubts: readonly ModelError[];
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
  /** What was thrown, where the trouble is a fault of Bookmatch’s own. */
  readonly fault?: unknown;
  /** Path of the input at fault, where that is known. */
  readonly about?: string;
  /** The solver is still at it; ask again when it has delivered. */
  readonly pending?: true;
}

export type Derived = Known | Unknown;

/** What an evaluation stands on. */
export interface Ground {
  /** Before the ids of what belongs to this thing alone; empty for an instrument, which is never shared. */
  readonly owner: string;
  leaf(path: string): Leaf | undefined;
  /** Whether anything is written for it, usable or not. */
  isSaid(path: string): boolean;
  value(path: string): Value | undefined;
  members(part: string): readonly string[];
  /** A path that another evaluation answers: `top.wood.density` is the wood set's `density`. */
  elsewhere(
    path: string,
  ): { readonly evaluation: Evaluated; readonly path: string; readonly prefix: string } | undefined;
  /**
   * What is said otherwise here, of members only those of these parts; undefined where the two cannot be compared. Absent: they
   * never can.
   */
  differencesFrom?(other: Ground, parts: Iterable<string>): Differences | undefined;
}

/** What is said otherwise on one ground than on another. */
export interface Differences {
  /** Paths of values that are not the same, or that only one has. */
  readonly values: ReadonlySet<string>;
  /** Parts that have other members, or the same in another order. */
  readonly members: ReadonlySet<string>;
  /** Parts whose name leads to another thing. */
  readonly elsewhere: ReadonlySet<string>;
}

/** A number with where it comes from, or the paths that are missing. */
export type Reply = { si: number; basis: Iterable<Basis>; assumptions: readonly string[] } | readonly string[];

/** What one evaluation may be asked by another that leads to it. */
export interface Evaluated {
  readonly ground: Ground;
  readonly derivations: {
    readonly all: readonly DerivedQuantity[];
    find(path: string): { readonly quantity: DerivedQuantity; readonly member: string } | undefined;
  };
  derived(path: string): Derived | undefined;
  number(path: string): number | undefined;
  uncertainty(path: string): number;
  gradient(path: string): ReadonlyMap<string, number>;
  leafOf(id: string): Leaf | undefined;
  /** @internal One question of a computation. */
  answer(path: string): Reply;
}
