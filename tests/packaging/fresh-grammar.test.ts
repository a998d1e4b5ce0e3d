/** A parser made from an older grammar is never what a test, a script or a bundle runs on. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { freshGrammar } from '../../fresh-grammar.mjs';

const root = mkdtempSync(join(tmpdir(), 'grammar-'));
afterAll(() => rmSync(root, { recursive: true }));
mkdirSync(join(root, 'language/grammar'), { recursive: true });
symlinkSync(resolve('node_modules'), join(root, 'node_modules'));
for (const file of ['langium-config.json', 'package.json']) cpSync(file, join(root, file));
const grammar = readFileSync('language/grammar/bookmatch.langium', 'utf8');
const write = (text: string) => writeFileSync(join(root, 'language/grammar/bookmatch.langium'), text);
const generated = join(root, 'language/grammar/generated/grammar.ts');
const made = () => readFileSync(generated, 'utf8');

it('is made where there is none, anew where the grammar changed, and otherwise left alone', { timeout: 60_000 }, () => {
  write(grammar);
  freshGrammar(root);
  const first = made();
  expect(first).toBe(readFileSync('language/grammar/generated/grammar.ts', 'utf8'));
  const written = statSync(generated).mtimeMs;
  freshGrammar(root);
  expect(statSync(generated).mtimeMs).toBe(written);
  // As after taking in somebody else's changes: a rule has another word.
  write(grammar.replaceAll("'because'", "'since'"));
  freshGrammar(root);
  expect(made()).not.toBe(first);
  expect(made()).toContain('since');
  // And back, whatever the times of the files say.
  write(grammar);
  freshGrammar(root);
  expect(made()).toBe(first);
});

it('says so where the grammar cannot be read, and is not taken for made', { timeout: 60_000 }, () => {
  write('grammar Broken\nentry Model: (');
  expect(() => freshGrammar(root)).toThrow('could not be generated');
  expect(() => freshGrammar(root)).toThrow('could not be generated');
});
