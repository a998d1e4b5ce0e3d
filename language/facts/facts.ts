/**
 * Recipe facts: what a file says, as plain data, with the place of every word.
 *
 * Invariants
 * - Facts are a pure function of a definition's own text, the column it starts in, and what the text around it made of
 *   its braces and quotes (`around`). Lines in a `Span` count from the definition's first line, so a definition that
 *   merely moved down a file keeps the very same facts object (and every answer computed from it). `Placement` says where
 *   it stands now.
 * - Nothing here knows a parser, an editor or a unit system beyond `quantities`.
 * - A word the reader could not make sense of stays in the facts as `unreadable`, beside a `Problem`; it is never
 *   dropped and never guessed.
 */
import type { Quantity } from '../quantities/quantity.js';

/** Zero-based line (counted from the definition's first line) and zero-based UTF-16 column. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface Span {
  readonly start: Position;
  readonly end: Position;
}

/** One word of the text and where it stands. */
export interface Word {
  readonly text: string;
  readonly span: Span;
}

/**
 * A dotted path. `text` is the whole path, with the names of enclosing blocks in front (`bracing.x-bass.height`);
 * `segments` are the words written at this place only, and `span` covers just those.
 */
export interface Path {
  readonly text: string;
  readonly segments: readonly Word[];
  readonly span: Span;
}

export const DEFINITION_KINDS = [
  'shop',
  'species',
  'wood',
  'model',
  'recipe',
  'build',
  'rig',
  'strings',
  'appointments',
  'order',
] as const;
export type DefinitionKind = (typeof DEFINITION_KINDS)[number];

/** `wood a is b`, `recipe a for b`, `recipe a from b`, `build a of b`, `order a of b`. */
export type RelationWord = 'is' | 'for' | 'from' | 'of';

export interface Relation {
  readonly word: RelationWord;
  readonly target: Word;
}

export interface Definition {
  readonly kind: DefinitionKind;
  /** Empty text when the name is missing (a `Problem` says so). */
  readonly name: Word;
  readonly relation?: Relation;
  readonly statements: readonly Statement[];
  readonly problems: readonly Problem[];
  /** The definition's own text, from its first word to its closing brace. */
  readonly source: string;
  /** What the text around it made of it: the problems that came from outside, written out. Empty for nearly all. */
  readonly around: string;
  /** From the first word up to, not including, the opening brace. */
  readonly head: Span;
  /** The whole definition. */
  readonly span: Span;
}

/**
 * Two definitions of one identity have the same facts and the same problems, whatever else their files say: the same text
 * in the same column, with the same made of it by the text around it.
 */
export function identityOf({ source, around, head }: Pick<Definition, 'source' | 'around' | 'head'>): string {
  return `${head.start.character} ${around} ${source}`;
}

/** Where a definition stands now. Add `line` to every line of its spans. */
export interface Placement {
  readonly uri: string;
  readonly line: number;
}

/** What one file says. `problems` are those outside any definition; their lines count from the file's first line. */
export interface FileFacts {
  readonly uri: string;
  readonly definitions: readonly { readonly definition: Definition; readonly line: number }[];
  readonly problems: readonly Problem[];
}

/** Something wrong with the text itself. `code` is a finding code; see `checks/`. */
export interface Problem {
  readonly code: ProblemCode;
  readonly message: string;
  readonly span: Span;
  /** Replacement texts for `span` that would mend it, best first. */
  readonly suggestions: readonly string[];
}

export type ProblemCode =
  | 'unreadable-line'
  | 'unclosed-block'
  | 'stray-brace'
  | 'unclosed-text'
  | 'missing-name'
  | 'unknown-unit'
  | 'bad-number'
  | 'bad-date'
  | 'bad-character'
  | 'too-large'
  | 'too-long'
  | 'left-out'
  | 'own-fault';

// ---- values ---------------------------------------------------------------------------------------------------------

export interface QuantityValue {
  readonly kind: 'quantity';
  /** A number written without a unit has `unit: undefined` and the dimension `number`. */
  readonly quantity: Quantity;
  /** As written, e.g. `1 3/4 in`; empty for a value that was computed. */
  readonly written: string;
  readonly span: Span;
  readonly unitSpan?: Span;
}

/** `170..185 Hz`, `below 190 g`, `above 2 deg`. At least one end is present. */
export interface RangeValue {
  readonly kind: 'range';
  readonly low?: QuantityValue;
  readonly high?: QuantityValue;
  readonly span: Span;
}

/** `560 mm x 212 mm x 4.41 mm`: two or three quantities. */
export interface SizeValue {
  readonly kind: 'size';
  readonly parts: readonly QuantityValue[];
  readonly span: Span;
}

/** `(78 mm, -150 mm)`: station from the tail along the centre line, then offset, bass side negative. */
export interface PointValue {
  readonly kind: 'point';
  readonly station: QuantityValue;
  readonly offset: QuantityValue;
  readonly span: Span;
}

export interface TextValue {
  readonly kind: 'text';
  readonly text: string;
  readonly span: Span;
}

/** A bare word or dotted path: the name of a wood, of a part, or a choice such as `quartersawn`. */
export interface NameValue {
  readonly kind: 'name';
  readonly name: string;
  readonly span: Span;
}

/** ISO 8601 calendar date, as written. */
export interface DateValue {
  readonly kind: 'date';
  readonly date: string;
  readonly span: Span;
}

/** The maker wrote `unknown`. */
export interface UnknownValue {
  readonly kind: 'unknown';
  readonly span: Span;
}

/** `E4, B3, G3`: two or more values with commas between them. */
export interface ListValue {
  readonly kind: 'list';
  readonly items: readonly Value[];
  readonly span: Span;
}

/** Could not be read; a `Problem` of the definition says why. */
export interface UnreadableValue {
  readonly kind: 'unreadable';
  readonly written: string;
  readonly span: Span;
}

export type Value =
  | QuantityValue
  | RangeValue
  | SizeValue
  | PointValue
  | TextValue
  | NameValue
  | DateValue
  | UnknownValue
  | ListValue
  | UnreadableValue;

// ---- statements -----------------------------------------------------------------------------------------------------

/** `path: value`, or `path: value per "source"` where the number comes from somewhere worth naming. */
export interface PropertyStatement {
  readonly kind: 'property';
  readonly path: Path;
  readonly value: Value;
  readonly source?: TextValue;
  readonly span: Span;
}

/** `path { … }` */
export interface BlockStatement {
  readonly kind: 'block';
  readonly path: Path;
  readonly statements: readonly Statement[];
  readonly span: Span;
}

/** `change path: old -> new` (old may be missing), or `change path: by step`. */
export interface ChangeStatement {
  readonly kind: 'change';
  readonly path: Path;
  readonly old?: Value;
  readonly new?: Value;
  /** A step in the property's own dimension, or per cent. */
  readonly by?: QuantityValue;
  readonly span: Span;
}

/** `add path { … }` or `add path` */
export interface AddStatement {
  readonly kind: 'add';
  readonly path: Path;
  readonly statements: readonly Statement[];
  readonly span: Span;
}

export interface DropStatement {
  readonly kind: 'drop';
  readonly path: Path;
  readonly span: Span;
}

/** `together "why" { changes }` */
export interface TogetherStatement {
  readonly kind: 'together';
  readonly reason?: TextValue;
  readonly statements: readonly Statement[];
  readonly span: Span;
}

/** `hold quantity [at value] by path` */
export interface HoldStatement {
  readonly kind: 'hold';
  readonly quantity: Path;
  readonly at?: Value;
  readonly by?: Path;
  /** Further sizes, moved along with `by` in proportion: both legs of an X. */
  readonly along?: readonly Path[];
  readonly span: Span;
}

/** `expect quantity: below 190 g` */
export interface ExpectStatement {
  readonly kind: 'expect';
  readonly quantity: Path;
  readonly value: Value;
  readonly span: Span;
}

/** `with ember` */
export interface WithStatement {
  readonly kind: 'with';
  readonly name: Word;
  readonly span: Span;
}

export interface BecauseStatement {
  readonly kind: 'because';
  readonly text: TextValue;
  readonly span: Span;
}

export interface NoteStatement {
  readonly kind: 'note';
  readonly text: TextValue;
  readonly span: Span;
}

/** `allow 2 because "…"` */
export interface AllowStatement {
  readonly kind: 'allow';
  readonly count: number;
  readonly reason?: TextValue;
  readonly span: Span;
}

/** `accept code because "…"` */
export interface AcceptStatement {
  readonly kind: 'accept';
  readonly code: Word;
  readonly reason?: TextValue;
  readonly span: Span;
}

/** `vary at most 1` */
export interface VaryStatement {
  readonly kind: 'vary';
  readonly count: number;
  readonly span: Span;
}

/** `reading day-1 { … }` in a build: measurements with the conditions that make them a datum. */
export interface ReadingStatement {
  readonly kind: 'reading';
  readonly name?: Word;
  readonly statements: readonly Statement[];
  readonly span: Span;
}

/** `rework "shaved the X" { changes }` in a build: done to the finished instrument, after the readings written before it. */
export interface ReworkStatement {
  readonly kind: 'rework';
  readonly reason?: TextValue;
  readonly statements: readonly Statement[];
  readonly span: Span;
}

/** `request 2026-04-28 { … }` in an order. */
export interface RequestStatement {
  readonly kind: 'request';
  readonly date?: DateValue;
  readonly statements: readonly Statement[];
  readonly span: Span;
}

/** A line that could not be read; one `Problem` says so. Its words are kept for completion. */
export interface UnreadableStatement {
  readonly kind: 'unreadable';
  readonly written: string;
  readonly span: Span;
}

export type Statement =
  | PropertyStatement
  | BlockStatement
  | ChangeStatement
  | AddStatement
  | DropStatement
  | TogetherStatement
  | HoldStatement
  | ExpectStatement
  | WithStatement
  | BecauseStatement
  | NoteStatement
  | AllowStatement
  | AcceptStatement
  | VaryStatement
  | ReadingStatement
  | ReworkStatement
  | RequestStatement
  | UnreadableStatement;
