/**
 * The server as a process of its own, held against a fresh one with the same texts: after edits chosen for what programs
 * stumble over, and after whatever comes, with another seed each time.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { madeShop } from '../scale/made-shop.js';
import { SEED } from '../seed.js';
import { THOROUGH } from '../thorough.js';
import type { Action } from './action.js';
import { Folders } from './folders.js';
import { openIn } from './player.js';
import { type Files, replay, soak } from './run.js';
import { SERVER, ServerProcess } from './server-process.js';
import { smallest } from './shrink.js';

const EXAMPLE = 'examples/hollin-reach';
const SECONDS = THOROUGH ? 60 : 6;

beforeAll(() => {
  if (!existsSync(SERVER)) spawnSync(process.execPath, ['esbuild.config.mjs']);
}, 60_000);

const example: Files = new Map(
  readdirSync(EXAMPLE)
    .filter((name) => name.endsWith('.bookmatch'))
    .map((name) => [name, readFileSync(join(EXAMPLE, name), 'utf8')]),
);

const SMALL: Files = new Map([
  ['a.bookmatch', 'model m {\n  body { width: 380 mm }\n}\n\nrecipe a for m {\n  because "First."\n}\n'],
  ['b.bookmatch', 'recipe b from a {\n  because "Second."\n  change bridge.mass: by -1 g\n}\n'],
]);

const edit = (file: number, at: number, text: string, cut = 0): Action => ({
  do: 'edit',
  file,
  changes: [{ at, cut, text }],
});

/** In `SMALL`, files 0 and 1 are of the first folder, 2 of the second. */
const SCENES: Readonly<Record<string, readonly Action[]>> = {
  'braces and quotes that the text around a definition decides on': [
    edit(0, 36, '}'),
    edit(0, 36, '"'),
    edit(0, 36, '', 1),
    edit(0, 36, '', 1),
  ],
  'a letter lost in a definition, and then one before it': [edit(1, 40, '\uFFFD'), edit(1, 0, '// \uFFFD\n')],
  'CR and LF joined and parted': [
    edit(0, 10, '\r'),
    edit(0, 11, 'x'),
    edit(0, 11, '', 1),
    edit(0, 9, '\r\n'),
    edit(0, 11, '', 2),
    {
      do: 'edit',
      file: 0,
      changes: [
        { at: 3, cut: 0, text: '\r' },
        { at: 4, cut: 0, text: '\n' },
        { at: 30, cut: 3, text: '' },
      ],
    },
  ],
  'half a surrogate pair, a mark, and NUL': [
    edit(1, 40, '𝄞'),
    edit(1, 41, '', 1),
    edit(1, 0, '\uFEFF'),
    edit(1, 60, '\u0000'),
    { do: 'undo', file: 1, steps: 1 },
  ],
  'versions that jump and versions that are past': [
    { do: 'edit', file: 0, changes: [{ at: 5, cut: 0, text: 'x' }], skips: 4 },
    { do: 'late', file: 0, text: 'recipe z {' },
    edit(0, 5, '', 1),
  ],
  'files opened, saved, closed, written, made, renamed and deleted': [
    { do: 'open', file: 1 },
    edit(1, 8, 'x'),
    { do: 'close', file: 1 },
    { do: 'write', file: 1, seed: 1, as: 'mark' },
    { do: 'write', file: 0, seed: 2, as: 'latin-1' },
    { do: 'create', name: 0, from: 0 },
    { do: 'rename', file: 1, name: 2 },
    { do: 'delete', file: 0 },
  ],
  'a second folder opened and closed, with a file of it open': [
    { do: 'folder', isOpen: true },
    { do: 'open', file: 2 },
    edit(2, 60, ' '),
    { do: 'folder', isOpen: false },
    { do: 'close', file: 2 },
  ],
  'questions withdrawn and not': [0, 3, 6, 9, 12, 15, 18, 21].flatMap((what): Action[] => [
    { do: 'ask', file: 0, what, at: 50, isWithdrawn: true },
    edit(0, 50, String(what)),
    { do: 'ask', file: 1, what: what + 1, at: 20, isWithdrawn: false },
  ]),
};

describe('a server that has been through edits answers like a fresh one', () => {
  // One server after another takes seconds; a sample plays all scenes to one.
  const scenes: readonly (readonly [string, readonly Action[]])[] = THOROUGH
    ? Object.entries(SCENES)
    : [['one scene after another', Object.values(SCENES).flat()] as const];
  it.each([...scenes])(
    '%s',
    async (_, actions) => {
      const { failure } = await replay(SMALL, actions);
      expect(failure).toBeUndefined();
    },
    120_000,
  );

  it(
    `whatever a restless maker does for ${SECONDS} seconds`,
    async () => {
      const { failure, comparisons } = await soak(example, SEED, SECONDS);
      const again = `npm run soak -- --seed ${SEED} --seconds ${SECONDS}`;
      expect(failure, again).toBeUndefined();
      expect(comparisons, again).toBeGreaterThan(0);
    },
    (SECONDS + 120) * 1000,
  );
});

describe('a big folder that is still being read', () => {
  it('a file opened at once is told nothing that is withdrawn', async () => {
    const made = [...madeShop(60, 12)].map(([uri, text]) => [uri.slice(uri.lastIndexOf('/') + 1), text] as const);
    const folders = new Folders(new Map(made));
    const server = await ServerProcess.start([folders.uri(folders.first)], { keepsAll: true });
    try {
      const path = join(folders.first, 'opened.bookmatch');
      const text = 'recipe opened from c59-11 {\n  because "Tried."\n  change bridge.mass: by -1 g\n}\n}\n';
      openIn(server, folders.uri(path), { version: 1, text, past: [] });
      for (let i = 0; i < 600 && server.rounds === 0; i++) await wait(50);
      const told = server.said.filter(({ uri }) => uri === folders.uri(path));
      const codes = told.map(({ diagnostics }) => diagnostics.map(({ code }) => code));
      expect(codes[0]).toContain('stray-brace');
      for (const code of codes.flat()) expect(codes.at(-1)).toContain(code);
      expect(codes.flat()).not.toContain('missing-parent');
      expect(server.faults).toEqual([]);
    } finally {
      await server.quit();
      folders.remove();
    }
  }, 120_000);
});

describe('a smallest case', () => {
  it('is what cannot do with any part less', async () => {
    const all = Array.from({ length: 100 }, (_, i) => i);
    const fails = (some: readonly number[]) => Promise.resolve([17, 42, 43].every((needed) => some.includes(needed)));
    expect(await smallest(all, fails, Number.POSITIVE_INFINITY)).toEqual([17, 42, 43]);
  });
});
