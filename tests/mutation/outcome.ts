/** What became of mutants, as a person compares them: the lines as they are and as they were made. */

export interface Outcome {
  readonly file: string;
  readonly line: number;
  /** `what stands there ⟶ what was put there`, by which it is found again though lines move. */
  readonly change: string;
  readonly killed: boolean;
}

/** As the mutation library writes it. (mutation-testing-report-schema, version 2) */
export interface Report {
  readonly files: Readonly<
    Record<
      string,
      {
        readonly source: string;
        readonly mutants: readonly {
          readonly status: string;
          readonly replacement?: string;
          readonly location: { readonly start: Position; readonly end: Position };
        }[];
      }
    >
  >;
}

interface Position {
  readonly line: number;
  readonly column: number;
}

/** A mutant that never ends is noticed, as one that fails is. Those that are no program at all count for nothing. */
const KILLED = new Set(['Killed', 'Timeout', 'RuntimeError']);
const LIVED = new Set(['Survived', 'NoCoverage']);

export function outcomesOf({ files }: Report): readonly Outcome[] {
  return Object.entries(files).flatMap(([file, { source, mutants }]) => {
    const lines = source.split('\n');
    return mutants
      .filter(({ status }) => KILLED.has(status) || LIVED.has(status))
      .map(({ status, replacement = '', location: { start, end } }) => ({
        file,
        line: start.line,
        change: changeOf(lines, start, end, replacement),
        killed: KILLED.has(status),
      }));
  });
}

function changeOf(lines: readonly string[], start: Position, end: Position, replacement: string): string {
  const before = lines[start.line - 1]!.slice(0, start.column - 1);
  const after = lines[end.line - 1]!.slice(end.column - 1);
  const inside =
    start.line === end.line
      ? lines[start.line - 1]!.slice(start.column - 1, end.column - 1)
      : [
          lines[start.line - 1]!.slice(start.column - 1),
          ...lines.slice(start.line, end.line - 1),
          lines[end.line - 1]!.slice(0, end.column - 1),
        ].join(' ');
  return `${brief(`${before}⟦${inside}⟧${after}`)} ⟶ ${brief(replacement)}`;
}

/** On one line; the middle of what is long goes without saying. */
function brief(text: string): string {
  const flat = text.replace(/\s+/g, ' ').trim();
  return flat.length <= 160 ? flat : `${flat.slice(0, 100)} … ${flat.slice(-57)}`;
}
