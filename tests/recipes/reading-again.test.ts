/** A file read with what it said before says the same as one read for the first time. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FileFacts } from '../../language/facts/facts.js';
import { Bookshelf } from '../../language/recipes/shelf/bookshelf.js';
import { createParser, readFile } from '../../language/recipes/shelf/reader.js';
import { madeShop, uriOf } from '../scale/made-shop.js';
import { THOROUGH } from '../thorough.js';

const parser = createParser();
const uri = 'file:///shop/a.bookmatch';
const read = (text: string, before?: FileFacts) => readFile(uri, text, parser, before);

/** What is shown of a file, on the path a session takes: read with what was there, put on the shelf in its place. */
function after(...texts: readonly string[]): FileFacts {
  const shelf = new Bookshelf();
  for (const text of texts) shelf.put(read(text, shelf.file(uri)));
  return shelf.file(uri)!;
}

const SPECIMENS: Readonly<Record<string, readonly [string, string]>> = {
  'a surplus brace taken away': ['model m {\n  top.thickness: 2.8 mm\n}}', 'model m {\n  top.thickness: 2.8 mm\n}'],
  'a surplus brace typed': ['model m {\n}', 'model m {\n}}'],
  'a quote typed behind the brace': ['model m {\n}', 'model m {\n}"'],
  'the quote taken away again': ['model m {\n}"', 'model m {\n}'],
  'a comment opened behind the brace': ['model m {\n}', 'model m {\n} /* never ended'],
  'a definition pushed to the right': ['model m { }\nmodel n { a: 1 }', 'model m { }\n  model n { a: 1 }'],
  'a brace that the next definition closes': [
    'model m {\n  top {\n}\nmodel n {\n}',
    'model m {\n  top {\n}\n}\nmodel n {\n}',
  ],
  'a line after it that makes its brace a stray one': ['model m {\n}\n', 'model m {\n}\nnote "x"\n}\n'],
  'a letter lost further up': ['model m { note "\uFFFD" }', 'model l { note "\uFFFD" }\nmodel m { note "\uFFFD" }'],
  'two definitions in one line changing places': [
    'recipe a for m { allow 1 } recipe a for m { allow 2 }',
    'recipe a for m { allow 2 } recipe a for m { allow 1 }',
  ],
};

describe('a file read again', () => {
  it.each(Object.entries(SPECIMENS))('after %s', (_, [before, now]) => {
    expect(after(before, now)).toEqual(read(now));
    expect(after(before, now, before)).toEqual(read(before));
  });

  it('after any edits, at any place', () => {
    const start = madeShop(1, 4).get(uriOf('chain-0'))!;
    const bits = fc.constantFrom(
      '}',
      '{',
      '"',
      '/*',
      '*/',
      '//',
      '\n',
      '\r',
      ' ',
      'model x {',
      '\uFFFD',
      '-> ',
      '”',
      '',
    );
    const edit = fc.record({ at: fc.nat({ max: start.length }), cut: fc.nat({ max: 3 }), bit: bits });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 8 }), (edits) => {
        let text = start;
        let facts = read(text);
        for (const { at, cut, bit } of edits) {
          const place = Math.min(at, text.length);
          text = text.slice(0, place) + bit + text.slice(place + cut);
          facts = read(text, facts);
          const fresh = read(text);
          // Quick where they are the same, which is always.
          if (JSON.stringify(facts) !== JSON.stringify(fresh)) expect(facts).toEqual(fresh);
        }
      }),
      { numRuns: THOROUGH ? 200 : 25 },
    );
  });

  it('which of two of one name is in force follows their order, whatever else was changed', () => {
    const [one, two, other] = ['recipe a for m { allow 1 }', 'recipe a for m { allow 2 }', 'model m { }'];
    const shelf = new Bookshelf();
    const put = (...lines: string[]) => shelf.put(read(lines.join('\n'), shelf.file(uri)));
    const inForce = () => shelf.named('recipe', 'a').map(({ source }) => source);
    put(one, two, other);
    expect(inForce()).toEqual([one, two]);
    put(two, one, 'model n { }');
    expect(inForce()).toEqual([two, one]);
    put(`${one} ${two}`);
    expect(inForce()).toEqual([one, two]);
    put(`${two} ${one}`);
    expect(inForce()).toEqual([two, one]);
  });
});
