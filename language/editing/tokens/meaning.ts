/** What a word of a file is. */
import type { DefinitionKind } from '../../facts/facts.js';

export type TokenKind =
  /** The name of a definition, where it is defined or named. */
  | DefinitionKind
  | 'part'
  | 'property'
  /** A quantity the engine computes. */
  | 'derived'
  /** A path the catalogue does not know, or a name nothing has. */
  | 'unknown'
  /** One of a property's own words, such as `quartersawn`; `unknown`, said by a maker. */
  | 'choice'
  /** The code of a finding, the name of a reading. */
  | 'label'
  | 'keyword'
  /** A small word between others: `from`, `by`, `below`. */
  | 'joining'
  | 'number'
  | 'unit'
  | 'text'
  | 'date'
  | 'comment'
  | 'operator';

export type TokenModifier =
  /** Where the name is defined, and the word before it. */
  | 'declaration'
  /** What a recipe sets out to change. */
  | 'modification'
  /** Not to be chosen here: what the parent has, what the engine computes. */
  | 'readonly'
  /** From the library that comes with the language. */
  | 'defaultLibrary'
  /** A reason or a note, for people. */
  | 'documentation';

export interface Meaning {
  readonly kind: TokenKind;
  readonly modifiers: readonly TokenModifier[];
}
