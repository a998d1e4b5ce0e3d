/** Words and signs as they stand, without asking what they mean: all that laying out a text needs. */
import type { CutFile } from './parse.js';
import { type Place, placeOf } from './problem.js';
import { type Token, isWord, kindOf } from './token.js';

export interface Lexeme {
  readonly kind: 'word' | 'number' | 'unit' | 'text' | 'date' | 'comment' | 'sign';
  readonly text: string;
  readonly span: Place;
}

export interface Lexemes {
  readonly words: readonly Lexeme[];
  /**
   * What the parser is given: for each definition the kinds of its words, the line ends that matter and the braces
   * supplied. Two texts with the same words and the same skeleton read alike.
   */
  readonly skeleton: string;
}

export function lexemesOf({ tokens, definitions }: CutFile): Lexemes {
  return {
    words: tokens.map((token) => ({ kind: kindOfLexeme(token), text: token.image, span: placeOf(token, token) })),
    skeleton: definitions
      .map((definition) => definition.tokens.map((token) => kindOf(token) + (token.image === '' ? '!' : '')).join(' '))
      .join('\n'),
  };
}

const BY_TOKEN: ReadonlyMap<string, Lexeme['kind']> = new Map(
  Object.entries<Lexeme['kind']>({
    NUMBER: 'number',
    UNIT: 'unit',
    STRING: 'text',
    OPEN_TEXT: 'text',
    DATE: 'date',
    LINE_COMMENT: 'comment',
    BLOCK_COMMENT: 'comment',
    OPEN_COMMENT: 'comment',
  }),
);

function kindOfLexeme(token: Token): Lexeme['kind'] {
  return BY_TOKEN.get(kindOf(token)) ?? (isWord(token) ? 'word' : 'sign');
}
