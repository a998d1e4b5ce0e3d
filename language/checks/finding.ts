/** A finding: something a maker should know about a place in the text, with what to do about it. Plain data. */
import type { Definition, Span } from '../facts/facts.js';
import { english } from '../wording/wording.js';

export type Severity = 'error' | 'warning' | 'information' | 'hint';

/** A place: a span inside a definition, or, where there is none, in a file (lines then count from its first). */
export type Place =
  { readonly definition: Definition; readonly span: Span } | { readonly uri: string; readonly span: Span };

export interface Finding {
  /** Stable; the name of the rule's page. */
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  readonly related: readonly Related[];
  readonly fixes: readonly Fix[];
  /** Shown faded or struck through, where an editor can. */
  readonly tag?: 'unnecessary';
}

/** Another place that matters: the parent's line, the other of two of the same name. */
export interface Related {
  readonly place: Place;
  readonly message: string;
}

export interface Fix {
  /** What it does, in a maker's words. */
  readonly title: string;
  readonly edits: readonly Edit[];
  /** The one an editor may offer first. */
  readonly preferred?: boolean;
}

/** Replaces a span by a text; an empty span inserts. */
export interface Edit {
  readonly place: Place;
  readonly text: string;
}

export const SEVERITIES: readonly Severity[] = [
  english('error'),
  english('warning'),
  english('information'),
  english('hint'),
];

/** Whether `a` is at least as grave as `b`. */
export function atLeast(a: Severity, b: Severity): boolean {
  return SEVERITIES.indexOf(a) <= SEVERITIES.indexOf(b);
}
