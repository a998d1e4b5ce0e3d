import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIMENSION, multiply, type Dimension } from '../../language/quantities/dimension.js';
import type { Quantity } from '../../language/quantities/quantity.js';
import { readQuantity } from '../../language/quantities/read.js';
import { otherUnit, shopUnit } from '../../language/quantities/shop-units.js';
import { differenceToSi, toSi, unit, UNITS } from '../../language/quantities/units.js';
import { writeAsText, writeBoth, writeQuantity, type WriteOptions } from '../../language/quantities/write.js';

describe('writing a quantity', () => {
  it.each<[number, Dimension, string, WriteOptions?]>([
    [0.00285, DIMENSION.length, '2.85 mm'],
    [0.0028, DIMENSION.length, '2.8 mm'],
    [0.645, DIMENSION.length, '645 mm'],
    [0.000127, DIMENSION.length, '0.127 mm'],
    [0.0042e-3, DIMENSION.length, '0.0042 mm', { unit: 'mm' }],
    [8.5344, DIMENSION.length, '8.53 m'],
    [0.002794, DIMENSION.length, '0.110 in', { unit: 'in' }],
    [0.002794, DIMENSION.length, '110 thou', { unit: 'thou' }],
    [0.172, DIMENSION.mass, '172 g'],
    [1.7884, DIMENSION.mass, '1788 g'],
    [0.00053, DIMENSION.mass, '0.53 g'],
    [5.4, DIMENSION.density, '5.4 kg/m³'],
    [0.0053 * 0.0254, DIMENSION.length, '0.0053 in', { unit: 'in' }],
    [0.005 * 0.0254, DIMENSION.length, '0.005 in', { unit: 'in' }],
    [0.254, DIMENSION.length, '10.000 in', { unit: 'in' }],
    [1e-13, DIMENSION.length, '0.0000001 µm'],
    [1e20, DIMENSION.mass, '100000000000000000000 kg'],
    [412.3, DIMENSION.density, '412 kg/m³'],
    [11.2e9, DIMENSION.pressure, '11.2 GPa'],
    [45e6, DIMENSION.pressure, '45 MPa'],
    [186.2, DIMENSION.frequency, '186 Hz'],
    [75.5, DIMENSION.frequency, '75.5 Hz'],
    [0.45, DIMENSION.humidity, '45 %RH'],
    [293.15, DIMENSION.temperature, '20 °C'],
    [0.86, DIMENSION.number, '0.86'],
    [-0.05, DIMENSION.number, '-5 %', { unit: '%' }],
    [0.026179938779914945, DIMENSION.angle, '1.5 deg'],
    [9.3, DIMENSION.torque, '9.3 N·m'],
    [-0.15e-3, DIMENSION.length, '-0.15 mm', { difference: true }],
    [2.3, DIMENSION.frequency, '+2.3 Hz', { difference: true }],
    [2, DIMENSION.temperature, '+2 °C', { difference: true }],
    [0, DIMENSION.length, '0 mm'],
    [-0, DIMENSION.length, '0 mm'],
    [1 / 3, DIMENSION.length, '333.3333 mm', { digits: 7 }],
    [0.0028, DIMENSION.length, '2.80 mm', { decimals: 2 }],
    [3, multiply(DIMENSION.mass, DIMENSION.temperature), '3 kg·K'],
  ])('%d %o is %s', (si, dimension, text, options) => {
    expect(writeQuantity(si, dimension, options)).toBe(text);
  });

  it('lets the uncertainty decide the digits, two of its own', () => {
    expect(writeQuantity(11.2e9, DIMENSION.pressure, { uncertainty: 0.35e9 })).toBe('11.20 ± 0.35 GPa');
    expect(writeQuantity(0.00285, DIMENSION.length, { uncertainty: 0.0000504 })).toBe('2.850 ± 0.050 mm');
    expect(writeQuantity(186.23, DIMENSION.frequency, { uncertainty: 3.7 })).toBe('186.2 ± 3.7 Hz');
    expect(writeQuantity(1234, DIMENSION.frequency, { uncertainty: 150 })).toBe('1234 ± 150 Hz');
    expect(writeQuantity(186.23, DIMENSION.frequency, { uncertainty: 0.0996 })).toBe('186.23 ± 0.10 Hz');
    expect(writeQuantity(293.15, DIMENSION.temperature, { uncertainty: 1 })).toBe('20.0 ± 1.0 °C');
  });

  it('says unknown rather than NaN or Infinity', () => {
    for (const si of [NaN, Infinity, -Infinity]) {
      expect(writeQuantity(si, DIMENSION.length)).toBe('unknown');
      expect(writeBoth(si, DIMENSION.length)).toBe('unknown');
    }
    expect(writeQuantity(1, DIMENSION.length, { uncertainty: NaN })).toBe('1000 mm');
  });

  it('falls back on the shop unit for a unit that does not fit', () => {
    expect(writeQuantity(0.00285, DIMENSION.length, { unit: 'kg' })).toBe('2.85 mm');
    expect(writeQuantity(0.00285, DIMENSION.length, { unit: 'nonsense' })).toBe('2.85 mm');
  });

  it.each([
    [0.002794, DIMENSION.length, undefined, '2.79 mm (0.110 in)'],
    [0.002794, DIMENSION.length, 'in', '0.110 in (2.79 mm)'],
    [8.5344, DIMENSION.length, 'ft', '28 ft (8.53 m)'],
    [0.000127, DIMENSION.length, 'mil', '5 mil (0.127 mm)'],
    [0.172, DIMENSION.mass, undefined, '172 g (6.07 oz)'],
    [412, DIMENSION.density, undefined, '412 kg/m³ (25.7 lb/ft³)'],
    [11.2e9, DIMENSION.pressure, undefined, '11.2 GPa (1.62 Mpsi)'],
    [293.15, DIMENSION.temperature, undefined, '20 °C (68 °F)'],
    [186, DIMENSION.frequency, undefined, '186 Hz'],
  ])('writes both systems: %d %o', (si, dimension, symbol, text) => {
    expect(writeBoth(si, dimension, symbol)).toBe(text);
  });

  it('writes recipe text in the unit and with the tolerance it was given', () => {
    const mm = unit('mm')!;
    const thickness = { si: 0.00285, dimension: DIMENSION.length, unit: mm, tolerance: 0.00005 };
    expect(writeAsText(thickness)).toBe('2.85 mm ± 0.05 mm');
    const celsius = unit('°C')!;
    expect(writeAsText({ si: 293.15, dimension: DIMENSION.temperature, unit: celsius, tolerance: 2 })).toBe(
      '20 °C ± 2 °C',
    );
    expect(writeAsText({ si: 0.9, dimension: DIMENSION.number })).toBe('0.9');
  });
});

describe('the shop unit', () => {
  it('follows the size where a maker would', () => {
    expect(shopUnit(DIMENSION.pressure, 11e9)?.symbol).toBe('GPa');
    expect(shopUnit(DIMENSION.pressure, 40e6)?.symbol).toBe('MPa');
    expect(shopUnit(DIMENSION.length)?.symbol).toBe('mm');
    expect(shopUnit(DIMENSION.length, 0.002, 'inch')?.symbol).toBe('in');
    expect(shopUnit(DIMENSION.mass, 0.2, 'inch')?.symbol).toBe('oz');
    expect(shopUnit(DIMENSION.number)).toBeUndefined();
  });

  it('and the other system are of one dimension, and of another system', () => {
    for (const one of UNITS) {
      const other = otherUnit(one);
      if (other === undefined) continue;
      expect(other.dimension.exponents).toEqual(one.dimension.exponents);
      expect(other.system).not.toBe(one.system);
    }
  });
});

describe('round trip', () => {
  const size = fc.double({ min: 1e-9, max: 1e9, noNaN: true });
  const anyUnit = fc.constantFrom(...UNITS);
  const readBack = (text: string): Quantity => {
    const cut = text.lastIndexOf(' ');
    const reading = readQuantity(text.slice(0, cut), text.slice(cut + 1));
    if (!reading.ok) throw new Error(reading.message);
    return reading.quantity;
  };

  it('reads back what it writes, in the same unit, and writes that the same again', () => {
    fc.assert(
      fc.property(size, anyUnit, fc.boolean(), (number, one, negative) => {
        const text = writeQuantity(toSi(negative ? -number : number, one), one.dimension, { unit: one });
        const back = readBack(text);
        expect(back.unit).toBe(one);
        expect(writeQuantity(back.si, one.dimension, { unit: one })).toBe(text);
      }),
      { numRuns: 500 },
    );
  });

  it('shows two significant digits or more of anything but nought', () => {
    fc.assert(
      fc.property(size, anyUnit, (number, one) => {
        const text = writeQuantity(differenceToSi(number, one), one.dimension, { unit: one, difference: true });
        expect(Math.abs(Number(text.slice(0, text.lastIndexOf(' '))) / number - 1)).toBeLessThanOrEqual(0.05 + 1e-9);
      }),
      { numRuns: 500 },
    );
  });

  it('is within half of the last decimal asked for', () => {
    const bench = fc.double({ min: 1e-4, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(bench, anyUnit, fc.integer({ min: 0, max: 6 }), (number, one, decimals) => {
        const text = writeQuantity(toSi(number, one), one.dimension, { unit: one, decimals });
        const shown = text.slice(0, text.lastIndexOf(' '));
        expect(shown.split('.')[1]?.length ?? 0).toBe(decimals);
        // The slack is the rounding of the conversion itself; a temperature scale's offset makes it larger.
        expect(Math.abs(Number(shown) - number)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-15 * (number + 500));
      }),
      { numRuns: 500 },
    );
  });

  it('loses nothing that matters with twelve digits', () => {
    fc.assert(
      fc.property(size, anyUnit, (number, one) => {
        const si = toSi(number, one);
        const back = readBack(writeQuantity(si, one.dimension, { unit: one, digits: 12 }));
        expect(Math.abs(back.si - si)).toBeLessThanOrEqual(6e-12 * Math.abs(si) + (one.offset ?? 0) * 1e-15);
      }),
      { numRuns: 500 },
    );
  });
});
