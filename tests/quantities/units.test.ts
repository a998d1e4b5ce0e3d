import { describe, expect, it } from 'vitest';
import { DIMENSION } from '../../language/quantities/dimension.js';
import { sensibleReadings } from '../../language/quantities/readings.js';
import {
  canonicalSpelling,
  differenceToSi,
  fromSi,
  SPELLINGS,
  suggestUnits,
  toSi,
  unit,
  UNITS,
  unitsOf,
} from '../../language/quantities/units.js';

describe('the unit table', () => {
  it('gives every spelling to one unit only', () => {
    const all = UNITS.flatMap((one) => one.spellings);
    expect(all.filter((spelling, i) => all.indexOf(spelling) !== i)).toEqual([]);
  });

  it('lists the symbol among the spellings and finds the unit by each', () => {
    for (const one of UNITS) {
      expect(one.spellings).toContain(one.symbol);
      for (const spelling of one.spellings) expect(unit(spelling)).toBe(one);
    }
  });

  it('sets beside each a unit of the same dimension and the other system, and leads back to a unit of its own', () => {
    for (const one of UNITS) {
      if (one.beside === 'itself') continue;
      const other = unit(one.beside);
      expect(other?.dimension, one.symbol).toEqual(one.dimension);
      expect(other?.system, one.symbol).not.toBe(one.system);
      expect(unit(other?.beside ?? '')?.system, one.symbol).toBe(one.system);
    }
  });

  it('takes a bare number only for units whose row says so, and only where it is large enough', () => {
    const wide = { low: 1e-12, high: 1e12 };
    const meant = Object.values(DIMENSION).flatMap((dimension) =>
      ['1.2', '12', '.05'].flatMap((number) =>
        sensibleReadings(number, dimension, wide).map(({ unit: { symbol, bare } }) => ({ number, symbol, bare })),
      ),
    );
    expect(meant.length).toBeGreaterThan(100);
    expect(meant.filter(({ number, bare }) => bare === undefined || Number(number) < bare)).toEqual([]);
    expect(meant.some(({ number, symbol }) => number === '.05' && symbol === 'cm')).toBe(false);
    expect(meant.some(({ number, symbol }) => number === '1.2' && symbol === 'cm')).toBe(true);
  });

  it('has a positive finite factor, a sentence and a source for every unit', () => {
    for (const one of UNITS) {
      expect(one.factor).toBeGreaterThan(0);
      expect(Number.isFinite(one.factor)).toBe(true);
      expect(one.sentence).toMatch(/^[A-Z].*\.$/);
      expect(one.source.length).toBeGreaterThan(5);
    }
  });

  it('has a unit for every dimension a maker writes', () => {
    const computedOnly = ['number', 'energy', 'plate stiffness'];
    for (const one of Object.values(DIMENSION)) {
      if (!computedOnly.includes(one.name)) expect([one.name, unitsOf(one).length > 0]).toEqual([one.name, true]);
    }
  });

  it.each([
    ['"', 'in'],
    ['″', 'in'],
    ["'", 'ft'],
    ['′', 'ft'],
    ['kg/m3', 'kg/m³'],
    ['kg/m^3', 'kg/m³'],
    ['g/cc', 'g/cm³'],
    ['pcf', 'lb/ft³'],
    ['N*m', 'N·m'],
    ['N.m', 'N·m'],
    ['Nm', 'N·m'],
    ['N.m2', 'N·m²'],
    ['um', 'µm'],
    ['μm', 'µm'],
    ['degC', '°C'],
    ['°', 'deg'],
    ['day', 'days'],
    ['cent', 'cents'],
    ['lbs', 'lb'],
    ['% MC', '%MC'],
    ['m4/(kg·s)', 'm⁴/(kg·s)'],
  ])('%s is spelled %s', (spelling, symbol) => {
    expect(canonicalSpelling(spelling)).toBe(symbol);
  });

  it('offers spellings to a lexer longest first', () => {
    for (let i = 1; i < SPELLINGS.length; i++)
      expect(SPELLINGS[i - 1]!.length).toBeGreaterThanOrEqual(SPELLINGS[i]!.length);
    expect(SPELLINGS.indexOf('N·m²')).toBeLessThan(SPELLINGS.indexOf('N'));
  });

  it.each(['Mm', 'HZ', 'KG', 'mpa', 'C', 'constructor', '__proto__', ''])('does not know %s', (spelling) => {
    expect(unit(spelling)).toBeUndefined();
  });
});

describe('conversion', () => {
  it.each([
    [2.85, 'mm', 0.00285],
    [0.11, 'in', 0.002794],
    [110, 'thou', 0.002794],
    [5, 'mil', 0.000127],
    [7 / 64, 'in', 0.002778125],
    [28, 'ft', 8.5344],
    [45, '%RH', 0.45],
    [20, '°C', 293.15],
    [172, 'g', 0.172],
    [25, 'cents', 25 / 1200],
    [12, 'semitones', 1],
  ])('%d %s is exactly %d', (number, symbol, si) => {
    expect(toSi(number, unit(symbol)!)).toBe(si);
  });

  it('gives 5 mil as 0.127 mm, not 5 mm', () => {
    expect(fromSi(toSi(5, unit('mil')!), unit('mm')!)).toBeCloseTo(0.127, 14);
  });

  it('meets the fixed points of the temperature scales', () => {
    expect(fromSi(toSi(100, unit('°C')!), unit('°F')!)).toBeCloseTo(212, 11);
    expect(fromSi(toSi(32, unit('°F')!), unit('°C')!)).toBeCloseTo(0, 11);
    expect(fromSi(toSi(-40, unit('°F')!), unit('°C')!)).toBeCloseTo(-40, 11);
  });

  it('leaves the offset out of a difference', () => {
    expect(differenceToSi(9, unit('°F')!)).toBeCloseTo(5, 14);
    expect(differenceToSi(2, unit('°C')!)).toBe(2);
  });

  it('comes back to the number written, for every unit', () => {
    for (const one of UNITS) {
      for (const number of [0.001, 0.11, 1, 2.85, 7 / 64, 17, 412, 1788]) {
        // A temperature passes through an offset of hundreds of kelvin, which costs that many last bits.
        const slack = one.offset === undefined ? 4 * Number.EPSILON * number : 1e-12 * 1000;
        expect(Math.abs(fromSi(toSi(number, one), one) - number)).toBeLessThanOrEqual(slack);
      }
    }
  });
});

describe('did you mean, for units', () => {
  it.each([
    ['mmm', ['mm']],
    ['Mm', ['mm']],
    ['HZ', ['Hz']],
    ['KG', ['kg']],
    ['mpa', ['MPa']],
    ['Mpa', ['MPa']],
    ['gpa', ['GPa']],
    ['C', ['°C']],
    ['F', ['°F']],
    ['RH', ['%RH']],
    ['%rh', ['%RH']],
    ['lb-in', ['lbf·in']],
    // Another unit would be another length of time.
    ['month', []],
    ['gr', ['g']],
    ['Zoll', ['in']],
  ])('%s', (written, meant) => {
    expect(suggestUnits(written)).toEqual(meant);
  });

  it('prefers the dimension that is needed', () => {
    expect(suggestUnits('mn', DIMENSION.time)[0]).toBe('min');
    expect(suggestUnits('mn', DIMENSION.length)[0]).toBe('mm');
    expect(suggestUnits('pound', DIMENSION.force)).toEqual(['lbf']);
  });

  it('offers nothing for a word that is near no unit, however odd', () => {
    for (const word of ['', 'constructor', 'soundboard', 'x'.repeat(10_000)]) expect(suggestUnits(word)).toEqual([]);
  });
});
