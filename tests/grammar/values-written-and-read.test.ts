/**
 * Whatever a maker may write as a value, with or without the spaces, reads as what it says: numbers in every spelling,
 * feet and inches, tolerances, ranges, sizes, points and lists, on either side of an arrow.
 */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Value } from '../../language/facts/facts.js';
import { reader } from './facts-in-words.js';

const { file, says, problems } = reader();

/** A text and the numbers it states, in metres, in the order they stand. */
interface Said {
  readonly text: string;
  readonly metres: readonly number[];
}

const whole = fc.integer({ min: 0, max: 999 });
const fraction = fc.constantFrom([1, 2], [3, 4], [7, 64], [15, 16], [1, 8]).map(([n, d]) => ({ n: n, d: d }));
const GLYPHS = { '¼': 0.25, '½': 0.5, '¾': 0.75, '⅛': 0.125, '⅜': 0.375, '⅝': 0.625, '⅞': 0.875 };
const glyph = fc.constantFrom(...(Object.keys(GLYPHS) as (keyof typeof GLYPHS)[]));

const size: fc.Arbitrary<{ text: string; number: number }> = fc.oneof(
  whole.map((n) => ({ text: String(n), number: n })),
  fc.tuple(whole, whole).map(([a, b]) => ({ text: `${a}.${b}`, number: Number(`${a}.${b}`) })),
  whole.map((b) => ({ text: `.${b}`, number: Number(`0.${b}`) })),
  fraction.map(({ n, d }) => ({ text: `${n}/${d}`, number: n / d })),
  fc
    .tuple(fc.integer({ min: 1, max: 30 }), fc.constantFrom(' ', '-'), fraction)
    .map(([w, join, { n, d }]) => ({ text: `${w}${join}${n}/${d}`, number: w + n / d })),
  fc
    .tuple(fc.integer({ min: 1, max: 30 }), fc.constantFrom('', ' '), glyph)
    .map(([w, join, g]) => ({ text: `${w}${join}${g}`, number: w + GLYPHS[g] })),
  glyph.map((g) => ({ text: g, number: GLYPHS[g] })),
  fc
    .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: -3, max: 3 }))
    .map(([m, e]) => ({ text: `${m}e${e}`, number: m * 10 ** e })),
);
const sign = fc.constantFrom(['', 1], ['', 1], ['', 1], ['-', -1], ['−', -1], ['+', 1]) as fc.Arbitrary<
  [string, number]
>;
const gap = fc.constantFrom('', ' ', '  ');
const unit = fc.oneof(
  fc
    .tuple(gap, fc.constantFrom(['mm', 1e-3], ['in', 0.0254], ['cm', 0.01], ['ft', 0.3048], ['thou', 25.4e-6]))
    .map(([g, [name, m]]) => ({ text: `${g}${name}`, m: m })),
  fc.constantFrom(['"', 0.0254], ['″', 0.0254], ["'", 0.3048], ['′', 0.3048]).map(([text, m]) => ({
    text: text,
    m: m,
  })),
);

const unsigned: fc.Arbitrary<Said> = fc.tuple(size, unit).map(([{ text, number }, of]) => ({
  text: text + of.text,
  metres: [number * of.m],
}));
const inOneUnit: fc.Arbitrary<Said> = fc
  .tuple(sign, unsigned)
  .map(([[s, k], { text, metres }]) => ({ text: s + text, metres: metres.map((m) => k * m) }));
const feetAndInches: fc.Arbitrary<Said> = fc
  .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 11 }), gap)
  .chain(([ft, inches, g]) =>
    fc.constantFrom(`${ft}'${g}${inches}"`, `${ft} ft ${inches} in`, `${ft}' ${inches} ½"`).map((text) => ({
      text,
      metres: [ft * 0.3048 + (inches + (text.includes('½') ? 0.5 : 0)) * 0.0254],
    })),
  );
const quantity = fc.oneof({ weight: 5, arbitrary: inOneUnit }, { weight: 1, arbitrary: feetAndInches });

const joined = (parts: readonly Said[], between: string): Said => ({
  text: parts.map(({ text }) => text).join(between),
  metres: parts.flatMap(({ metres }) => metres),
});
const withTolerance = fc
  .tuple(quantity, gap, fc.constantFrom('±', '+/-', '+-'), gap, unsigned)
  .map(([value, a, mark, b, tolerance]) => joined([value, tolerance], a + mark + b));
const range = fc
  .tuple(quantity, gap, fc.constantFrom('..', '…'), gap, quantity)
  .map(([low, a, dots, b, high]) => joined([low, high], a + dots + (high.text.startsWith('.') ? ' ' : b)));
const limit = fc
  .tuple(fc.constantFrom('below', 'above'), quantity)
  .map(([side, { text, metres }]) => ({ text: `${side} ${text}`, metres }));
const sizes = fc
  .tuple(fc.array(quantity, { minLength: 2, maxLength: 3 }), gap, fc.constantFrom('x', '×'), gap)
  .map(([parts, a, times, b]) => joined(parts, a + times + b));
const point = fc.tuple(quantity, quantity, gap, gap, gap, gap).map(([station, offset, a, b, c, d]) => ({
  text: `(${a}${station.text}${b},${c}${offset.text}${d})`,
  metres: [...station.metres, ...offset.metres],
}));
const list = fc
  .tuple(fc.array(quantity, { minLength: 2, maxLength: 6 }), gap, gap)
  .map(([items, a, b]) => joined(items, `${a},${b}`));
const anyValue = fc.oneof(quantity, withTolerance, range, limit, sizes, point, list);

/** The numbers a value states, in the order they stand. */
function numbersIn(value: Value): readonly number[] {
  switch (value.kind) {
    case 'quantity': {
      const { si, tolerance } = value.quantity;
      return tolerance === undefined ? [si] : [si, tolerance];
    }
    case 'range':
      return [value.low, value.high].flatMap((end) => (end ? numbersIn(end) : []));
    case 'size':
      return value.parts.flatMap(numbersIn);
    case 'point':
      return [value.station, value.offset].flatMap(numbersIn);
    case 'list':
      return value.items.flatMap(numbersIn);
    default:
      return [];
  }
}

function valuesIn(body: string): readonly Value[] {
  const [found] = file(`recipe b from a {\n${body}\n}`).definitions;
  const { statements, problems: told } = found!.definition;
  if (told.length > 0) throw new Error(`${JSON.stringify(body)}: ${told.map(({ message }) => message).join('; ')}`);
  return statements.flatMap((statement) => {
    if (statement.kind === 'property') return [statement.value];
    if (statement.kind === 'change') return [statement.old, statement.new, statement.by].filter((one) => !!one);
    return [];
  });
}

function expectNumbers(body: string, ...said: readonly Said[]): void {
  const found = valuesIn(body).flatMap(numbersIn);
  const wanted = said.flatMap(({ metres }) => metres);
  expect(found.length, body).toBe(wanted.length);
  for (const [i, number] of wanted.entries()) {
    expect(Math.abs(found[i]! - number), body).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(number)));
  }
}

describe('what is written is read', () => {
  const runs = { numRuns: 2000 };

  it('behind a colon, with another property behind it', () => {
    fc.assert(
      fc.property(anyValue, gap, fc.constantFrom('\n', '   '), (value, g, end) => {
        expectNumbers(`a:${g}${value.text}${end}b: 1 m`, value, { text: '', metres: [1] });
      }),
      runs,
    );
  });

  it('on either side of an arrow', () => {
    fc.assert(
      fc.property(anyValue, gap, fc.constantFrom('->', '→'), gap, anyValue, (old, a, arrow, b, next) => {
        expectNumbers(`change p: ${old.text}${a}${arrow}${b}${next.text}`, old, next);
      }),
      runs,
    );
  });

  it('as a step, in a block on one line, and before a comment', () => {
    fc.assert(
      fc.property(quantity, gap, fc.constantFrom('', '// why', '/* why */'), (step, g, comment) => {
        expectNumbers(`change p: by ${step.text}${g}${comment}`, step);
      }),
      { ...runs, numRuns: 500 },
    );
  });
});

test.each([
  ['(1 mm,7/64 mm)', '(0.001 length, 0.000109375 length)'],
  ['(1 mm,7/64")', '(0.001 length, 0.00277813 length)'],
  ['(78,150 mm)', '(0.078 length, 0.15 length)'],
  ['(7/64,1½ in)', '(0.00277813 length, 0.0381 length)'],
  ['1/8 in,1 3/4 in', '[0.003175 length, 0.04445 length]'],
  ['12,7/64 in', '[0.3048 length, 0.00277813 length]'],
])('%s', (text, told) => {
  expect(says(`p: ${text}`)).toEqual([`p = ${told}`]);
});

test('a comma between figures outside a list and a point is still asked about', () => {
  expect(problems('p: 2,85 mm').map(({ code }) => code)).toEqual(['bad-number']);
  expect(problems('p: (2,85 mm, 3,1 mm)').map(({ code }) => code)).toContain('bad-number');
});

test('three dots before a figure are asked about where both readings rise', () => {
  expect(problems('p: .012...016 in')).toMatchObject([
    { code: 'bad-number', suggestions: ['.012 .. .016 in', '.012..016 in'] },
  ]);
  expect(says('p: .012 .. .016 in')).toEqual(['p = 0.0003048 length to 0.0004064 length']);
  expect(says('p: 170...185 Hz')).toEqual(['p = 170 frequency to 185 frequency']);
});
