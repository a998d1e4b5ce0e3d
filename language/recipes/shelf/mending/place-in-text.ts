/** Where in a definition's text a word stands: inside which blocks, and what the piece of line around it is. */

/** The text with what is quoted or remarked blotted out, letter for letter, so that signs can be looked for. */
export function blotted(source: string): string {
  return source.replace(/"[^"\n]*"?|\/\/[^\n]*|\/\*[\s\S]*?(?:\*\/|$)/g, (found) =>
    found.replace(/[^\n]/g, found.startsWith('"') ? QUOTED : REMARKED),
  );
}

const QUOTED = '\u0002';
const REMARKED = '\u0001';

/** The names of the blocks around an offset, outermost first; the definition itself is none. */
export function blocksAround(plain: string, offset: number): readonly string[] {
  const open: string[] = [];
  let from = 0;
  for (let at = 0; at < offset; at++) {
    const sign = plain[at];
    if (sign === '{') {
      open.push(nameOfBlock(plain.slice(from, at)));
      from = at + 1;
    } else if (sign === '}' || sign === '\n') {
      if (sign === '}') open.pop();
      from = at + 1;
    }
  }
  return open.slice(1).filter((name) => name !== '');
}

function nameOfBlock(words: string): string {
  if (/^\s*(?:reading|rework|request|together)\b/.test(words)) return '';
  return /([\p{L}\d.-]+)\s*$/u.exec(words)?.[1] ?? '';
}

export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The piece of a line, between braces and line ends, that an offset stands in; without the blanks around it. */
export function pieceAt(plain: string, offset: number): Stretch {
  let [from, to] = [offset, offset];
  while (from > 0 && !/[{}\n]/.test(plain[from - 1] ?? '')) from--;
  while (to < plain.length && !/[{}\n]/.test(plain[to] ?? '') && !startsRemark(plain, to)) to++;
  while (from < to && /\s/.test(plain[from] ?? '')) from++;
  while (to > from && /\s/.test(plain[to - 1] ?? '')) to--;
  return { from, to };
}

function startsRemark(plain: string, at: number): boolean {
  return plain[at] === REMARKED;
}
