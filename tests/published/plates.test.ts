/** Hinged rectangular plates: exact frequencies and the tables of Timoshenko & Woinowsky-Krieger. */
import { describe, expect, test } from 'vitest';
import { hingedFrequency, hingedPointDeflection, hingedUniformDeflection } from './formulas/hinged-plate.js';
import { plateBending } from '../../language/mechanics/wood/orthotropic-plate.js';
import { number, off, readTable } from './table.js';

/** An isotropic plate is the orthotropic one with E across = E along and G = E / 2(1 + ν). */
const nu = 0.3;
const bending = plateBending({ along: 200e9, across: 200e9, shear: 200e9 / (2 * (1 + nu)), poissonLR: nu }, 0.01);
const D = bending.along;

describe('hinged square, ω a² √(m/D) = π² (i² + j²)', () => {
  const modes = [
    [1, 1],
    [1, 2],
    [2, 1],
    [2, 2],
    [1, 3],
    [3, 1],
  ] as const;
  test.each(readTable('plate-frequencies.csv').filter((row) => row.case === 'simply supported square'))(
    'mode $mode: $value_si',
    (row) => {
      const [m, n] = modes[number(row, 'mode') - 1]!;
      const mass = 78;
      const parameter = 2 * Math.PI * hingedFrequency(bending, mass, 1, 1, m, n) * Math.sqrt(mass / D);
      expect(off(parameter, number(row, 'value_si'))).toBeLessThan(2e-6);
    },
  );
});

describe('hinged 2 m × 1.5 m plate, Code_Aster V2.03.106, ratios to the first mode', () => {
  const rows = readTable('plate-frequencies.csv').filter((row) => row.case!.startsWith('simply supported 2 m'));
  const modes = [
    [1, 1],
    [2, 1],
    [1, 2],
    [3, 1],
    [2, 2],
  ] as const;
  test.each(rows)('mode $mode: $value_si Hz', (row) => {
    const [m, n] = modes[number(row, 'mode') - 1]!;
    const ratio = hingedFrequency(bending, 78, 2, 1.5, m, n) / hingedFrequency(bending, 78, 2, 1.5, 1, 1);
    // The first is printed to four digits.
    expect(off(ratio, number(row, 'value_si') / number(rows[0]!, 'value_si'))).toBeLessThan(0.0004);
  });
});

describe('hinged rectangle, centre deflection, Timoshenko & Woinowsky-Krieger (1959)', () => {
  test.each(readTable('plate-static.csv'))('$load load, b/a = $b_over_a: $value_si ($known)', (row) => {
    const ratio = number(row, 'b_over_a');
    const coefficient =
      row.load === 'uniform'
        ? hingedUniformDeflection(bending, 1000, 1, ratio) * (D / 1000)
        : hingedPointDeflection(bending, 100, 1, ratio) * (D / 100);
    // Three or four printed digits, summed by hand in 1959 from few terms of the series.
    expect(off(coefficient, number(row, 'value_si'))).toBeLessThan(0.0035);
  });
});

test('an orthotropic hinged plate turned by a quarter has the same modes', () => {
  const wood = plateBending({ along: 11e9, across: 0.9e9, shear: 0.7e9, poissonLR: 0.37 }, 0.0028);
  const turned = { ...wood, along: wood.across, across: wood.along };
  expect(hingedFrequency(wood, 1.2, 0.5, 0.4, 2, 3)).toBeCloseTo(hingedFrequency(turned, 1.2, 0.4, 0.5, 3, 2), 9);
});
