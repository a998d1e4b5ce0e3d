/**
 * Which brace of an unbalanced definition was forgotten. A closing brace that starts its line closes the block whose
 * line starts in the same column; every deeper block still open there lacks its own. What indentation cannot tell is
 * closed at the end.
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
  const open: { token: Token; column: number }[] = [];
  let lineStart = itemAt(tokens, 0);

  const closeInnermost = (): void => {
    const innermost = open.pop();
    if (innermost === undefined) return;
    unclosed.push(innermost.token);
    let at = closed.length;
    while (kindOf(closed[at - 1]) === 'EOL') at--;
    closed.splice(at, 0, virtualToken(brace, itemAt(closed, at - 1)));
  };

  for (const token of tokens) {
    const kind = kindOf(token);
    if (kind !== 'EOL' && lineOf(token) !== lineOf(lineStart)) lineStart = token;
    if (kind === '{') open.push({ token, column: lineStart.startColumn ?? 1 });
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
