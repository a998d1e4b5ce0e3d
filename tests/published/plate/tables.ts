/** Reads the tables of published numbers beside the tests. */
import { readFileSync } from 'node:fs';

export type Row = Readonly<Record<string, string>>;

export function readTable(name: string): readonly Row[] {
  const text = readFileSync(new URL(`../data/${name}`, import.meta.url), 'utf8');
  const [head, ...lines] = text.trim().split('\n').map(cells);
  return lines.map((line) => Object.fromEntries(head!.map((key, i) => [key, line[i] ?? ''])));
}

export function numbers(rows: readonly Row[], key: string): readonly number[] {
  return rows.map((row) => Number(row[key]));
}

/** One line of comma-separated cells, quotes doubled inside quotes. */
function cells(line: string): string[] {
  return [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(([, quoted, plain]) =>
    quoted === undefined ? plain! : quoted.replaceAll('""', '"'),
  );
}
