/** What each word of a text is told to be, once the folder is known. */
import fc from 'fast-check';
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type SemanticToken, semanticTokens } from '../../language/editing/tokens/semantic-tokens.js';
import { createParser } from '../../language/grammar/parse.js';
import { deskOf, VENNICK } from './desk-of.js';

const parser = createParser();

/** `word=kind+modifiers` for every token of the first text; the others are what it leans on. */
function told(text: string, ...others: readonly string[]): readonly string[] {
  return inWords(text, semanticTokens(deskOf(text, ...others), parser, 'file:0'));
}

function inWords(text: string, tokens: readonly SemanticToken[]): readonly string[] {
  const lines = text.split(/\r\n|\n|\r/);
  return tokens.map(({ line, character, length, kind, modifiers }) =>
    [`${lines[line]!.slice(character, character + length)}=${kind}`, ...modifiers].join('+'),
  );
}

describe('names', () => {
  it('where they are defined, and by what they turn out to be where they are named', () => {
    expect(told('recipe v-32 from v-31 { change top.wood: sitka-31 -> red-spruce }', VENNICK)).toEqual([
      'recipe=keyword+declaration',
      'v-32=recipe+declaration',
      'from=joining',
      'v-31=recipe',
      'change=keyword',
      'top=part',
      'wood=property+modification',
      'sitka-31=wood+readonly',
      '->=operator',
      'red-spruce=species+defaultLibrary+readonly',
    ]);
  });

  it('a name nothing has is unknown; an appointment, a rig and strings are what they are', () => {
    const text = 'recipe v-32 from v-9 { with ember  strings: light-12  top { wood: sitka-99  rig: r2 } }';
    const all = told(text, VENNICK, 'appointments ember { rosette: "red" }');
    expect(all).toContain('v-9=unknown');
    expect(all).toContain('ember=appointments');
    expect(all).toContain('light-12=strings');
    expect(all).toContain('sitka-99=unknown');
    expect(all).toContain('r2=rig');
  });
});

describe('paths', () => {
  it('a part on the way, a property at the end; what nobody knows is unknown', () => {
    expect(told('model m { bracing { x-bass { height: 15 mm  heigth: 15 mm } }  topp.thickness: 2 mm }')).toEqual([
      'model=keyword+declaration',
      'm=model+declaration',
      'bracing=part',
      'x-bass=part',
      'height=property',
      '15=number',
      'mm=unit',
      'heigth=unknown',
      '15=number',
      'mm=unit',
      'topp=unknown',
      'thickness=unknown',
      '2=number',
      'mm=unit',
    ]);
  });

  it('what the engine computes cannot be set; what a hold turns is what changes', () => {
    expect(told('recipe v-32 from v-31 { hold top.stiffness.along by top.thickness }', VENNICK).slice(4)).toEqual([
      'hold=keyword',
      'top=part',
      'stiffness=part',
      'along=derived+readonly',
      'by=joining',
      'top=part',
      'thickness=property+modification',
    ]);
  });

  it('a word of the language followed by a colon is no keyword', () => {
    expect(told('recipe r for m { scale: 645 mm  note "x" }').slice(4)).toEqual([
      'scale=property',
      '645=number',
      'mm=unit',
      'note=keyword',
      '"x"=text+documentation',
    ]);
    expect(told('model m { with: "screws" }')[2]).toBe('with=unknown');
  });
});

describe('values', () => {
  it('every number and unit of a range, a size, a point, a sum, a tolerance and a list', () => {
    const words = (text: string) =>
      told(`model m { a: ${text} }`)
        .slice(3)
        .map((each) => each.replace('number', '#').replace('unit', 'u'));
    expect(words('170..185 Hz')).toEqual(['170=#', '..=operator', '185=#', 'Hz=u']);
    expect(words('below 190 g')).toEqual(['below=joining', '190=#', 'g=u']);
    expect(words('560 mm x 4.41 mm')).toEqual(['560=#', 'mm=u', 'x=operator', '4.41=#', 'mm=u']);
    expect(words('(78 mm, -150 mm)')).toEqual(['78=#', 'mm=u', '-150=#', 'mm=u']);
    expect(words('5 ft 3 in')).toEqual(['5=#', 'ft=u', '3=#', 'in=u']);
    expect(words('2.85 mm ± 0.05 mm')).toEqual(['2.85=#', 'mm=u', '±=operator', '0.05=#', 'mm=u']);
    expect(words(`28'`)).toEqual(['28=#', `'=u`]);
    expect(words('E4, B3')).toEqual(['E4=choice', 'B3=choice']);
    expect(words('2026-03-14')).toEqual(['2026-03-14=date']);
    expect(words('unknown')).toEqual(['unknown=choice']);
  });
});

describe('what is not said', () => {
  it('a comment over several lines is a token on each', () => {
    expect(told('/* one\n   two */\nmodel m { } // three')).toEqual([
      '/* one=comment',
      '   two */=comment',
      'model=keyword+declaration',
      'm=model+declaration',
      '// three=comment',
    ]);
  });

  it('a line that cannot be read keeps the colours of its shape', () => {
    const all = told('model m {\n  change by with of\n  scale: 645 mm\n}');
    expect(all.filter((each) => /=(keyword|joining)/.test(each))).toEqual(['model=keyword+declaration']);
    expect(all).toContain('scale=property');
  });

  it('a file that is not there has none', () => {
    expect(semanticTokens(deskOf(), parser, 'file:9')).toEqual([]);
  });
});

describe('a part of a file', () => {
  it('has the tokens of the whole that touch it', () => {
    const desk = deskOf(VENNICK);
    const all = semanticTokens(desk, parser, 'file:0');
    const within = { start: { line: 10, character: 4 }, end: { line: 20, character: 8 } };
    const some = semanticTokens(desk, parser, 'file:0', within);
    expect(some.length).toBeGreaterThan(20);
    expect(some.length).toBeLessThan(all.length);
    const key = (token: SemanticToken) => JSON.stringify(token);
    expect(all.map(key)).toEqual(expect.arrayContaining(some.map(key)));
    const wanted = all.filter(({ line }) => line > 10 && line < 20).map(key);
    expect(some.map(key)).toEqual(expect.arrayContaining(wanted));
  });
});

describe('whatever is typed', () => {
  const FOLDER = 'examples/hollin-reach';
  const texts = readdirSync(FOLDER)
    .filter((name) => name.endsWith('.bookmatch'))
    .map((name) => readFileSync(`${FOLDER}/${name}`, 'utf8'));

  /** In order, on their lines, none over another: what a client relies on. */
  function inOrder(text: string): void {
    const lines = text.split(/\r\n|\n|\r/);
    let [line, character] = [0, 0];
    for (const token of semanticTokens(deskOf(text), parser, 'file:0')) {
      if (token.line > line) [line, character] = [token.line, 0];
      expect(token.line).toBe(line);
      expect(token.character).toBeGreaterThanOrEqual(character);
      expect(token.length).toBeGreaterThan(0);
      character = token.character + token.length;
      expect(character).toBeLessThanOrEqual(lines[line]!.length);
    }
  }

  it('the example shop: tokens in order, and nothing unknown but what a finding says', () => {
    const desk = deskOf(...texts);
    for (const [i, text] of texts.entries()) {
      inOrder(text);
      const unknown = semanticTokens(desk, parser, `file:${i}`).filter(({ kind }) => kind === 'unknown');
      for (const { line } of unknown) {
        const found = desk.checks.file(`file:${i}`).map(({ place }) => {
          const first = 'definition' in place ? desk.shelf.placement(place.definition)!.line : 0;
          return place.span.start.line + first;
        });
        expect(found, text.split('\n')[line]).toContain(line);
      }
    }
  });

  it('half a file, or a file with a stretch taken out, still has tokens in order', () => {
    const cut = fc.tuple(fc.nat(texts.length - 1), fc.nat(2500), fc.nat(60));
    fc.assert(
      fc.property(cut, ([which, at, length]) => {
        const text = texts[which]!.slice(0, 2500);
        inOrder(text.slice(0, at) + text.slice(at + length));
      }),
      { numRuns: 60 },
    );
  });
});
