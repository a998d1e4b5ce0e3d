/** What an evaluation is to those who ask it: questions, replies, and what was made once for several quantities. Types only. */
import type { Value } from '../../facts/facts.js';
import type { Analyst } from './analyst.js';
import type { Ask, Basis, Derived, Ground, ModelError, Reply } from './derived-quantity.js';

/** A question a derived quantity asked, and the reply. */
export type Question =
  | { readonly kind: 'number'; readonly path: string; readonly reply: NumberReply }
  | { readonly kind: 'value'; readonly path: string; readonly reply: Value | undefined }
  | { readonly kind: 'members'; readonly path: string; readonly reply: readonly string[] }
  | { readonly kind: 'part'; readonly path: string; readonly make: (ask: Ask) => unknown; readonly reply: Part };

/** A number with, in short, where it comes from; or none, with what is missing. */
export interface NumberReply {
  readonly si: number | undefined;
  readonly grounds: string;
}

/**
 * Something several quantities of one instrument are made from: the outline of the body, the braced plate as the solver
 * wants it. It is made once for all of them, and again only when something it asked for has another answer.
 */
export interface Part {
  /** What was made, or the exception that ended the making. */
  readonly outcome: { readonly made: unknown } | { readonly failed: unknown };
  /** What making it asked for: whoever uses it has asked for it too. */
  readonly questions: readonly Question[];
  readonly absent: readonly string[];
  readonly pending: boolean;
  readonly assumptions: readonly string[];
  readonly doubts: readonly ModelError[];
  readonly basis: ReadonlySet<Basis>;
  readonly read: ReadonlyMap<string, number>;
}

/** What can be asked again. */
export interface Respondent {
  replyTo(path: string): NumberReply;
  members(path: string): readonly string[];
  value(path: string): Value | undefined;
  part(name: string, make: (ask: Ask) => unknown): Part;
}

/** What a computation works with. */
export interface Answering extends Respondent {
  readonly ground: Ground;
  readonly analyst: Analyst;
  derived(path: string): Derived | undefined;
  answer(path: string): Reply;
  /** Whether anything is written for it, usable or not. */
  isSaid(path: string): boolean;
}
