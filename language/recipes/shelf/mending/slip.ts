/** What a rule of this folder looks at: a piece of a line that does not read, and what is known of the place it stands in. */
import type { Property } from '../../../catalogue/property.js';
import type { DefinitionKind, ProblemCode } from '../../../facts/facts.js';
import type { Wording } from '../../../wording/wording.js';

export interface Piece {
  /** Without blanks around it; each quoted text stands as `"§0"`, `"§1"`. */
  readonly text: string;
  /** The kind of definition, and undefined where the kind itself is in doubt. */
  readonly kind: DefinitionKind | undefined;
  /** The piece is the whole of a definition's head, with its brace. */
  readonly isHead: boolean;
  /** The property a path written here would mean. */
  readonly property: (path: string) => Property | undefined;
  /** The catalogue's path these words would make here, `top thickness`; undefined where there is none. */
  readonly pathOf: (words: string) => string | undefined;
}

/** One way in which makers write something else than the language: the piece put right, or undefined where it does not apply. */
export interface Slip {
  /** The finding it is told as. */
  readonly code: ProblemCode;
  /** Why, in a sentence; absent: what is said of the line anyway. */
  readonly why?: (wording: Wording) => string;
  readonly mend: (piece: Piece) => string | undefined;
}

/** A number as makers write it, for a pattern. */
export const NUMBER = String.raw`[-+\u2212\u2013]?(?:\d+(?:[.,]\d+)?(?:[ -]\d+\/\d+|\/\d+)?|\.\d+)`;
/** A number and perhaps its unit. */
export const QUANTITY = String.raw`${NUMBER}(?:\s*(?!(?:to|bis|and|or|x|by)\b)[A-Za-zµ°%"'³²/·]+)?`;
