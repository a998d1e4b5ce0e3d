import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIMENSION } from '../../language/quantities/dimension.js';
import { isMismatch, mismatch } from '../../language/quantities/mismatch.js';
import type { Quantity } from '../../language/quantities/quantity.js';
import { addQuantities, readQuantity } from '../../language/quantities/read.js';
import { sensibleReadings } from '../../language/quantities/readings.js';
import { SPELLINGS } from '../../language/quantities/units.js';

function quantity(number: string, unit?: string): Quantity {
  const reading = readQuantity(number, unit);
  if (!reading.ok) throw new Error(reading.message);
  return reading.quantity;
}

describe('reading a quantity', () => {
  it.each([
    ['2.85', 'mm', 0.00285, 'length'],
    ['7/64', '"', 0.002778125, 'length'],
    ['1 3/4', 'in', 0.04445, 'length'],
    ['28', "'", 8.5344, 'length'],
    ['390', 'kg/m3', 390, 'density'],
    ['11.2', 'GPa', 11.2e9, 'pressure'],
    ['45', '%RH', 0.45, 'relative humidity'],
    ['7', '%MC', 0.07, 'moisture content'],
    ['186', 'Hz', 186, 'frequency'],
  ])('%s %s', (number, unit, si, dimension) => {
    const { si: read, dimension: found } = quantity(number, unit);
    expect(read).toBe(si);
    expect(found.name).toBe(dimension);
  });

  it('takes 9/10 without a unit as a ratio', () => {
    expect(quantity('9/10')).toEqual({ si: 0.9, dimension: DIMENSION.number });
    expect(quantity('9/10', '')).toEqual({ si: 0.9, dimension: DIMENSION.number });
  });

  it('remembers the unit', () => {
    expect(quantity('7/64', '″').unit?.symbol).toBe('in');
  });

  it('asks about an unknown unit', () => {
    expect(readQuantity('2.85', 'mmm')).toEqual({
      ok: false,
      code: 'unknown-unit',
      message: '"mmm" is not a unit I know: did you mean mm?',
      suggestions: ['mm'],
    });
    expect(readQuantity('2.85', 'soundboard')).toMatchObject({ ok: false, code: 'unknown-unit', suggestions: [] });
  });

  it('reports a bad number before its unit', () => {
    expect(readQuantity('1,5', 'mmm')).toMatchObject({ ok: false, code: 'bad-number', suggestions: ['1.5'] });
  });

  it('never throws and never gives a number that is not finite', () => {
    const unit = fc.option(fc.oneof(fc.constantFrom(...SPELLINGS), fc.string()), { nil: undefined });
    const number = fc.oneof(fc.double().map(String), fc.string());
    fc.assert(
      fc.property(number, unit, (a, b) => {
        const reading = readQuantity(a, b);
        expect(reading.ok ? Number.isFinite(reading.quantity.si) : reading.message.length > 0).toBe(true);
      }),
    );
  });
});

describe('5 ft 3 in', () => {
  it('adds up and remembers the first unit', () => {
    const sum = addQuantities([quantity('5', 'ft'), quantity('3', 'in')]);
    expect(sum).toMatchObject({ si: 1.6002, unit: { symbol: 'ft' } });
  });

  it('is negative as a whole', () => {
    expect(addQuantities([quantity('-5', 'ft'), quantity('3', 'in')])).toMatchObject({ si: -1.6002 });
  });

  it('refuses parts of another kind', () => {
    const sum = addQuantities([quantity('5', 'ft'), quantity('3', 'g')]);
    expect(isMismatch(sum) && sum.message).toBe('A mass (g) where a length is needed. Use mm or in.');
  });
});

describe('the wrong dimension', () => {
  it.each([
    ['5', 'g', DIMENSION.length, 'A mass (g) where a length is needed. Use mm or in.', ['mm', 'in']],
    ['5', 'lb', DIMENSION.force, 'A mass (lb) where a force is needed. Use lbf.', ['lbf']],
    ['45', '%', DIMENSION.humidity, 'Per cent where a relative humidity is needed. Use %RH.', ['%RH']],
    [
      '45',
      '%RH',
      DIMENSION.moisture,
      'A relative humidity (%RH) where a moisture content is needed. Use %MC.',
      ['%MC'],
    ],
    ['20', 'deg', DIMENSION.temperature, 'An angle (deg) where a temperature is needed. Use °C or °F.', ['°C', '°F']],
    ['5', 'mm', DIMENSION.number, 'A plain number is needed here, not a length in mm.', []],
  ])('%s %s', (number, unit, dimension, message, suggestions) => {
    expect(mismatch(quantity(number, unit), dimension)).toMatchObject({
      code: 'wrong-dimension',
      message,
      suggestions,
    });
  });

  it('tells a missing unit from a wrong one', () => {
    expect(mismatch(quantity('0.110'), DIMENSION.length)).toMatchObject({
      code: 'missing-unit',
      message: '0.11 has no unit, and a length needs one. Use mm or in.',
      suggestions: ['mm', 'in'],
    });
  });
});

describe('what a number without a unit may mean', () => {
  const thickness = { low: 0.0022, high: 0.0038, typical: 0.0028 };
  const texts = (...asked: Parameters<typeof sensibleReadings>): string[] =>
    sensibleReadings(...asked).map(({ text }) => text);

  it('reads a top thickness of .110, 110 and 2.8 in the one way that is plausible', () => {
    expect(texts('.110', DIMENSION.length, thickness)).toEqual(['0.110 in = 2.79 mm']);
    expect(texts('110', DIMENSION.length, thickness)).toEqual(['110 thou = 2.79 mm']);
    expect(texts('2.8', DIMENSION.length, thickness)).toEqual(['2.8 mm']);
    expect(texts(0.11, DIMENSION.length, thickness)).toEqual(['0.11 in = 2.79 mm']);
    expect(texts('28', DIMENSION.length, thickness)).toEqual([]);
  });

  it('reads a dome of 28 as feet and a film of 5 as mil', () => {
    expect(texts('28', DIMENSION.length, { low: 4, high: 20 })).toEqual(['28 ft = 8.53 m']);
    expect(texts('5', DIMENSION.length, { low: 0.02e-3, high: 0.35e-3 })).toEqual(['5 mil = 0.127 mm']);
  });

  it('reads action in 64ths, and 6/4 as two of them', () => {
    const action = { low: 0.0012, high: 0.0029, typical: 0.002 };
    expect(texts('6', DIMENSION.length, action)).toEqual(['6/64 in = 2.38 mm']);
    expect(texts('6/4', DIMENSION.length, action)).toEqual(['6/64 in = 2.38 mm', '4/64 in = 1.59 mm', '6/4 mm']);
  });

  it('lists every plausible reading, the nearest to the usual value first', () => {
    const load = { low: 1, high: 6, typical: 2.268 };
    expect(texts('5', DIMENSION.mass, load)).toEqual(['5 lb = 2.268 kg', '5 kg']);
    expect(texts('45', DIMENSION.humidity, { low: 0.35, high: 0.6 })).toEqual(['45 %RH']);
    expect(texts('68', DIMENSION.temperature, { low: 288, high: 303 })).toEqual(['68 °F = 20 °C']);
  });

  it('offers the everyday units without a range', () => {
    expect(texts('5', DIMENSION.length)).toEqual(['5 mm', '5 in = 127 mm']);
  });

  it('has nothing to say about a pure number or no number', () => {
    expect(sensibleReadings('x', DIMENSION.length, thickness)).toEqual([]);
    expect(sensibleReadings(NaN, DIMENSION.length, thickness)).toEqual([]);
    expect(sensibleReadings('0', DIMENSION.length, thickness)).toEqual([]);
  });

  it('offers only replacements that read back to the value they promise', () => {
    for (const written of ['.110', '110', '2.8', '6', '6/4', '1 3/4', '28']) {
      for (const { replacement, si } of sensibleReadings(written, DIMENSION.length, { low: 1e-6, high: 100 })) {
        const cut = replacement.lastIndexOf(' ');
        expect(quantity(replacement.slice(0, cut), replacement.slice(cut + 1)).si).toBe(si);
      }
    }
  });
});
