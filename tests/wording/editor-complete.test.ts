import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sentencesForEditor, wordsInTemplates } from './every-sentence.js';

type Texts = Readonly<Record<string, string>>;

const read = (file: string) => JSON.parse(readFileSync(file, 'utf8')) as Texts;
const manifest = readFileSync('package.json', 'utf8');
const partsIn = (text: string) => [...new Set(text.match(/\{\d+\}/g))].sort().join();

describe('the German words of the extension', () => {
  const german = read('extension/l10n/bundle.l10n.de.json');
  const wanted = sentencesForEditor('extension');

  it('are there for everything it says, and for nothing else', () => {
    expect([...wanted.keys()].filter((english) => !(english in german))).toEqual([]);
    expect(Object.keys(german).filter((english) => !wanted.has(english))).toEqual([]);
  });

  it('have the same parts in them as the English ones', () => {
    expect(Object.entries(german).filter(([english, text]) => partsIn(english) !== partsIn(text))).toEqual([]);
  });

  it('stand where the manifest says', () => {
    const { l10n } = JSON.parse(manifest) as { readonly l10n: string };
    expect(existsSync(`${l10n}/bundle.l10n.de.json`)).toBe(true);
  });
});

describe('the pages of the panels', () => {
  it('have no words of their own', () => {
    expect([...wordsInTemplates('extension/panels/page')]).toEqual([]);
  });
});

describe('the words of the manifest', () => {
  const [english, german] = [read('package.nls.json'), read('package.nls.de.json')];
  const used = [...manifest.matchAll(/"%([\w.-]+)%"/g)].map(([, key]) => key!);

  it('are there in English and in German, each one used', () => {
    expect(Object.keys(english).sort()).toEqual([...new Set(used)].sort());
    expect(Object.keys(german)).toEqual(Object.keys(english));
  });

  it('lead to the same commands in both', () => {
    const commands = (text: string) => [...text.matchAll(/\(command:[\w.]+\)/g)].map(String);
    for (const [key, text] of Object.entries(english)) expect(commands(german[key]!)).toEqual(commands(text));
  });

  it('stand nowhere in the manifest itself', () => {
    const { contributes } = JSON.parse(manifest) as { readonly contributes: object };
    expect(plainTexts(contributes)).toEqual([]);
  });
});

const TEXTS = /^(title|description|markdownDescription|name|contents|altText|(markdown)?[eE]numDescriptions)$/;

/** Texts for people that are written out, but for the name itself, which is the same in every language. */
function plainTexts(value: unknown, key = ''): readonly string[] {
  if (typeof value === 'string')
    return TEXTS.test(key) && value !== 'Bookmatch' && !/^%.*%$/.test(value) ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((each) => plainTexts(each, key));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([inner, each]) => plainTexts(each, inner));
}
