import { describe, expect, it } from 'vitest';
import { add, divide, multiply, scale, shift, subtract, withTolerance } from '../../language/quantities/arithmetic.js';
import { DIMENSION } from '../../language/quantities/dimension.js';
import { isMismatch } from '../../language/quantities/mismatch.js';
import type { Quantity } from '../../language/quantities/quantity.js';
import { differenceToSi, toSi, unit } from '../../language/quantities/units.js';

function of(number: number, symbol: string, half?: number): Quantity {
  const found = unit(symbol)!;
  const tolerance = half === undefined ? {} : { tolerance: differenceToSi(half, found) };
  return { si: toSi(number, found), dimension: found.dimension, unit: found, ...tolerance };
}
const bare = (si: number): Quantity => ({ si, dimension: DIMENSION.number });

describe('adding and subtracting', () => {
  it('keeps the first unit and adds the tolerances', () => {
    const sum = add(of(2.85, 'mm', 0.05), of(0.1, 'in', 0.001)) as Quantity;
    expect(sum.si).toBeCloseTo(0.00539, 15);
    expect(sum.tolerance).toBeCloseTo(0.0000754, 15);
    expect(sum.unit?.symbol).toBe('mm');
  });

  it('refuses two kinds with words for both', () => {
    const sum = add(of(2.85, 'mm'), of(5, 'g'));
    expect(isMismatch(sum) && [sum.expected.name, sum.found.name]).toEqual(['length', 'mass']);
    expect(isMismatch(subtract(of(5, 'Hz'), of(5, 'cents')))).toBe(true);
  });

  it('leaves out a tolerance nobody gave', () => {
    expect(add(of(1, 'mm'), of(1, 'mm'))).not.toHaveProperty('tolerance');
  });

  it('treats the second of two temperatures as a step, and their difference as kelvin', () => {
    expect((add(of(20, '°C'), of(2, '°C')) as Quantity).si).toBeCloseTo(295.15, 10);
    const difference = subtract(of(25, '°C'), of(68, '°F')) as Quantity;
    expect(difference.si).toBeCloseTo(5, 10);
    expect(difference.unit).toBeUndefined();
  });
});

describe('multiplying and dividing', () => {
  it('multiplies dimensions', () => {
    expect(multiply(of(720, 'N'), of(12.7, 'mm'))).toMatchObject({ dimension: DIMENSION.torque });
    const density = divide(of(200, 'g'), of(0.5, 'L')) as Quantity;
    expect(density.si).toBeCloseTo(400, 10);
    expect(density.dimension).toBe(DIMENSION.density);
  });

  it('carries tolerances to first order: the relative ones add up', () => {
    const product = multiply(of(100, 'mm', 1), of(50, 'mm', 1));
    expect(product.tolerance! / product.si).toBeCloseTo(0.01 + 0.02, 12);
    const quotient = divide(of(100, 'g', 1), of(50, 'mm', 1)) as Quantity;
    expect(quotient.tolerance! / quotient.si).toBeCloseTo(0.01 + 0.02, 12);
  });

  it('agrees with the change a small step really makes', () => {
    const half = 1e-6;
    const quotient = divide(of(3, 'kg', half), of(-7, 'm', half)) as Quantity;
    const worst = Math.abs((3 + half) / (-7 + half) - 3 / -7);
    expect(quotient.tolerance! / worst).toBeCloseTo(1, 5);
  });

  it('has a message for a division by zero', () => {
    expect(divide(of(1, 'mm'), of(0, 'mm'))).toMatchObject({ ok: false, code: 'division-by-zero' });
  });

  it('scales the tolerance by the size of the factor', () => {
    expect(scale(of(2, 'mm', 0.5), -3)).toMatchObject({ si: -0.006, tolerance: 0.0015, unit: { symbol: 'mm' } });
  });
});

describe('a relative change', () => {
  it('is a difference or per cent', () => {
    expect((shift(of(2.85, 'mm'), of(-0.15, 'mm')) as Quantity).si).toBeCloseTo(0.0027, 15);
    expect((shift(of(2, 'mm'), of(-5, '%')) as Quantity).si).toBeCloseTo(0.0019, 15);
    expect((shift(of(20, '°C'), of(3.6, '°F')) as Quantity).si).toBeCloseTo(295.15, 10);
    expect((shift(bare(4), bare(1)) as Quantity).si).toBe(5);
  });

  it('refuses a step of another kind, a bare number too', () => {
    expect(isMismatch(shift(of(2.85, 'mm'), of(1, 'g')))).toBe(true);
    const missing = shift(of(2.85, 'mm'), bare(-0.15));
    expect(isMismatch(missing) && missing.code).toBe('missing-unit');
  });
});

describe('a written tolerance', () => {
  it('may be in the unit, in another, in per cent, or bare', () => {
    const tolerance = (a: Quantity, b: Quantity): number | undefined => (withTolerance(a, b) as Quantity).tolerance;
    expect(tolerance(of(2.85, 'mm'), of(0.05, 'mm'))).toBe(0.00005);
    expect(tolerance(of(2.85, 'mm'), of(2, 'thou'))).toBeCloseTo(0.0000508, 15);
    expect(tolerance(of(200, 'g'), of(5, '%'))).toBeCloseTo(0.01, 15);
    expect(tolerance(of(2.85, 'mm'), bare(0.05))).toBe(0.00005);
    expect(tolerance(of(20, '°C'), of(2, '°C'))).toBe(2);
    expect(tolerance(of(20, '°C'), bare(2))).toBe(2);
    expect(tolerance(bare(0.9), bare(0.1))).toBe(0.1);
  });

  it('is refused in another kind', () => {
    expect(isMismatch(withTolerance(of(2.85, 'mm'), of(1, 'g')))).toBe(true);
  });
});
