/**
 * Which brace of an unbalanced definition was forgotten. A closing brace that starts its line closes the block whose
 * line starts in the same column; every deeper block still open there lacks its own. It ended where the lines came back
 * to its own column, or else there. What indentation cannot tell is closed at the end.
 */
import { type Token, type TokenTypes, itemAt, kindOf, lineOf, virtualToken } from './token.js';

/** The tokens with `missing` closing braces put in, and the opening braces they answer. */
export function closeByIndentation(
  tokens: readonly Token[],
  missing: number,
  types: TokenTypes,
): { tokens: Token[]; unclosed: Token[] } {
  const brace = types['}'];
  if (brace === undefined) throw new Error('The grammar has no closing brace.');
  const closed: Token[] = [];
  const unclosed: Token[] = [];
  const open: Open[] = [];
  let lineStart = itemAt(tokens, 0);

  const closeInnermost = (): void => {
    const innermost = open.pop();
    if (innermost === undefined) return;
    unclosed.push(innermost.token);
    let at = innermost.back ?? closed.length;
    while (kindOf(closed[at - 1]) === 'EOL') at--;
    closed.splice(at, 0, virtualToken(brace, itemAt(closed, at - 1)));
  };

  for (const token of tokens) {
    const kind = kindOf(token);
    if (kind !== 'EOL' && lineOf(token) !== lineOf(lineStart)) {
      lineStart = token;
      noteLine(open, token.startColumn ?? 1, kind, closed.length);
    }
    const innermost = open[open.length - 1];
    if (innermost && kind !== 'EOL' && lineOf(token) === lineOf(innermost.token)) innermost.filled = true;
    if (kind === '{') open.push({ token, column: lineStart.startColumn ?? 1, filled: false });
    if (kind === '}') {
      const column = token.startColumn ?? 1;
      const meant = token === lineStart && open.some((one) => one.column === column);
      while (meant && unclosed.length < missing && open.length > 1 && itemAt(open, open.length - 1).column > column) {
        closeInnermost();
      }
      open.pop();
    }
    closed.push(token);
  }
  while (kindOf(closed[closed.length - 1]) === 'EOL') closed.pop();
  while (open.length > 0) closeInnermost();
  return { tokens: closed, unclosed };
}

interface Open {
  readonly token: Token;
  /** Where the line of the block starts. */
  readonly column: number;
  /** Something stands in the block, by its place. */
  filled: boolean;
  /** How many tokens came before the first line that no longer stands in the block, by its column. */
  back?: number;
}

/** A line that starts in `column`, `at` that many tokens: is it still inside the innermost block? */
function noteLine(open: readonly Open[], column: number, kind: string | undefined, at: number): void {
  const innermost = open[open.length - 1];
  if (innermost === undefined || innermost.back !== undefined || kind === '}') return;
  if (column > innermost.column) innermost.filled = true;
  else if (innermost.filled) innermost.back = at;
}
