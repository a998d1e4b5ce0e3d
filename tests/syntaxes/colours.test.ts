import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, test } from 'vitest';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';
import { textMateGrammar } from '../../syntaxes/textmate-grammar.js';
import { WORDS } from '../../syntaxes/words.js';

const COMMITTED = readFileSync('syntaxes/bookmatch.tmLanguage.json', 'utf8');

test('the committed colours are the generated ones', () => {
  expect(JSON.parse(COMMITTED)).toEqual(textMateGrammar());
});

test('every word of the grammar has a colour', () => {
  const grammar = readFileSync('language/grammar/bookmatch.langium', 'utf8');
  const words = [...grammar.matchAll(/'([a-z]+)'/g)].map(([, word]) => word!);
  const coloured = new Set<string>(Object.values(WORDS).flat());
  expect(words.length).toBeGreaterThan(20);
  expect(words.filter((word) => !coloured.has(word))).toEqual([]);
});

/** A line, and for each stretch of it that has a colour: the stretch and the end of its scope. */
const LINES: Record<string, readonly string[]> = {
  'recipe tarn-7 from tarn-6 {': ['recipe=type', 'tarn-7=name', 'from=word', 'tarn-6=parent'],
  'wood sitka-118 is sitka-spruce { // measured': [
    'wood=type',
    'sitka-118=name',
    'is=word',
    'sitka-spruce=parent',
    '// measured=comment',
  ],
  '  strings: light-12': ['strings=property', ':=colon', 'light-12=value'],
  '  change top.thickness: 2.85 mm -> 2.6 mm': [
    'change=statement',
    'top.thickness=property',
    ':=colon',
    '2.85=number',
    'mm=unit',
    '->=arrow',
    '2.6=number',
    'mm=unit',
  ],
  '  lower-bout { width: 390 mm  station: 112 mm }': [
    'lower-bout=part',
    'width=property',
    ':=colon',
    '390=number',
    'mm=unit',
    'station=property',
    ':=colon',
    '112=number',
    'mm=unit',
  ],
  "  top-radius: 28'   back-radius: 15'": [
    'top-radius=property',
    ':=colon',
    '28=number',
    "'=unit",
    'back-radius=property',
    ':=colon',
    '15=number',
    "'=unit",
  ],
  '  thickness: 7/64" ± 1 thou': [
    'thickness=property',
    ':=colon',
    '7/64=number',
    '"=unit',
    '±=sign',
    '1=number',
    'thou=unit',
  ],
  '  height: 1 3/4 in': ['height=property', ':=colon', '1 3/4=number', 'in=unit'],
  '  blank: 560 mm x 212 mm x 4.41 mm': [
    'blank=property',
    ':=colon',
    '560=number',
    'mm=unit',
    'x=times',
    '212=number',
    'mm=unit',
    'x=times',
    '4.41=number',
    'mm=unit',
  ],
  '  density: 610 kg/m³': ['density=property', ':=colon', '610=number', 'kg/m³=unit'],
  '  humidity: 45 %RH': ['humidity=property', ':=colon', '45=number', '%RH=unit'],
  '  because "Stiffer set: less weight."': ['because=statement', '"Stiffer set: less weight."=text'],
  '  because "half typed': ['because=statement', '"half typed=text'],
  '  vary at most 1': ['vary=statement', 'at=word', 'most=word', '1=number'],
  '  allow 2 because "two braces"': ['allow=statement', '2=number', 'because=statement', '"two braces"=text'],
  '  hold top.stiffness.along by top.thickness': [
    'hold=statement',
    'top.stiffness.along=value',
    'by=word',
    'top.thickness=value',
  ],
  '  change depth: by -5 %': ['change=statement', 'depth=property', ':=colon', 'by=word', '-5=number', '%=unit'],
  '  expect top.mass: below 190 g': [
    'expect=statement',
    'top.mass=property',
    ':=colon',
    'below=word',
    '190=number',
    'g=unit',
  ],
  '  with: "screws"': ['with=property', ':=colon', '"screws"=text'],
  '  finished: 2026-03-14': ['finished=property', ':=colon', '2026-03-14=date'],
  '  resonance { air: unknown  top: 170..185 Hz }': [
    'resonance=part',
    'air=property',
    ':=colon',
    'unknown=constant',
    'top=property',
    ':=colon',
    '170=number',
    '..=sign',
    '185=number',
    'Hz=unit',
  ],
  '  from: (78 mm, -150 mm)  width: 8 mm': [
    'from=property',
    ':=colon',
    '78=number',
    'mm=unit',
    '-150=number',
    'mm=unit',
    'width=property',
    ':=colon',
    '8=number',
    'mm=unit',
  ],
};

const SHORT: Record<string, string> = {
  'storage.type': 'type',
  'entity.name.type': 'name',
  'keyword.operator.word': 'word',
  'entity.other.inherited-class': 'parent',
  'comment.line.double-slash': 'comment',
  'keyword.control': 'statement',
  'variable.other.property': 'property',
  'punctuation.separator.key-value': 'colon',
  'entity.name.tag': 'part',
  'constant.numeric': 'number',
  'constant.numeric.date': 'date',
  'keyword.other.unit': 'unit',
  'keyword.operator.arrow': 'arrow',
  'keyword.operator': 'sign',
  'keyword.operator.times': 'times',
  'constant.language': 'constant',
  'variable.other.constant': 'value',
  'string.quoted.double': 'text',
};

describe('colours of a line', () => {
  let grammar: textmate.IGrammar;

  beforeAll(async () => {
    const wasm = createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm');
    await oniguruma.loadWASM(new Uint8Array(readFileSync(wasm)).buffer);
    const registry = new textmate.Registry({
      onigLib: Promise.resolve({
        createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
        createOnigString: (text) => new oniguruma.OnigString(text),
      }),
      loadGrammar: () => Promise.resolve(textmate.parseRawGrammar(COMMITTED, 'bookmatch.json')),
    });
    grammar = (await registry.loadGrammar('source.bookmatch'))!;
  });

  test.each(Object.entries(LINES))('%s', (line, expected) => {
    const found: { text: string; colour: string }[] = [];
    for (const { startIndex, endIndex, scopes } of grammar.tokenizeLine(line, textmate.INITIAL).tokens) {
      const scope = scopes.at(-1)!.replace(/\.bookmatch$/, '');
      const [text, colour] = [line.slice(startIndex, endIndex), SHORT[scope] ?? scope];
      const last = found.at(-1);
      if (last?.colour === colour && colour === 'text') last.text += text;
      else if (scope !== 'source') found.push({ text, colour });
    }
    expect(found.map(({ text, colour }) => `${text}=${colour}`)).toEqual(expected);
  });
});
