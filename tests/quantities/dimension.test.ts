import { describe, expect, it } from 'vitest';
import {
  BASES,
  DIMENSION,
  divide,
  isNumber,
  multiply,
  power,
  sameDimension,
  withArticle,
} from '../../language/quantities/dimension.js';

describe('dimensions', () => {
  it('multiply, divide and raise to known names', () => {
    expect(multiply(DIMENSION.force, DIMENSION.length).name).toBe('torque');
    expect(divide(DIMENSION.force, DIMENSION.area).name).toBe('pressure');
    expect(divide(DIMENSION.mass, DIMENSION.volume).name).toBe('density');
    expect(power(DIMENSION.length, 2).name).toBe('area');
    expect(divide(DIMENSION.speed, DIMENSION.force).name).toBe('mobility');
    expect(multiply(DIMENSION.pressure, DIMENSION.secondMomentOfArea).name).toBe('beam stiffness');
    expect(divide(DIMENSION.torque, DIMENSION.angle).name).toBe('rotational stiffness');
  });

  it('gives the radiation ratio √(E/ρ³) its dimension', () => {
    const ratio = power(divide(DIMENSION.pressure, power(DIMENSION.density, 3)), 0.5);
    expect(sameDimension(ratio, DIMENSION.radiation)).toBe(true);
  });

  it('names other products by SI symbols', () => {
    expect(multiply(DIMENSION.mass, DIMENSION.temperature).name).toBe('kg·K');
    expect(power(DIMENSION.density, 2).name).toBe('kg²·m⁻⁶');
    expect(power(DIMENSION.length, 0.5).name).toBe('m^0.5');
  });

  it('keeps humidity, moisture, angle, interval and plain numbers apart', () => {
    const kinds = [DIMENSION.humidity, DIMENSION.moisture, DIMENSION.angle, DIMENSION.interval, DIMENSION.number];
    for (const a of kinds) for (const b of kinds) expect(sameDimension(a, b)).toBe(a === b);
  });

  it('knows a pure number, also a computed one', () => {
    expect(isNumber(divide(DIMENSION.length, DIMENSION.length))).toBe(true);
    expect(divide(DIMENSION.length, DIMENSION.length)).toBe(DIMENSION.number);
    expect(isNumber(DIMENSION.angle)).toBe(false);
  });

  it('has one exponent per base everywhere', () => {
    for (const one of Object.values(DIMENSION)) expect(one.exponents).toHaveLength(BASES.length);
  });

  it('takes an article in a sentence', () => {
    expect(withArticle(DIMENSION.length)).toBe('a length');
    expect(withArticle(DIMENSION.angle)).toBe('an angle');
  });
});
