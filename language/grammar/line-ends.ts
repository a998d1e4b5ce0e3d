/**
 * Which line ends matter. A statement ends with its line, so that `height:` with nothing after it is a fault of that
 * line and does not swallow the next. A line end is dropped where the statement plainly goes on: before `{` or `->`,
 * inside a list or a point, before the text of a `note` or `because`, and before the `by` of a `hold`.
 */
import { type Token, isText, isWord, itemAt, kindOf } from './token.js';

/** The same tokens without the line ends that end nothing. */
export function significantTokens(tokens: readonly Token[]): Token[] {
  const kept: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const token = itemAt(tokens, i);
    if (token.tokenType.name !== 'EOL') {
      kept.push(token);
      continue;
    }
    while (kindOf(tokens[i + 1]) === 'EOL') i++;
    if (endsLine(kept, tokens[i + 1], tokens[i + 2])) kept.push(token);
  }
  return kept;
}

function endsLine(kept: readonly Token[], after: Token | undefined, second: Token | undefined): boolean {
  const before = kept[kept.length - 1];
  const last = kindOf(before);
  const next = kindOf(after);
  if (before === undefined || last === '{') return false;
  if (next === ',' || next === 'PLUS_MINUS' || next === 'DOTS') return false;
  if (next === '{') return lineHas(kept, ':') || last === '}';
  if (next === 'ARROW') return !lineHas(kept, 'change');
  if (isText(after) && (TAKES_TEXT.has(last) || last === ':')) return false;
  const statementFollows = isWord(after) && (kindOf(second) === ':' || kindOf(second) === '{');
  if (last === ',' || last === '(') return after === undefined || next === '}' || statementFollows;
  if (next === ')') return false;
  return !(next === 'by' && isWord(before) && isWord(second) && !statementFollows);
}

/** True when the line so far, back to a brace, holds such a token. */
function lineHas(kept: readonly Token[], kind: string): boolean {
  for (let i = kept.length - 1; i >= 0; i--) {
    const found = kindOf(kept[i]);
    if (found === kind) return true;
    if (found === 'EOL' || found === '{' || found === '}') return false;
  }
  return false;
}

const TAKES_TEXT: ReadonlySet<string> = new Set(['because', 'note', 'together', 'rework', 'per']);
