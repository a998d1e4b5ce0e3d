import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

/** A small house of its own: each file's imports, and the rule that must catch it (or none). */
const HOUSE: Record<string, { imports: readonly string[]; caught?: string }> = {
  'language/quantities/unit.ts': { imports: [] },
  'language/quantities/bad.ts': {
    imports: ['../mechanics/braces/sections.js'],
    caught: 'quantities-leans-only-on-what-lies-below',
  },
  'language/mechanics/braces/sections.ts': { imports: ['../../quantities/unit.js'] },
  'language/mechanics/bad.ts': { imports: ['../facts/facts.js'], caught: 'mechanics-leans-only-on-what-lies-below' },
  'language/grammar/parse.ts': { imports: ['../quantities/unit.js'] },
  'language/facts/facts.ts': { imports: ['../quantities/unit.js'] },
  'language/facts/bad.ts': { imports: ['../recipes/shelf/reader.js'], caught: 'facts-leans-only-on-what-lies-below' },
  'language/recipes/shelf/reader.ts': {
    imports: ['../../grammar/parse.js', '../../facts/facts.js', '../../mechanics/braces/sections.js'],
  },
  'language/recipes/builds/statistics/ranks.ts': {
    imports: ['../../shelf/reader.js'],
    caught: 'statistics-know-no-recipe',
  },
  'language/recipes/bad-editor.ts': {
    imports: ['vscode-languageserver-types'],
    caught: 'language-heart-knows-no-editor',
  },
  'language/checks/bad-node.ts': { imports: ['node:fs'], caught: 'language-heart-runs-anywhere' },
  'language/disk/replace-file.ts': { imports: ['node:fs/promises'] },
  'language/server/bad-disk.ts': { imports: ['node:fs'], caught: 'one-way-to-the-disk' },
  'language/sheets/bad-disk.ts': { imports: ['node:fs/promises'], caught: 'one-way-to-the-disk' },
  'extension/bad-disk.ts': { imports: ['node:fs'], caught: 'one-way-to-the-disk' },
  'language/checks/bad-grammar.ts': {
    imports: ['../grammar/parse.js'],
    caught: 'reader-is-the-narrow-way-to-the-grammar',
  },
  'language/catalogue/wood-entries.ts': { imports: ['../quantities/unit.js', '../facts/facts.js'] },
  'language/catalogue/bad.ts': {
    imports: ['../recipes/shelf/reader.js'],
    caught: 'catalogue-leans-only-on-what-lies-below',
  },
  'language/editing/hover/hover.ts': { imports: ['../../facts/facts.js'] },
  'language/reports/values-list.ts': { imports: ['../facts/facts.js'] },
  'language/reports/bad.ts': {
    imports: ['../editing/hover/hover.js'],
    caught: 'reports-leans-only-on-what-lies-below',
  },
  'language/shop.ts': { imports: ['./facts/facts.js'] },
  'language/editing/bad-tree.ts': { imports: ['langium'], caught: 'syntax-tree-stays-in-the-grammar' },
  'language/editing/bad-upward.ts': {
    imports: ['../server/serve.js'],
    caught: 'editing-leans-only-on-what-lies-below',
  },
  'language/server/protocol.ts': { imports: ['vscode-languageserver-types'] },
  'language/server/serve.ts': { imports: ['../editing/hover/hover.js', '../shop.js', './protocol.js', 'node:path'] },
  'language/cli/ring-a.ts': { imports: ['./ring-b.js'], caught: 'no-cycles' },
  'language/cli/ring-b.ts': { imports: ['./ring-a.js'] }, // a ring is told once
  'extension/extension.ts': { imports: ['../language/server/protocol.js'] },
  'extension/bad.ts': { imports: ['../language/editing/hover/hover.js'], caught: 'extension-knows-the-protocol-only' },
};

const folder = mkdtempSync(join(tmpdir(), 'bookmatch-house-'));
let caught: Map<string, string[]>;

beforeAll(() => {
  for (const [file, { imports }] of Object.entries(HOUSE)) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    const lines = imports.map((target, index) => `import * as part${index} from '${target}';\nvoid part${index};\n`);
    writeFileSync(join(folder, file), `${lines.join('')}export const here = 1;\n`);
  }
  for (const file of ['.dependency-cruiser.cjs', 'tsconfig.json', 'package.json']) cpSync(file, join(folder, file));
  for (const name of ['langium', 'vscode-languageserver-types']) {
    cpSync(join('node_modules', name), join(folder, 'node_modules', name), { recursive: true });
  }
  caught = violations();
});

afterAll(() => rmSync(folder, { recursive: true }));

test.each(Object.entries(HOUSE))('%s', (file, { caught: rule }) => {
  expect(caught.get(file) ?? []).toEqual(rule === undefined ? [] : [rule]);
});

function violations(): Map<string, string[]> {
  const tool = resolve('node_modules/dependency-cruiser/bin/dependency-cruiser.mjs');
  const result = spawnSync(process.execPath, [tool, '-T', 'json', 'language', 'extension'], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  const report = JSON.parse(result.stdout) as { summary: { violations: { from: string; rule: { name: string } }[] } };
  const byFile = new Map<string, string[]>();
  for (const { from, rule } of report.summary.violations) byFile.set(from, [...(byFile.get(from) ?? []), rule.name]);
  return byFile;
}
