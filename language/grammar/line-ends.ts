/**
 * Which line ends matter. A statement ends with its line, so that `height:` with nothing after it is a fault of that
 * line and does not swallow the next. A line end is dropped where the statement plainly goes on: before `{` or `->`,
 * inside a list or a point, before the text of a `note` or `because`, and before the `by` of a `hold`.
 */
import { type Token, isText, isWord, kindOf } from './token.js';

/** The same tokens without the line ends that end nothing. */
export function significantTokens(tokens: readonly Token[]): Token[] {
  const kept: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i]!;
    if (token.tokenType.name !== 'EOL') {
      kept.push(token);
      continue;
    }
    while (kindOf(tokens[i + 1]) === 'EOL') i++;
    if (endsLine(kept[kept.length - 1], tokens[i + 1], tokens[i + 2])) kept.push(token);
  }
  return kept;
}

function endsLine(before: Token | undefined, after: Token | undefined, second: Token | undefined): boolean {
  const last = kindOf(before);
  const next = kindOf(after);
  if (before === undefined || last === '{') return false;
  if (next === '{' || next === 'ARROW' || next === ',' || next === 'PLUS_MINUS' || next === 'DOTS') return false;
  if (isText(after) && (TAKES_TEXT.has(last) || last === ':')) return false;
  const statementFollows = isWord(after) && (kindOf(second) === ':' || kindOf(second) === '{');
  if (last === ',' || last === '(') return after === undefined || next === '}' || statementFollows;
  if (next === ')') return false;
  return !(next === 'by' && isWord(before) && isWord(second) && !statementFollows);
}

const TAKES_TEXT: ReadonlySet<string> = new Set(['because', 'note', 'together', 'per']);
