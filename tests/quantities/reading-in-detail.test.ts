/**
 * Numbers and quantities at the edges of how they are written, found by mutants that lived (tests/mutation). What is meant is
 * arithmetic; how a thing is asked about is the wording of the project.
 */
import { describe, expect, it } from 'vitest';
import { DIMENSION } from '../../language/quantities/dimension.js';
import { isMismatch } from '../../language/quantities/mismatch.js';
import type { Quantity } from '../../language/quantities/quantity.js';
import { addQuantities, readNumber, readQuantity } from '../../language/quantities/read.js';
import { type PlausibleSpan, sensibleReadings } from '../../language/quantities/readings.js';
import { doubtfulRange } from '../../language/recipes/shelf/written-range.js';
import { quantityOf, type WrittenPart } from '../../language/recipes/shelf/written-quantity.js';
import { ENGLISH } from '../../language/wording/wording.js';

describe('numbers', () => {
  it.each([
    ['¼', 0.25],
    ['½', 0.5],
    ['¾', 0.75],
    ['⅓', 1 / 3],
    ['⅔', 2 / 3],
    ['⅛', 0.125],
    ['⅜', 0.375],
    ['⅝', 0.625],
    ['⅞', 0.875],
    ['2⅞', 2.875],
    ['12 1/2', 12.5],
    ['- 5', -5],
    ['+ 5', 5],
    ['-0', 0],
    ['-0/4', 0],
    [`0.${'1'.repeat(38)}`, 1 / 9],
  ])('%s', (written, number) => {
    const reading = readNumber(written);
    expect(reading.ok).toBe(true);
    if (reading.ok) {
      expect(reading.number).toBeCloseTo(number, 15);
      expect(Object.is(reading.number, -0)).toBe(false);
    }
  });

  const THOUSANDS = 'write a number without a sign between its thousands, decimals with a point.';
  const NO_COMMAS = 'write a number without commas.';
  const WHICH = 'does the comma mark thousands or decimals? Write decimals with a point.';
  const POINT = 'decimals are written with a point.';
  it.each([
    ['1.234,5', THOUSANDS, ['1234.5']],
    ['+12.345.678,25', THOUSANDS, ['+12345678.25']],
    ["1'234.5", THOUSANDS, ['1234.5']],
    ["-123'456'789.25", THOUSANDS, ['-123456789.25']],
    ['12’345', THOUSANDS, ['12345']],
    ['1,234,567', NO_COMMAS, ['1234567']],
    ['12,345.67', NO_COMMAS, ['12345.67']],
    ['-1,234.56', NO_COMMAS, ['-1234.56']],
    ['1,500', WHICH, ['1.500', '1500']],
    ['12,345', WHICH, ['12.345', '12345']],
    ['0,500', POINT, ['0.500']],
    ['-0,500', POINT, ['-0.500']],
    ['1,5', POINT, ['1.5']],
    ['-12,5', POINT, ['-12.5']],
  ])('%s is asked about', (written, message, suggestions) => {
    const told = { ok: false, code: 'bad-number', message: `"${written}": ${message}`, suggestions };
    expect(readNumber(written)).toEqual(told);
    // The space around it is no part of it.
    expect(readNumber(` ${written}  `)).toEqual(told);
  });

  it.each([
    ['1 234', '1234'],
    ['12 345 678.25', '12345678.25'],
    ['-1 234', '-1234'],
  ])('%s reads as several', (written, meant) => {
    const message = `"${written}" reads as several numbers: write it without the spaces.`;
    expect(readNumber(` ${written} `)).toEqual({ ok: false, code: 'bad-number', message, suggestions: [meant] });
  });

  it.each([
    ['1 4/4', '2'],
    ['1 5/4', '2 1/4'],
    ['-1 5/4', '-2 1/4'],
  ])('%s has a fraction of more than one', (written, meant) => {
    const reading = readNumber(written);
    expect(reading).toMatchObject({ ok: false, suggestions: [meant] });
  });

  const UNREAD = 'is not a number I can read: write it like 2.85, .110, 7/64 or 1 3/4.';
  const COMMA = 'is not a number I can read: decimals are written with a point, as in 2.85.';
  it.each([
    ['x1.234,5', COMMA],
    ['1.234,5x', COMMA],
    ['1.2,5', COMMA],
    ['1234.567,8', COMMA],
    ['x1,500', COMMA],
    ['1,500x', COMMA],
    ['1,234.x', COMMA],
    ["1'23", UNREAD],
    ["x1'234", UNREAD],
    ["1'234x", UNREAD],
    ['x1 234', UNREAD],
    ['1 234x', UNREAD],
    ['1 234.x', UNREAD],
    ['1 23', UNREAD],
  ])('%s is no number', (written, message) => {
    expect(readNumber(written)).toEqual({
      ok: false,
      code: 'bad-number',
      message: `"${written}" ${message}`,
      suggestions: [],
    });
  });

  it('says of what is long its first forty characters', () => {
    const long = `1${' '.repeat(50)}x`;
    expect(readNumber(` ${long} `)).toMatchObject({ message: `"${long.slice(0, 40)}…" ${UNREAD}` });
    const forty = `1${' '.repeat(38)}x`;
    expect(readNumber(forty)).toMatchObject({ message: `"${forty}" ${UNREAD}` });
    expect(readNumber('1'.repeat(41))).toMatchObject({ message: 'This number is too long to be meant.' });
  });
});

describe('quantities', () => {
  it('without a unit are pure numbers, also where it is a space', () => {
    expect(readQuantity('3', ' ')).toEqual({ ok: true, quantity: { si: 3, dimension: DIMENSION.number } });
  });

  it('too large in their unit are told', () => {
    expect(readQuantity(' 1e308 ', 'GPa')).toEqual({
      ok: false,
      code: 'bad-number',
      message: '"1e308" is too large to be meant.',
      suggestions: [],
    });
  });

  it('in a unit nobody knows name it, shortened, and what may be meant', () => {
    const told = (unit: string) => {
      const reading = readQuantity('3', unit);
      return reading.ok ? '' : reading.message;
    };
    expect(told(` ${'x'.repeat(60)} `)).toBe(`"${'x'.repeat(40)}" is not a unit I know.`);
    expect(told(' mmm ')).toBe('"mmm" is not a unit I know: did you mean mm?');
    expect(told('fts')).toBe('"fts" is not a unit I know: did you mean ft or ft²?');
  });

  const of = (number: string, unit: string) => {
    const reading = readQuantity(number, unit);
    if (!reading.ok) throw new Error(reading.message);
    return reading.quantity;
  };
  it('in several units are added up, all with the sign of the first', () => {
    const sum = (...parts: readonly [Quantity, ...Quantity[]]) => addQuantities(parts);
    // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959)
    expect((sum(of('0', 'ft'), of('3', 'in')) as Quantity).si).toBeCloseTo(0.0762, 12);
    expect((sum(of('-5', 'ft'), of('3', 'in')) as Quantity).si).toBeCloseTo(-1.6002, 12);
    expect(isMismatch(sum(of('5', 'ft'), of('3', 'g')))).toBe(true);
    expect(isMismatch(sum(of('5', 'ft'), of('3', 'g'), of('1', 'g')))).toBe(true);
    expect((sum(of('5', 'ft'), of('3', 'in'), of('1', 'in')) as Quantity).si).toBeCloseTo(1.6256, 12);
  });
});

describe('what a bare number may mean', () => {
  const texts = (text: string, range?: PlausibleSpan) =>
    sensibleReadings(text, DIMENSION.length, range).map((one) => one.replacement);

  it.each<[string, PlausibleSpan | undefined, string[]]>([
    ['x', { low: 0, high: 1 }, []],
    ['x', undefined, []],
    ['.110', undefined, ['0.110 mm', '0.110 in']],
    // The ends of the range belong to it.
    ['2', { low: 0.002, high: 0.002 }, ['2 mm']],
    // Whole numbers and both numbers of a fraction above one may count 64ths, from 1 to 63.
    ['7', { low: 0.002, high: 0.01 }, ['7 mm', '7/64 in']],
    ['6/4', { low: 0.0005, high: 0.003 }, ['6/4 mm', '4/64 in', '6/64 in']],
    ['6 / 4', { low: 0.0005, high: 0.003 }, ['6 / 4 mm', '4/64 in', '6/64 in']],
    ['4/6', { low: 0.0005, high: 0.003 }, ['4/6 mm']],
    ['4/4', { low: 0.0014, high: 0.002 }, ['4/64 in']],
    ['34/12', { low: 0.004, high: 0.02 }, ['34/64 in', '12/64 in']],
    ['64', { low: 0.02, high: 0.03 }, []],
    ['63', { low: 0.02, high: 0.03 }, ['63/64 in']],
    ['0', { low: -1, high: 1 }, ['0 mm']],
    ['1e3', { low: 0.0003, high: 0.0004 }, []],
    // Nobody writes hundredths of a centimetre.
    ['0.05', { low: 0.0004, high: 0.0006 }, []],
    ['0.1', { low: 0.0009, high: 0.0011 }, ['0.1 cm']],
    // The nearest to the usual value first, by how many times it is off;
    ['.1', { low: 5e-5, high: 0.2, typical: 0.0025 }, ['0.1 in', '0.1 cm', '0.1 ft', '0.1 mm', '0.1 m']],
    // without a usual value nearest to the middle of the range, by ratio where it lies above zero,
    ['5', { low: 1e-4, high: 0.2 }, ['5 mm', '5/64 in', '5 cm', '5 in', '5 thou']],
    // and by difference where it does not.
    ['5', { low: 0, high: 0.2 }, ['5 in', '5 cm', '5 mm', '5/64 in', '5 thou', '5 µm']],
    ['-3', { low: -0.1, high: 0 }, ['-3 cm', '-3 in', '-3 mm', '-3 mil', '-3 µm']],
    ['-3', { low: -0.1, high: 0.2 }, ['-3 µm', '-3 thou', '-3 mm', '-3 cm', '-3 in']],
    ['5', { low: -0.1, high: 0.1 }, ['5 µm', '5 thou', '5/64 in', '5 mm', '5 cm']],
    // However small, two sizes are two readings.
    ['0.001', { low: 0, high: 1e-3 }, ['0.001 ft', '0.001 in', '0.001 mm', '0.001 thou', '0.001 µm']],
    // Films are in mil.
    ['5', { low: 1e-6, high: 3e-4 }, ['5 µm', '5 mil']],
    ['5', { low: 1e-6, high: 6e-4 }, ['5 µm', '5 thou']],
  ])('%s, %j: %j', (text, range, meant) => {
    expect(texts(text, range)).toEqual(meant);
    expect(texts(` ${text} `, range)).toEqual(meant);
  });

  it('of two names of one size has the first, and of a kind without everyday units nothing', () => {
    const stiffness = sensibleReadings('5', DIMENSION.stiffness, { low: 1, high: 1e9 });
    expect(stiffness.map((one) => one.replacement)).toEqual(['5 kN/m', '5 lbf/in', '5 N/m']);
    expect(sensibleReadings('178', DIMENSION.frequency).map((one) => one.replacement)).toEqual(['178 Hz']);
    expect(sensibleReadings('3', DIMENSION.number)).toEqual([]);
  });
});

describe('a range with three dots', () => {
  const told = (written: string) => doubtfulRange(written, ENGLISH);

  it('may end at the figures or at a fraction of one, and is asked about', () => {
    expect(told('.012...016 in')).toEqual({
      message: 'Does this range end at .016 or at 016? Write it with two dots.',
      suggestions: ['.012 .. .016 in', '.012..016 in'],
    });
    expect(told('0.5 mm...75 mm')).toEqual({
      message: 'Does this range end at .75 or at 75? Write it with two dots.',
      suggestions: ['0.5 mm .. .75 mm', '0.5 mm..75 mm'],
    });
    expect(told('-.5...25')?.suggestions).toEqual(['-.5 .. .25', '-.5..25']);
  });

  // It falls, is level, or is no range of this form at all.
  it.each([
    '.5...25 in',
    '.5...5 in',
    '2...16 in',
    '.012..016 in',
    '.012...016.5 in',
    'x.012...016',
    '.012...x',
    '..5...6',
  ])('%s reads one way only', (written) => {
    expect(told(written)).toBeUndefined();
  });
});

describe('a quantity from its parts', () => {
  const spanAt = (from: number, to: number) => ({
    start: { line: 0, character: from },
    end: { line: 0, character: to },
  });
  /** `5 ft 3 in ± 1`: numbers and units in turn, a lone unit as `_`. */
  const part = (number: string, unit: string | undefined, at: number): WrittenPart => ({
    number: { text: number, span: spanAt(at, at + 1) },
    ...(unit === undefined ? {} : { unit: { text: unit, span: spanAt(at + 1, at + 2) } }),
  });
  const read = (
    parts: readonly (readonly [string, string?])[],
    tolerance?: readonly [string, string?],
    beyond?: string,
  ) =>
    quantityOf(
      {
        parts: parts.map(([number, unit], i) => part(number, unit, 10 * i)),
        ...(tolerance ? { tolerance: part(...([tolerance[0], tolerance[1], 90] as const)) } : {}),
        span: spanAt(0, 99),
      },
      beyond,
      ENGLISH,
    );
  const value = (...args: Parameters<typeof read>) => {
    const reading = read(...args);
    return 'quantity' in reading ? [reading.quantity.si, reading.quantity.tolerance] : undefined;
  };
  const problem = (...args: Parameters<typeof read>) => {
    const reading = read(...args);
    if (!('problem' in reading)) return undefined;
    const { code, message, span, suggestions } = reading.problem;
    return [code, message, span.start.character, span.end.character, suggestions];
  };

  it('reads', () => {
    const close = (found: readonly (number | undefined)[] | undefined, si: number, tolerance?: number) => {
      expect(found?.[0]).toBeCloseTo(si, 12);
      if (tolerance === undefined) expect(found?.[1]).toBeUndefined();
      else expect(found?.[1]).toBeCloseTo(tolerance, 12);
    };
    close(value([['2.85', 'mm']]), 0.00285);
    close(
      value([
        ['5', 'ft'],
        ['3', 'in'],
      ]),
      1.6002,
    );
    // The unit of the tolerance or of what the quantity belongs to, where it has none of its own.
    close(value([['2.85']], ['0.05', 'mm']), 0.00285, 0.00005);
    close(value([['2.85']], undefined, 'mm'), 0.00285);
    close(value([['2.85']], ['0.05'], 'mm'), 0.00285, 0.00005);
    close(value([['2.85', 'mm']], ['0.05']), 0.00285, 0.00005);
    close(value([['2', 'm']], ['-5', '%']), 2, 0.1);
    close(value([['-2', 'm']], ['5', '%']), -2, 0.1);
    // 2 °C is a difference of 2 K.
    close(value([['20', '°C']], ['2', '°C']), 293.15, 2);
    // Per cent of a share are no part of it.
    close(value([['40', '%']], ['5', '%']), 0.4, 0.05);
    close(value([['4']], ['1']), 4, 1);
  });

  it('asks', () => {
    const SIDE_BY_SIDE = 'Two numbers side by side: between them a unit, a comma, `x` or `..` is missing.';
    expect(problem([])).toEqual(['bad-number', 'A number is missing here.', 0, 99, []]);
    expect(
      problem([
        ['3', 'mm'],
        ['4', 'mm'],
      ]),
    ).toEqual(['bad-number', SIDE_BY_SIDE, 0, 11, []]);
    expect(problem([['3'], ['4', 'mm']])).toEqual(['bad-number', SIDE_BY_SIDE, 0, 11, []]);
    expect(problem([['170'], ['-185', 'Hz']])).toEqual([
      'bad-number',
      'Two numbers side by side: a range is written 170..185.',
      0,
      11,
      ['170..185'],
    ]);
    expect(problem([['170'], ['–185', 'Hz']])?.[4]).toEqual(['170..185']);
    expect(problem([['170'], ['1-2', 'Hz']])?.[1]).toBe(SIDE_BY_SIDE);
    expect(
      problem([
        ['5', 'ft'],
        ['-3', 'in'],
      ]),
    ).toBeUndefined();
    expect(problem([['5', 'ft'], ['3']])).toEqual(['bad-number', 'The last number has no unit.', 10, 11, []]);
    expect(
      problem([
        ['5', 'ft'],
        ['3', 'g'],
      ])?.[1],
    ).toBe('The parts of one value must be of one kind, such as 5 ft 3 in.');
    expect(problem([['3', 'mmm']])).toEqual([
      'unknown-unit',
      '"mmm" is not a unit I know: did you mean mm?',
      1,
      2,
      ['mm'],
    ]);
    expect(problem([['3']], undefined, 'mmm')?.slice(2, 4)).toEqual([0, 1]);
    expect(
      problem([
        ['3', 'mm'],
        ['x', 'in'],
      ])?.slice(2, 4),
    ).toEqual([10, 11]);
    expect(problem([['3'], ['4', 'mm']], ['1', 'mmm'])?.[0]).toBe('bad-number');
    expect(problem([['5', 'GPa'], ['3']])?.[1]).toBe('The last number has no unit.');
    expect(problem([['170', 'Hz'], ['-185']])?.[1]).toBe('The last number has no unit.');
    expect(
      problem([
        ['170', 'Hz'],
        ['-185', 'Hz'],
      ])?.[1],
    ).toBe(SIDE_BY_SIDE);
    expect(problem([['3'], ['4']])?.[1]).toBe(SIDE_BY_SIDE);
    const KIND = 'A tolerance is of the same kind as its value, or in per cent.';
    expect(problem([['3', 'mm']], ['2', 'g'])).toEqual(['bad-number', KIND, 91, 92, []]);
    expect(problem([['3']], ['2', 'g'])?.[1]).toBeUndefined();
    expect(problem([['3', 'mm']], ['2,5', 'mm'])?.[1]).toBe('"2,5": decimals are written with a point.');
    expect(problem([['20', '°C']], ['x', '°C'])?.[0]).toBe('bad-number');
  });
});
