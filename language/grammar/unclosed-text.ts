/**
 * A text without its closing quote, or a comment without its end, costs its own line: it runs to the line's end. Closing
 * braces it swallowed there are given back when the line has opened more than it closed.
 */
import { type TextProblem, placeOf } from './problem.js';
import { type Token, type TokenTypes, itemAt, kindOf, lineOf } from './token.js';
import { type Wording } from '../wording/wording.js';

export function settleOpenTexts(
  tokens: readonly Token[],
  comments: readonly Token[],
  types: TokenTypes,
  { say }: Wording,
): { tokens: readonly Token[]; problems: TextProblem[] } {
  const problems = comments
    .filter((comment) => kindOf(comment) === 'OPEN_COMMENT')
    .map((comment) => openComment(comment, say));
  if (!tokens.some((token) => kindOf(token) === 'OPEN_TEXT')) return { tokens, problems };
  const settled: Token[] = [];
  for (const token of tokens) {
    if (kindOf(token) !== 'OPEN_TEXT') {
      settled.push(token);
      continue;
    }
    const parts = giveBackBraces(token, openedOnLine(settled, lineOf(token)), types);
    settled.push(...parts);
    problems.push({
      code: 'unclosed-text',
      message: say`This text has no closing quote: a " is missing.`,
      place: placeOf(itemAt(parts, 0), itemAt(parts, 0)),
      suggestions: [`${itemAt(parts, 0).image.trimEnd()}"`],
    });
  }
  return { tokens: settled, problems };
}

function openComment(comment: Token, say: Wording['say']): TextProblem {
  return {
    code: 'unclosed-text',
    message: say`This comment is never ended: a */ is missing.`,
    place: placeOf(comment, comment),
    suggestions: [`${comment.image.trimEnd()} */`],
  };
}

/** How many braces the line has opened and not closed so far. */
function openedOnLine(tokens: readonly Token[], line: number): number {
  let opened = 0;
  for (let i = tokens.length - 1; i >= 0; i--) {
    const token = itemAt(tokens, i);
    if (kindOf(token) === 'EOL' || lineOf(token) !== line) break;
    if (kindOf(token) === '{') opened++;
    if (kindOf(token) === '}') opened--;
  }
  return opened;
}

function giveBackBraces(token: Token, opened: number, types: TokenTypes): Token[] {
  const tail = /[\s}]*$/.exec(token.image)?.[0] ?? '';
  const brace = types['}'];
  const at = token.image.length - tail.length;
  if (opened <= 0 || brace === undefined || !tail.includes('}') || at < 1) return [token];
  const given: Token[] = [part(token, 0, at, token.tokenType)];
  for (let i = at; i < token.image.length && given.length <= opened; i++) {
    if (token.image[i] === '}') given.push(part(token, i, i + 1, brace));
  }
  return given;
}

/** A piece of a one-line token as a token of its own. */
function part(token: Token, from: number, to: number, tokenType: Token['tokenType']): Token {
  const column = token.startColumn ?? 1;
  return {
    ...token,
    image: token.image.slice(from, to),
    startOffset: token.startOffset + from,
    endOffset: token.startOffset + to - 1,
    startColumn: column + from,
    endColumn: column + to - 1,
    tokenType,
    tokenTypeIdx: tokenType.tokenTypeIdx ?? 0,
  };
}
