/**
 * Formatting: two spaces for each block, one around an arrow and after a colon, values of a list of properties one under
 * the other, units in their usual spelling, at most one empty line. Columns and line-end comments that stand one under
 * the other stay so. Lines stay the lines they are, and a line that cannot be read keeps its words as they are.
 *
 * Nothing is ever lost: every word, sign and comment must be there afterwards as before, or nothing is done at all.
 */
import { canonicalSpelling } from '../../quantities/units.js';
import type { FileFacts } from '../../facts/facts.js';
import { type BookmatchParser, type Lexeme, readFile, readLexemes } from '../../recipes/shelf/reader.js';
import { alignColumns } from './format-columns.js';
import { type LaidOut, layOut } from './format-layout.js';
import { type Line, linesOf } from './format-lines.js';
import { type LineEdit, lineEdits } from '../line-edits.js';

/** The edits that format a text, one for each line that changes; none when it is formatted or could not be done safely. */
export function formattingEdits(text: string, parser: BookmatchParser, facts?: FileFacts): readonly LineEdit[] {
  const after = formatted(text, parser, facts);
  return after === text ? [] : lineEdits(text, after);
}

/**
 * The edits for some lines alone, laid out as they would be with all the others. Every edit stays within its line or
 * takes an empty one away, so any part of them is as safe as the whole.
 */
export function formattingEditsWithin(
  lines: { readonly first: number; readonly last: number },
  text: string,
  parser: BookmatchParser,
  facts?: FileFacts,
): readonly LineEdit[] {
  return formattingEdits(text, parser, facts).filter(
    ({ range: { start } }) => start.line >= lines.first && start.line <= lines.last,
  );
}

/** The text formatted; the text itself where that could not be done safely. `facts`: what the text says, if known. */
export function formatted(text: string, parser: BookmatchParser, facts?: FileFacts): string {
  const said = facts ?? readFile('', text, parser);
  const before = readLexemes(text, parser);
  // No text that can be read, so nothing could be told to be lost.
  if (before.words.length === 0 && text.trim() !== '') return text;
  // Lines that would read otherwise with more space in them (`2024-01-31->…`) stay as they are.
  const delicate = new Set<number>();
  for (;;) {
    const after = written(linesOf(text, before.words, said, delicate));
    if (after === text) return text;
    const now = readLexemes(after, parser);
    const at = firstDifference(before.words, now.words);
    if (at === undefined) return before.skeleton === now.skeleton ? after : text;
    const line = before.words[at]?.span.start.line;
    if (line === undefined || delicate.has(line) || delicate.size >= MOST_DELICATE) return text;
    delicate.add(line);
  }
}

/** More such lines than this, and the file is left alone. */
const MOST_DELICATE = 20;

function written(lines: readonly Line[]): string {
  const laidOut = lines.map(layOut);
  alignColumns(laidOut);
  const kept = laidOut.filter((line, i) => !isBlank(line) || (i > 0 && line.line.inComment) || !isSpare(laidOut, i));
  while (kept.length > 0 && isBlank(kept.at(-1)!)) kept.pop();
  const ending = lines.find((line) => line.ending !== '')?.ending ?? '\n';
  return kept.map((line) => textOf(line) + (line.line.ending || ending)).join('');
}

/** An empty line after another, or at the beginning of the file. */
function isSpare(lines: readonly LaidOut[], i: number): boolean {
  return i === 0 || isBlank(lines[i - 1]!);
}

function isBlank({ line }: LaidOut): boolean {
  return line.words.length === 0 && line.text.trim() === '';
}

function textOf({ line, pieces }: LaidOut): string {
  return pieces ? pieces.map(({ gap, text }) => ' '.repeat(gap) + text).join('') : line.text;
}

/** The first word or comment that is not the same; undefined when all are. */
function firstDifference(before: readonly Lexeme[], after: readonly Lexeme[]): number | undefined {
  const at = before.findIndex(({ kind, text }, i) => {
    const now = after[i];
    return kind !== now?.kind || (text !== now.text && !(kind === 'unit' && isSameUnit(text, now.text)));
  });
  if (at >= 0) return at;
  return before.length === after.length ? undefined : before.length;
}

function isSameUnit(a: string, b: string): boolean {
  const [one, other] = [a, b].map((unit) => canonicalSpelling(unit.replace(/\.$/, '')));
  return one !== undefined && one === other;
}
