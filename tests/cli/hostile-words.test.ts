/**
 * Every word every object of JavaScript knows, in every place a word can stand, and every kind of ring: through the terminal as a
 * process, and through the server by its protocol. There is a finding or a message, the exit code is 0 to 2, and other files are
 * told as ever.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openEditor } from '../server/client.js';

const WORDS = [...Object.getOwnPropertyNames(Object.prototype), 'prototype'];

/** `~` is the word; `#` makes names of one file unlike those of another. */
const PLACES: readonly (readonly [string, string])[] = [
  ['name', 'model ~ { scale: 645 mm }'],
  ['kind', '~ thing-# { scale: 645 mm }'],
  ['path', 'model m-# { ~ 12 mm\n ~: 12 mm\n top.~: 3 mm\n ~.thickness: 3 mm }'],
  ['block', 'model m-# { ~ { thickness: 3 mm }\n top { ~ { width: 3 mm } } }'],
  ['choice', 'model m-# { kind: ~\n form: ~ }'],
  ['unit', 'model m-# { scale: 645 ~ }'],
  ['wood', 'wood w-# is ~ { density: 400 kg/m³ }\nmodel m-# { top.wood: ~ }\nrecipe r-# for m-# { }'],
  ['strings', 'model m-# { strings: ~ }\nrecipe r-# for m-# { }'],
  ['parent', 'recipe r-# from ~ { change top.thickness: 3 mm -> 2 mm }'],
  ['change', 'model m-# { }\nrecipe r-# for m-# { change ~: 3 mm -> 2 mm\n add bracing.~ { width: 3 mm }\n drop ~ }'],
  ['hold', 'model m-# { }\nrecipe r-# for m-# { hold ~ by ~\n expect ~: 3 mm\n with ~\n accept ~ because "So." }'],
  ['reading', 'model m-# { }\nrecipe r-# for m-# { }\nbuild b-# of r-# { reading ~ { ~: 3 mm\n humidity: 45 %RH } }'],
  ['order', 'order o-# of ~ { for: ~ }'],
];

const RINGS: readonly (readonly [string, string])[] = [
  ['model of itself', 'model a-# { model: a-# }\nrecipe r-# for a-# { }'],
  ['two models', 'model a-# { model: b-# }\nmodel b-# { model: a-# }\nrecipe r-# for a-# { }'],
  ['recipe from itself', 'recipe a-# from a-# { }'],
  ['three recipes', 'recipe a-# from b-# { }\nrecipe b-# from c-# { }\nrecipe c-# from a-# { }'],
  ['wood is itself', 'wood a-# is a-# { }\nmodel m-# { top.wood: a-# }\nrecipe r-# for m-# { }'],
  ['two woods', 'wood a-# is b-# { }\nwood b-# is a-# { }\nmodel m-# { top.wood: a-# }'],
  ['appointments with themselves', 'appointments a-# { with a-# }\nmodel m-# { }\nrecipe r-# for m-# { with a-# }'],
  [
    'two appointments',
    'appointments a-# { with b-# }\nappointments b-# { with a-# }\nmodel m-# { }\nrecipe r-# for m-# { with a-# }',
  ],
  ['order of itself', 'order a-# of a-# { }'],
  ['build of itself', 'build a-# of a-# { }'],
  ['strings of themselves', 'strings a-# { strings: a-# }\nmodel m-# { strings: a-# }'],
  ['rig of itself', 'rig a-# { rig: a-# }\nwood w-# is sitka-spruce { deflection.rig: a-# }'],
  ['hold by itself', 'model m-# { top.thickness: 3 mm }\nrecipe r-# for m-# { hold top.thickness by top.thickness }'],
];

const texts = new Map([
  ...PLACES.flatMap(([place, text]) =>
    WORDS.map((word, i) => [`${place}-${i}`, text.replaceAll('~', word).replaceAll('#', `${place}-${i}`)] as const),
  ),
  ...RINGS.map(([, text], i) => [`ring-${i}`, text.replaceAll('#', `ring-${i}`)] as const),
]);
const FINE = 'recipe fine { top.thickness: 2.8 mm }\n';

describe('as files in one folder', () => {
  const folder = mkdtempSync(join(tmpdir(), 'bookmatch-hostile-'));
  beforeAll(() => {
    for (const [name, text] of texts) writeFileSync(join(folder, `${name}.bookmatch`), text);
    writeFileSync(join(folder, 'fine.bookmatch'), FINE);
  });
  afterAll(() => {
    rmSync(folder, { recursive: true });
  });

  const program = (...args: readonly string[]) =>
    spawnSync(process.execPath, ['esbuild.config.mjs', 'run', 'language/cli/main.ts', ...args], {
      encoding: 'utf8',
      maxBuffer: 1e8,
      env: { ...process.env, NO_COLOR: '1' },
    });

  it('there are more than a hundred', () => {
    expect(texts.size).toBeGreaterThan(100);
  });

  it('the terminal tells them all, and the sound file as ever', () => {
    const { status, stdout, stderr } = program('check', folder, '--format', 'json');
    expect(stderr).toBe('');
    expect(status).toBe(1);
    const { findings } = JSON.parse(stdout) as { findings: { file: string; code: string }[] };
    expect(findings.filter(({ code }) => code === 'own-fault')).toEqual([]);
    expect(findings.filter(({ file }) => file.endsWith('/fine.bookmatch')).map(({ code }) => code)).toEqual([
      'no-parent',
    ]);
    const told = new Set(findings.map(({ file }) => file.slice(file.lastIndexOf('/') + 1, -'.bookmatch'.length)));
    // A name may be any word, so that is no trouble.
    const silent = [...texts.keys()].filter((name) => !told.has(name) && !name.startsWith('name-'));
    expect(silent).toEqual([]);
  }, 120_000);

  it.each([
    ['show', 'constructor'],
    ['sheet', '__proto__'],
    ['sheet', 'fine', '--kind', '__proto__'],
    ['rules', 'toString'],
    ['compare', 'hasOwnProperty', 'valueOf'],
    ['lineage', '__proto__'],
    ['constructor'],
  ])(
    '%s %s: a plain message',
    (command, ...args) => {
      const { status, stderr, stdout } = program(
        command,
        ...args,
        ...(command === 'rules' || args.length === 0 ? [] : ['--in', folder]),
      );
      expect([0, 1, 2]).toContain(status);
      expect(stderr + stdout).not.toMatch(/fault of its own|TypeError|\bat .*\.mjs/);
    },
    60_000,
  );
});

it('the server tells them too, writes no fault to its log, and answers', async () => {
  const files = Object.fromEntries(
    [...texts, ['fine', FINE] as const].map(([name, text]) => [`file:///shop/${name}.bookmatch`, text]),
  );
  const { editor } = await openEditor(files);
  for (const name of texts.keys()) {
    const textDocument = { uri: `file:///shop/${name}.bookmatch` };
    for (const method of ['textDocument/codeLens', 'textDocument/documentSymbol', 'textDocument/foldingRange']) {
      await editor.connection.sendRequest(method, { textDocument });
    }
    await editor.connection.sendRequest('textDocument/hover', { textDocument, position: { line: 0, character: 8 } });
    await editor.connection.sendRequest('textDocument/completion', {
      textDocument,
      position: { line: 0, character: 8 },
    });
  }
  expect(editor.log).toEqual([]);
  await editor.quit();
}, 120_000);
