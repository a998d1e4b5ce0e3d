/** From one text to another by edits no larger than need be: within a line, or of whole lines that come or go. */
import type { Span } from '../facts/facts.js';

export interface LineEdit {
  readonly range: Span;
  readonly text: string;
}

/** `after` is `before` with white space and spellings changed within lines, and empty lines left out or added. */
export function lineEdits(before: string, after: string): readonly LineEdit[] {
  const [from, to] = [linesWithEnds(before), linesWithEnds(after)];
  const edits: LineEdit[] = [];
  let j = 0;
  for (const [i, line] of from.entries()) {
    const next = to[j];
    const isGone = line.trim() === '' && (next === undefined || next.trim() !== '');
    if (isGone) {
      if (line !== '') edits.push({ range: { start: { line: i, character: 0 }, end: endOf(from, i) }, text: '' });
      continue;
    }
    j++;
    if (next !== undefined && next !== line) edits.push(within(i, line, next, from));
  }
  return edits;
}

function linesWithEnds(text: string): readonly string[] {
  return text.split(/(?<=\r\n|\n|\r(?!\n))/);
}

/** Where a line ends, its line end included: the beginning of the next, or the end of the text. */
function endOf(lines: readonly string[], i: number): Span['end'] {
  const line = lines[i]!;
  return /[\r\n]$/.test(line) ? { line: i + 1, character: 0 } : { line: i, character: line.length };
}

function within(i: number, line: string, next: string, all: readonly string[]): LineEdit {
  const most = Math.min(line.length, next.length);
  let head = 0;
  while (head < most && line[head] === next[head]) head++;
  let tail = 0;
  while (tail < most - head && line[line.length - 1 - tail] === next[next.length - 1 - tail]) tail++;
  const end = tail === 0 ? endOf(all, i) : { line: i, character: line.length - tail };
  return { range: { start: { line: i, character: head }, end }, text: next.slice(head, next.length - tail) };
}
