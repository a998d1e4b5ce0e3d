import { readFileSync } from 'node:fs';

/** Rows of one of the published tables kept in `data/`, by column name. Cells may be quoted; all are text. */
export function readTable(name: string): Record<string, string>[] {
  const [head, ...lines] = readFileSync(new URL(`./data/${name}`, import.meta.url), 'utf8')
    .trimEnd()
    .split('\n');
  const columns = cells(head!);
  return lines.map((line) => Object.fromEntries(cells(line).map((cell, i) => [columns[i]!, cell])));
}

/** A cell as a number; an empty or unreadable one is an error of the table. */
export function number(row: Record<string, string>, column: string): number {
  const value = Number(row[column]);
  if (row[column] === undefined || row[column] === '' || !Number.isFinite(value)) {
    throw new Error(`No number in column ${column} of ${JSON.stringify(row)}`);
  }
  return value;
}

/** Relative difference of `actual` from `published`. */
export function off(actual: number, published: number): number {
  return Math.abs(actual / published - 1);
}

function cells(line: string): string[] {
  const found: string[] = [];
  const cell = /("(?:[^"]|"")*"|[^,]*)(,|$)/y;
  for (;;) {
    const match = cell.exec(line);
    if (!match) return found;
    const text = match[1]!;
    found.push(text.startsWith('"') ? text.slice(1, -1).replaceAll('""', '"') : text);
    if (match[2] === '') return found;
  }
}
