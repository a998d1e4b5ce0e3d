/** Text that is not worth reading as a recipe: far too long, or not text at all. */
import { LIMITS } from '../facts/limits.js';
import { type TextProblem, placeOf } from './problem.js';
import type { Token } from './token.js';
import { type Wording } from '../wording/wording.js';

/** The one problem of such a text, or undefined for any other. */
export function unfitText(text: string, { say }: Wording): TextProblem | undefined {
  if (text.length > LIMITS.fileCharacters) {
    const millions = (text.length / 1e6).toFixed(1);
    return problem('too-large', say`This file has ${millions} million characters; more than 5 million are not read.`);
  }
  if (text.includes('\u0000'))
    return problem(
      'bad-character',
      say`This file is not plain text, so it is not read. If it is one of yours, save it again with the encoding UTF-8.`,
    );
  return undefined;
}

/** A letter that was lost when the bytes were taken for UTF-8: told once for a file. */
export function lostLetter(tokens: readonly Token[], { say }: Wording): TextProblem | undefined {
  const lost = tokens.find(({ image }) => image.includes('\uFFFD'));
  if (lost === undefined) return undefined;
  return {
    code: 'bad-character',
    message: say`Letters are lost here: this file is not saved as UTF-8. Open it again with the encoding it has, and save it as UTF-8.`,
    place: placeOf(lost, lost),
    suggestions: [],
  };
}

function problem(code: TextProblem['code'], message: string): TextProblem {
  const start = { line: 0, character: 0 };
  return { code, message, place: { start, end: start }, suggestions: [] };
}
