/**
 * What stands one under the other: the values of properties in a row of lines, always; blocks, statements, arrows and
 * line-end comments, where they were written so. A column is as far to the left as its longest line allows, so that
 * aligning a second time changes nothing.
 */
import type { LaidOut, Piece } from './format-layout.js';

export function alignColumns(lines: readonly LaidOut[]): void {
  alignValues(lines);
  keepColumns(lines);
  keepComments(lines);
}

function alignValues(lines: readonly LaidOut[]): void {
  for (const run of runsOf(
    lines.length,
    (i) => isOneProperty(lines[i]!) && sameDepth(lines, i) && isOneProperty(lines[i - 1]!),
  )) {
    if (!isOneProperty(lines[run[0]!]!)) continue;
    align(
      run.map((i) => lines[i]!.pieces!),
      run.map(() => 2),
      run.map(() => 1),
    );
  }
}

/** A line that is one `path: value` and nothing else but perhaps a comment. */
function isOneProperty({ pieces, line }: LaidOut): boolean {
  if (!pieces || line.treatment !== 'lay out' || pieces.length < 3) return false;
  const [first, colon, ...rest] = pieces;
  return (
    first!.word.opensStatement &&
    first!.word.kind === 'word' &&
    colon!.word.kind === 'sign' &&
    colon!.text === ':' &&
    rest[0]!.word.kind !== 'comment' &&
    rest.every(({ word }) => !word.opensStatement && !(word.kind === 'sign' && /^[{}]$/.test(word.text)))
  );
}

/** A piece that may stand in a column, and what it must have in common with the one above. */
interface Cell {
  readonly at: number;
  readonly like: string;
}

/** As many as a file has lines: too many to hand to a function one by one. */
function largest(numbers: readonly number[]): number {
  return numbers.reduce((most, each) => Math.max(most, each), 0);
}

function keepColumns(lines: readonly LaidOut[]): void {
  const cells = lines.map(cellsOf);
  const most = largest(cells.map((own) => own.length));
  for (let k = 0; k < most; k++) {
    const isUnder = (i: number): boolean => {
      const [above, here] = [cells[i - 1]!, cells[i]!];
      if (k >= above.length || k >= here.length || !sameDepth(lines, i)) return false;
      if (!here.slice(0, k + 1).every(({ like }, n) => like === above[n]!.like)) return false;
      return columnOf(lines[i]!, here[k]!) === columnOf(lines[i - 1]!, above[k]!);
    };
    for (const run of runsOf(lines.length, isUnder)) {
      if (run.length < 2) continue;
      const places = run.map((i) => cells[i]![k]!.at);
      const pieces = run.map((i) => lines[i]!.pieces!);
      align(
        pieces,
        places,
        places.map((at, n) => pieces[n]![at]!.gap),
      );
    }
  }
}

function cellsOf({ pieces, line }: LaidOut): readonly Cell[] {
  if (!pieces || line.treatment !== 'lay out') return [];
  const isStep = !(pieces[1]?.word.kind === 'sign' && pieces[1].text === ':');
  return pieces.flatMap(({ word, text }, at) => {
    if (at === 0) return [];
    if (word.opensStatement) return [{ at, like: text }];
    if (word.kind === 'sign' && /^(\{|->|→)$/.test(text)) return [{ at, like: text }];
    const before = pieces[at - 1]!;
    return isStep && before.word.kind === 'sign' && before.text === ':' && word.kind !== 'comment'
      ? [{ at, like: 'value' }]
      : [];
  });
}

function columnOf({ pieces }: LaidOut, { at }: Cell): number {
  return pieces![at]!.word.start;
}

/** A comment behind words stays in its column, or, with those above and below it in the same, moves right as needed. */
function keepComments(lines: readonly LaidOut[]): void {
  const comment = (i: number): Piece | undefined => {
    const { pieces, line } = lines[i]!;
    const last = pieces?.at(-1);
    return line.treatment === 'lay out' && pieces!.length > 1 && last?.word.kind === 'comment' ? last : undefined;
  };
  const isUnder = (i: number) => comment(i) !== undefined && comment(i)!.word.start === comment(i - 1)?.word.start;
  for (const run of runsOf(lines.length, isUnder)) {
    const first = comment(run[0]!);
    if (!first) continue;
    const ends = run.map((i) => widthOf(lines[i]!.pieces!, lines[i]!.pieces!.length - 1));
    const column = Math.max(first.word.start, largest(ends.map((end) => end + 2)));
    for (const [n, i] of run.entries()) comment(i)!.gap = column - ends[n]!;
  }
}

/** Puts one piece of each line into one column, each at least so far from the piece before. */
function align(lines: readonly Piece[][], places: readonly number[], least: readonly number[]): void {
  const ends = lines.map((pieces, n) => widthOf(pieces, places[n]!));
  const column = largest(ends.map((end, n) => end + least[n]!));
  for (const [n, pieces] of lines.entries()) pieces[places[n]!]!.gap = column - ends[n]!;
}

function widthOf(pieces: readonly Piece[], count: number): number {
  return pieces.slice(0, count).reduce((sum, { gap, text }) => sum + gap + text.length, 0);
}

function sameDepth(lines: readonly LaidOut[], i: number): boolean {
  const [above, here] = [lines[i - 1]!.line, lines[i]!.line];
  return above.depth === here.depth && !above.goesOn && !here.goesOn;
}

/** Numbers from 0 cut into runs; `joins(i)` says whether i belongs with i − 1. */
function runsOf(count: number, joins: (i: number) => boolean): readonly (readonly number[])[] {
  const runs: number[][] = [];
  for (let i = 0; i < count; i++) {
    if (i > 0 && joins(i)) runs.at(-1)!.push(i);
    else runs.push([i]);
  }
  return runs;
}
