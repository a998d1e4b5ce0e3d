/** Lines and columns of plain text. */
import { unit } from '../../quantities/units.js';

/** Breaks a text between words so that no line is longer than `width`, unless a single word is. */
export function wrapped(text: string, width: number): string[] {
  return text.split('\n').flatMap((paragraph) => {
    const lines: string[] = [];
    let line = '';
    for (const word of piecesOf(paragraph)) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (line !== '' && lengthOf(longer) > width) {
        lines.push(line);
        line = word;
      } else {
        line = longer;
      }
    }
    return [...lines, line];
  });
}

/** Words, but a number stays with its unit. */
function piecesOf(text: string): readonly string[] {
  const pieces: string[] = [];
  for (const word of text.split(/ +/)) {
    const before = pieces.at(-1) ?? '';
    const isUnit = /\d$/.test(before) && unit(word.replace(/[).,;:]+$/, '')) !== undefined;
    if (isUnit) pieces.splice(-1, 1, `${before} ${word}`);
    else pieces.push(word);
  }
  return pieces;
}

export interface Cell {
  readonly text: string;
  readonly align?: 'left' | 'right';
  /** Applied after the cell has been made as wide as its column. */
  readonly paint?: (text: string) => string;
}

/** Rows as lines, each column as wide as its widest cell. Nothing is padded at the end of a line. */
export function table(rows: readonly (readonly (Cell | string)[])[], { indent = 2, gap = 2 } = {}): string[] {
  const cells = rows.map((row) => row.map((cell): Cell => (typeof cell === 'string' ? { text: cell } : cell)));
  const widths: number[] = [];
  for (const row of cells) {
    row.forEach(({ text }, i) => (widths[i] = Math.max(widths[i] ?? 0, lengthOf(text))));
  }
  return cells.map((row) => {
    const used = row.findLastIndex(({ text }) => text !== '') + 1;
    const written = row.slice(0, used).map(({ text, align, paint = (plain) => plain }, i) => {
      const space = ' '.repeat((widths[i] ?? 0) - lengthOf(text));
      if (align === 'right') return space + paint(text);
      return paint(text) + (i === used - 1 ? '' : space);
    });
    return used === 0 ? '' : ' '.repeat(indent) + written.join(' '.repeat(gap));
  });
}

const SEGMENTS = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Characters as a reader counts them. */
export function lengthOf(text: string): number {
  if (/^[\x20-\x7E]*$/.test(text)) return text.length;
  return [...SEGMENTS.segment(text)].length;
}
