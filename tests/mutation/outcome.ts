/** What became of a mutant, as a person compares them: the line as it is and as it was made. */
import type { Mutant, Position } from './bundle.js';

export interface Outcome {
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  /** `what ⟦stands⟧ there ⟶ what was put in place of it`, by which it is found again though lines move. */
  readonly change: string;
  readonly killed: boolean;
}

export function outcomeOf({ fileName, location, replacement }: Mutant, source: string, killed: boolean): Outcome {
  return {
    file: fileName,
    line: location.start.line + 1,
    change: changeOf(source.split('\n'), location.start, location.end, replacement),
    killed,
  };
}

function changeOf(lines: readonly string[], start: Position, end: Position, replacement: string): string {
  const before = lines[start.line]!.slice(0, start.column);
  const after = lines[end.line]!.slice(end.column);
  const inside =
    start.line === end.line
      ? lines[start.line]!.slice(start.column, end.column)
      : [
          lines[start.line]!.slice(start.column),
          ...lines.slice(start.line + 1, end.line),
          lines[end.line]!.slice(0, end.column),
        ].join(' ');
  return `${brief(`${before}⟦${inside}⟧${after}`)} ⟶ ${brief(replacement)}`;
}

/** On one line; the middle of what is long goes without saying. */
function brief(text: string): string {
  const flat = text.replace(/\s+/g, ' ').trim();
  return flat.length <= 160 ? flat : `${flat.slice(0, 100)} … ${flat.slice(-57)}`;
}
