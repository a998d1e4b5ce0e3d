import { STATEMENT_WORDS } from '../language/facts/statement-words.js';
import { DEFINITION_KINDS } from '../language/facts/facts.js';

/** The words of the language by what they do, for colouring. No word is reserved: followed by a colon each is a property. */
export const WORDS = {
  /** Open a definition: `recipe tarn-7 from tarn-6 {`. */
  definitions: DEFINITION_KINDS,
  /** Stand between two names in a definition's head. */
  relations: ['is', 'for', 'from', 'of'],
  /** Open a line inside a block. */
  statements: [...STATEMENT_WORDS],
  /** Join the parts of a line: `hold … by …`, `vary at most 1`, `… per "source"`. */
  joining: ['at', 'by', 'most', 'per', 'because'],
  /** Stand before the end of a range. */
  limits: ['below', 'above'],
  /** Values that say nothing is known. */
  constants: ['unknown'],
} as const;
