/** Small files with one idea each, in folders that can be taken in at a glance. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const ROOTS = ['language', 'extension', 'syntaxes', 'tests'];
const GENERATED = /\/generated\//;

const files = ROOTS.flatMap((root) =>
  readdirSync(root, { recursive: true, encoding: 'utf8' })
    .map((name) => join(root, name))
    .filter((path) => path.endsWith('.ts') && !GENERATED.test(path)),
);

const MOST_LINES = 400;

/** Longer ones that are to be parted, and how long they may be until then: they may only get shorter. */
const LONG: ReadonlyMap<string, number> = new Map([
  ['language/mechanics/plate/mesh/mesh.ts', 433],
  ['language/mechanics/plate/fit/sensitivities.ts', 480],
  ['language/recipes/derived/wood-quantities.ts', 410],
]);

test(`no file has more than ${MOST_LINES} lines`, () => {
  const tooLong = files.flatMap((path) => {
    const lines = readFileSync(path, 'utf8').split('\n').length - 1;
    return lines > (LONG.get(path) ?? MOST_LINES) ? [`${path} has ${lines} lines: part it by what it is about`] : [];
  });
  expect(tooLong).toEqual([]);
});

test('files that are no longer too long are off the list', () => {
  const short = [...LONG.keys()].filter(
    (path) => !files.includes(path) || readFileSync(path, 'utf8').split('\n').length - 1 <= MOST_LINES,
  );
  expect(short).toEqual([]);
});

const MOST_FILES = 30;

/** One file for each area of the instrument. */
const BROAD = ['language/catalogue'];

test(`no folder of the program has more than ${MOST_FILES} files`, () => {
  const folders = new Map<string, number>();
  for (const path of files) {
    const folder = path.slice(0, path.lastIndexOf('/'));
    if (!folder.startsWith('tests/')) folders.set(folder, (folders.get(folder) ?? 0) + 1);
  }
  const full = [...folders].filter(([folder, count]) => count > MOST_FILES && !BROAD.includes(folder));
  expect(full.map(([folder, count]) => `${folder} has ${count} files: part it by subject`)).toEqual([]);
});
