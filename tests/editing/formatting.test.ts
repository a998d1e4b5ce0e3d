/** Formatting: what it does, what it leaves alone, and that it loses nothing. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatted, formattingEdits, formattingEditsWithin } from '../../language/editing/formatting/formatting.js';
import type { LineEdit } from '../../language/editing/line-edits.js';
import type { FileFacts } from '../../language/facts/facts.js';
import { createParser, readFile } from '../../language/recipes/shelf/reader.js';

const parser = createParser();
const format = (text: string) => formatted(text, parser);

/** The edits carried out by hand, last first. */
function applied(text: string, edits: readonly LineEdit[]): string {
  const starts = [0];
  for (const end of text.matchAll(/\r\n|\n|\r/g)) starts.push(end.index + end[0].length);
  const offset = ({ line, character }: LineEdit['range']['start']) => starts[line]! + character;
  return [...edits]
    .sort((a, b) => offset(b.range.start) - offset(a.range.start))
    .reduce(
      (now, { range, text: put }) => now.slice(0, offset(range.start)) + put + now.slice(offset(range.end)),
      text,
    );
}

describe('lays out', () => {
  it('blocks by two spaces, and one space around arrows and behind colons', () => {
    expect(
      format(`recipe a from b {
\tbecause   "Why."
      change top.thickness:2.85mm->2.70mm
 bracing{
x-bass   {height:7mm}
   }
}`),
    ).toBe(`recipe a from b {
  because "Why."
  change top.thickness: 2.85 mm -> 2.70 mm
  bracing {
    x-bass { height: 7 mm }
  }
}
`);
  });

  it('values of properties in a row of lines, one under the other', () => {
    expect(format('wood a is b {\n  use: top\n  density: 400 kg/m³  // scale\n\n  cut:   quartersawn\n}\n')).toBe(
      'wood a is b {\n  use:     top\n  density: 400 kg/m³  // scale\n\n  cut: quartersawn\n}\n',
    );
  });

  it('statements on one line three spaces apart', () => {
    expect(format('model a { top { thickness: 3 mm edge-thickness: 2.5 mm }  scale: 645 mm }\n')).toBe(
      'model a { top { thickness: 3 mm   edge-thickness: 2.5 mm }   scale: 645 mm }\n',
    );
  });

  it('units in their usual spelling, the marks of feet and inches as written', () => {
    expect(format('wood a is b { density: 390 kg/m3  top-radius: 28\'  thickness: 7/64"  width: 5 inches }\n')).toBe(
      'wood a is b { density: 390 kg/m³   top-radius: 28\'   thickness: 7/64"   width: 5 in }\n',
    );
  });

  it('columns that stand one under the other, and only those', () => {
    const text = `model a {
  body {
    lower-bout { width: 38 mm   station: 11 mm }
    waist      { width: 2412 mm  station: 290 mm }
    depth { tail: 105 mm   neck: 86 mm }
  }
}
`;
    expect(format(text)).toBe(text.replace('mm  station', 'mm   station'));
    const changes = `recipe a from b {
  change bracing.x-bass.height:    15.9 mm -> 14.9 mm
  change bracing.x-treble.height:  15.9 mm -> 14.9 mm
  change top.thickness:  2.8 mm -> 2.7 mm
}
`;
    expect(format(changes)).toBe(
      changes.replace('height:    ', 'height:   ').replace('height:  1', 'height: 1').replace('s:  2', 's: 2'),
    );
  });

  it('line-end comments where they stood, moved together when a line needs the room', () => {
    expect(format('shop a {\n  vary at most 1     // one\n     title:"A long name"// two\n}\n')).toBe(
      'shop a {\n  vary at most 1     // one\n  title: "A long name"  // two\n}\n',
    );
    expect(format('wood a is b {\n use:top   // one\n density:4 // two\n}\n')).toBe(
      'wood a is b {\n  use:     top  // one\n  density: 4    // two\n}\n'.replaceAll('  //', '  //'),
    );
  });

  it('at most one empty line, none at the beginning and one line end at the end', () => {
    expect(format('\n\n\nshop a { }\n\n\n\nshop b { }\n\n\n')).toBe('shop a { }\n\nshop b { }\n');
  });

  it('lines that go on, one step further in', () => {
    expect(format('strings a {\ngauges: .012 in,\n.016 in\n}\n')).toBe(
      'strings a {\n  gauges: .012 in,\n    .016 in\n}\n',
    );
  });
});

describe('leaves alone', () => {
  it.each([
    ['a line that cannot be read, apart from its indentation', 'shop a {\n  vary   mostly :: 1\n}\n'],
    ['a definition whose braces are not in order', 'model a {\n   body {\n scale:  645 mm\n}\n'],
    ['lines outside any definition', '  what   is this\n\nshop a { }\n'],
    ['the inside of a comment', '/* a\n\n\n      b */\nshop a { }\n'],
    ['an unclosed text', 'shop a {\n  title: "A   b\n}\n'],
    ['an empty file', ''],
    ['other line ends', 'shop a {\r\n  vary at most 1\r\n}\r\n'],
    ['a line that would read otherwise with more space in it', 'shop a {\n  change   x:2024-01-31->2024-02-01\n}\n'],
    ['a word no program can know, as a unit', 'wood a is b { density: 390 stones }\n'],
  ])('%s', (_, text) => {
    expect(format(text)).toBe(text);
  });

  it('a sound definition beside a broken one is formatted all the same', () => {
    const broken = 'model a {\n   body {\n scale:  645 mm\n';
    expect(format(`shop s {vary at most 1}\n\n${broken}\nshop t {vary at most 2}\n`)).toBe(
      `shop s { vary at most 1 }\n\n${broken}\nshop t { vary at most 2 }\n`,
    );
  });
});

it.each([
  ['between definitions', `rig a { }${'\n'.repeat(2_000_000)}rig b { }\n`, 'rig a { }\n\nrig b { }\n'],
  ['within one', `rig a {${'\n'.repeat(2_000_000)}span: 3 mm }\n`, /^rig a \{\n+ *span: 3 mm/],
])(
  'two million empty lines %s are laid out',
  (_, text, wanted) => {
    expect(format(text)).toMatch(wanted);
  },
  120_000,
);

describe('edits', () => {
  it('touch only what changes', () => {
    const text = 'shop a {\n  title: "A"\n  vary   at most 1\n\n\n}\n';
    expect(formattingEdits(text, parser)).toEqual([
      { range: { start: { line: 2, character: 7 }, end: { line: 2, character: 9 } }, text: '' },
      { range: { start: { line: 4, character: 0 }, end: { line: 5, character: 0 } }, text: '' },
    ]);
    expect(formattingEdits('shop a { }\n', parser)).toEqual([]);
  });
});

describe('the examples', () => {
  const folder = 'examples/hollin-reach/';
  it.each(readdirSync(folder).filter((name) => name.endsWith('.bookmatch')))('%s is formatted', (name) => {
    const text = readFileSync(folder + name, 'utf8');
    expect(format(text)).toBe(text);
  });
});

// ---- made-up files --------------------------------------------------------------------------------------------------

/** Spellings and what becomes of them; the words occur in the files below as units only. */
const UNITS = {
  mm: 'mm',
  'kg/m3': 'kg/m³',
  inches: 'in',
  inch: 'in',
  GPa: 'GPa',
  '%RH': '%RH',
  grams: 'g',
  gram: 'g',
} as const;

/** Now and then with a comment in it, where nobody expects one. */
const gap = fc.oneof(
  { weight: 12, arbitrary: fc.constantFrom('', ' ', ' ', '  ', '    ', '\t') },
  { weight: 1, arbitrary: fc.constantFrom('/* c */', ' /*  {c  */ ') },
);
const space = fc.constantFrom(' ', ' ', '  ', '   \t');
const lineEnd = fc.constantFrom('\n', '\n', '\n', '\n\n', '\r\n', '\n \n\n');
const number = fc.constantFrom('1', '2.85', '.110', '-3', '1 3/4', '7/64', '45');
const quantity = fc
  .tuple(number, fc.constantFrom(' ', ' ', '', '  '), fc.constantFrom(...Object.keys(UNITS)))
  .map((parts) => parts.join(''));
const value = fc.oneof(
  quantity,
  fc.tuple(quantity, space, space, quantity).map(([a, s, t, b]) => `${a}${s}x${t}${b}`),
  fc.tuple(gap, quantity, gap, gap, quantity, gap).map(([a, q, b, c, r, d]) => `(${a}${q}${b},${c || ' '}${r}${d})`),
  fc.tuple(number, number).map(([a, b]) => `${a}..${b.replace('-', '')} mm`),
  fc.constantFrom('"a  {b  // c"', 'spruce-1', '2024-01-31', 'unknown', '7/64"', "28'", 'E4, B3,G3'),
);
const path = fc.constantFrom('top.thickness', 'use', 'bracing.x-bass.height', 'with', 'cut');
const colon = fc.tuple(gap, gap).map(([a, b]) => `${a}:${b}`);
const simple = fc.oneof(
  { weight: 4, arbitrary: fc.tuple(path, colon, value).map((parts) => parts.join('')) },
  fc
    .tuple(space, path, colon, value, gap, gap, value)
    .map(([s, p, c, a, g, h, b]) => `change${s}${p}${c}${a}${g}->${h}${b}`),
  fc.tuple(space, path, space, path).map(([s, p, t, q]) => `hold${s}${p}${t}by${s}${q}`),
  fc.tuple(space).map(([s]) => `because${s}"Why  not."`),
);
const comment = fc.constantFrom('', '', '', '', '// why  {', '/* a  b */', '/* a\n    b\n\n\n */');
const line = fc.tuple(gap, simple, gap, comment, lineEnd).map((parts) => parts.join(''));
const several = fc
  .tuple(gap, fc.array(simple, { minLength: 2, maxLength: 3 }), lineEnd)
  .map(([g, all, end]) => g + all.join('  ') + end);
const block = fc
  .tuple(gap, path, gap, lineEnd, fc.array(line, { maxLength: 3 }), gap, comment, lineEnd)
  .map(([a, p, b, end, lines, c, note, last]) => `${a}${p}${b}{${end}${lines.join('')}${c}}${c}${note}${last}`);
const flat = fc
  .tuple(gap, path, gap, gap, simple, gap, lineEnd)
  .map(([a, p, b, c, s, d, end]) => `${a}${p}${b}{${c}${s}${d}}${end}`);
const definition = fc
  .tuple(
    fc.constantFrom('model a', 'wood  b is c', 'recipe d\tfrom e'),
    gap,
    lineEnd,
    fc.array(fc.oneof(line, line, several, block, flat), { maxLength: 8 }),
    gap,
    lineEnd,
  )
  .map(([head, a, end, lines, b, last]) => `${head}${a}{${end}${lines.join('')}${b}}${last}`);
const whole = fc
  .tuple(comment, lineEnd, fc.array(definition, { minLength: 1, maxLength: 2 }))
  .map(([note, end, all]) => note + end + all.join(''));
/** A file with a few characters taken out or put in: half of them, for texts are mostly looked at half typed. */
const file = fc
  .tuple(
    whole,
    fc.constantFrom(0, 0, 1, 3),
    fc.array(fc.tuple(fc.nat(), fc.constantFrom('', '', '{', '}', '"', ':', '/*', '§', '\n')), {
      minLength: 3,
      maxLength: 3,
    }),
  )
  .map(([text, count, wounds]) =>
    wounds.slice(0, count).reduce((now, [at, put]) => {
      const place = at % (now.length + 1);
      return now.slice(0, place) + put + now.slice(place + (put === '' ? 1 : 0));
    }, text),
  );

/** A text without white space, its units as they are usually spelled. */
function bare(text: string): string {
  const spelled = Object.entries(UNITS).reduce((now, [written, usual]) => now.replaceAll(written, usual), text);
  return spelled.replace(/\s/g, '');
}

/** What a file says, without where and how it is written. */
function meaning({ definitions, problems }: FileFacts): string {
  return JSON.stringify({ definitions, problems }, (key, value: unknown) =>
    ['span', 'around', 'unitSpan', 'head', 'line', 'written', 'message', 'suggestions'].includes(key) ||
    (key === 'source' && typeof value === 'string')
      ? undefined
      : value,
  );
}

/** The comments and texts of a file, white space and all, found without the formatter's own eyes. */
function prose(text: string): readonly string[] {
  return parser
    .cut(text)
    .tokens.filter(({ image }) => /^(\/\/|\/\*|")/.test(image))
    .map(({ image }) => image);
}

describe('5,000 made-up files', () => {
  it('keep every word and comment, and are the same when formatted again', () => {
    let changed = 0;
    fc.assert(
      fc.property(file, (text) => {
        const said = readFile('', text, parser);
        const once = applied(text, formattingEdits(text, parser, said));
        const saidOnce = readFile('', once, parser);
        if (once !== text) changed++;
        expect(bare(once)).toBe(bare(text));
        expect(prose(once)).toEqual(prose(text));
        expect(meaning(saidOnce)).toBe(meaning(said));
        expect(formatted(once, parser, saidOnce)).toBe(once);
      }),
      { numRuns: 5000 },
    );
    expect(changed).toBeGreaterThan(4000);
  }, 300_000);

  it('lose nothing when some of their lines alone are formatted', () => {
    fc.assert(
      fc.property(file, fc.nat(20), fc.nat(10), (text, first, count) => {
        const some = applied(text, formattingEditsWithin({ first, last: first + count }, text, parser));
        expect(bare(some)).toBe(bare(text));
        expect(prose(some)).toEqual(prose(text));
        const [before, after] = [text.split(/\r\n|\n|\r/), some.split(/\r\n|\n|\r/)];
        expect(after.slice(0, first)).toEqual(before.slice(0, first));
      }),
      { numRuns: 500 },
    );
  });

  it('are formatted, not refused, when nothing is wrong with them', () => {
    fc.assert(
      fc.property(whole, (text) => {
        const outside = format(text)
          .replace(/\/\*[\s\S]*?\*\//g, '§')
          .replace(/^.*§.*$/gm, 'x')
          .replace(/^( *).*\d-\d\d->.*$/gm, '$1x');
        expect(outside).not.toMatch(/\t|^(?: {2})* (?! )\S|\S:(?=[\w".(])|\S->|\n\s*\n\s*\n/m);
      }),
      { numRuns: 500 },
    );
  });
});
