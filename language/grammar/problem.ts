import type { Token } from './token.js';

/** Something wrong with the text, where it stands in the file (lines and columns from zero, columns in UTF-16). */
export interface TextProblem {
  readonly code: TextProblemCode;
  readonly message: string;
  readonly place: Place;
  readonly suggestions: readonly string[];
}

export type TextProblemCode =
  'unreadable-line' | 'unclosed-block' | 'stray-brace' | 'unclosed-text' | 'bad-character' | 'too-large' | 'too-long';

export interface Place {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

/** From the start of one token to the end of another. */
export function placeOf(first: Token, last: Token): Place {
  return {
    start: { line: (first.startLine ?? 1) - 1, character: (first.startColumn ?? 1) - 1 },
    end: { line: (last.endLine ?? 1) - 1, character: last.endColumn ?? 0 },
  };
}

/** True when a place starts within another; what starts where the other has just ended stands outside. */
export function within(place: Place, whole: Place): boolean {
  return notBefore(place.start, whole.start) && !notBefore(place.start, whole.end);
}

function notBefore(a: Place['start'], b: Place['start']): boolean {
  return a.line > b.line || (a.line === b.line && a.character >= b.character);
}
