/** Moisture and movement against the Wood Handbook (USDA Forest Products Laboratory). */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  USUAL_INTERSECTION_MOISTURE,
  equilibriumMoisture,
  humidityForMoisture,
  movementCoefficient,
  propertyAtMoisture,
} from '../../language/mechanics/wood/moisture.js';
import { number, off, readTable } from './table.js';

describe('equilibrium moisture content, Wood Handbook FPL-GTR-190 (2010) Table 4-2', () => {
  const rows = readTable('emc.csv');
  test('the whole table is here', () => expect(rows.length).toBe(95));

  // The table is printed for whole tens of °F; its °C are rounded, so the exact °C are used.
  const percentAt = (row: Record<string, string>): number => {
    const celsius = ((number(row, 'temp_F') - 32) * 5) / 9;
    return 100 * equilibriumMoisture(celsius, number(row, 'rh_percent') / 100);
  };

  test.each(rows)('$temp_F °F, $rh_percent % RH: $emc_percent_table %', (row) => {
    // Half a unit of the last digit is 0.05; the equation with its printed coefficients itself misses that by up to
    // 0.0045.
    expect(Math.abs(percentAt(row) - number(row, 'emc_percent_table'))).toBeLessThan(0.055);
  });

  test('all but four points round to the printed digit; those four lie on the edge between two', () => {
    const others = rows.filter(
      (row) => Math.round(10 * percentAt(row)) !== Math.round(10 * number(row, 'emc_percent_table')),
    );
    expect(others.map((row) => `${row.temp_F} °F ${row.rh_percent} %`)).toEqual([
      '60.0 °F 30 %',
      '70.0 °F 85 %',
      '90.0 °F 85 %',
      '110.0 °F 95 %',
    ]);
  });

  test('humidity from moisture is the inverse at every point of the table', () => {
    for (const row of rows) {
      const celsius = number(row, 'temp_C');
      const humidity = number(row, 'rh_percent') / 100;
      expect(humidityForMoisture(celsius, equilibriumMoisture(celsius, humidity))).toBeCloseTo(humidity, 10);
    }
  });
});

describe('stiffness and strength with moisture, Wood Handbook FPL-GTR-282 (2021) Eq. 5-3', () => {
  const rows = readTable('wood-mc-adjustment.csv');
  const value = (item: string): number =>
    number(
      rows.find((row) => row.item!.startsWith(item))!,
      'value_si',
    );

  test('worked example p. 5-34: white ash, bending strength at 8 %, 119.5 MPa', () => {
    const strength = propertyAtMoisture(103e6, 66e6, 0.08, 0.24);
    expect(off(strength, value('worked example'))).toBeLessThan(0.0005);
  });

  test.each([
    ['Sitka MOE at 8 % MC', 10800e6, 8500e6, 0.27],
    ['sugar maple MOE at 8 %', 12600e6, 10700e6, 0.25],
    ['Engelmann MOE at 8 %', 8900e6, 7100e6, 0.25],
  ] as const)('%s (table values, recomputed; the green value of Sitka from memory)', (item, dry, green, mp) => {
    expect(off(propertyAtMoisture(dry, green, 0.08, mp), value(item))).toBeLessThan(0.0005);
  });

  const table = rows.flatMap((row) => {
    if (!row.item!.startsWith('Mp ')) return [];
    const [name, kind] = row.item!.slice(3).split(', ');
    return [[(kind ? `${kind}-${name}` : name!).toLowerCase().replaceAll(' ', '-'), number(row, 'value_si')] as const];
  });

  test('Table 5-13: what the library says of its species, and what is taken of any other', () => {
    const library = readFileSync('language/catalogue/species.bookmatch', 'utf8');
    const found = table.filter(([species, percent]) => {
      if (species === 'any-other-species') expect(100 * USUAL_INTERSECTION_MOISTURE).toBeCloseTo(percent, 10);
      const own = new RegExp(`^species ${species} \\{[^}]*?(?:\\{[^}]*\\}[^}]*?)*?^ {2}turning-point: (\\d+) %MC`, 'm');
      const said = own.exec(library)?.[1];
      if (said !== undefined) expect(Number(said)).toBe(percent);
      return said !== undefined;
    });
    expect(found.map(([species]) => species)).toEqual(
      expect.arrayContaining(['sitka-spruce', 'douglas-fir', 'redwood']),
    );
  });
});

describe('movement coefficients, Wood Handbook FPL-GTR-190 Table 13-5, from the shrinkages of Table 4-3', () => {
  const EXTRACTIVE = ['redcedar, western', 'redwood, old-growth', 'redwood, young-growth'];
  // Left out: sweet birch, which the table gives with yellow birch's coefficients; mahoganies and teak, tropical woods
  // whose
  // two tables, both known from memory only, do not follow from one another.
  const LEFT_OUT = ['birch, sweet', 'mahogany, true', 'mahogany, African', 'teak'];
  const cases = readTable('wood-shrinkage.csv')
    .filter((row) => !LEFT_OUT.includes(row.species!))
    .flatMap((row) =>
      [
        { way: 'radial', shrinkage: row.radial_percent!, coefficient: row.C_R_per_percent! },
        { way: 'tangential', shrinkage: row.tangential_percent!, coefficient: row.C_T_per_percent! },
      ].map((way) => ({
        species: row.species!,
        known: row.known,
        from: row.C_R_over_6_14_source!.split(':')[0],
        ...way,
      })),
    )
    .filter((way) => way.shrinkage !== '' && way.coefficient !== '');

  test('enough species to mean something', () => expect(cases.length).toBe(40));

  test.each(cases)('$species, $way: $coefficient (coefficient $from, shrinkage $known)', (way) => {
    const saturation = EXTRACTIVE.includes(way.species) ? 0.22 : 0.3;
    const coefficient = movementCoefficient(Number(way.shrinkage) / 100, saturation);
    expect(Math.abs(coefficient - Number(way.coefficient))).toBeLessThanOrEqual(1.0e-5);
  });
});
