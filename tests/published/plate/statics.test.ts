/** Plates under load against Timoshenko's and Roark's coefficients. */
import { expect, test } from 'vitest';
import type { Point } from '../../../language/mechanics/plate/index.js';
import { coefficient, edgeOf } from './loaded-plates.js';
import { CLAMPED } from './reference-tops.js';
import { readTable } from './tables.js';

const rows = readTable('top-plate-static.csv');

test('rectangular plates: centre deflection within 1 % (Timoshenko & Woinowsky-Krieger, 1959)', () => {
  for (const row of rows.filter(({ case: name }) => name === 'rectangular plate centre deflection')) {
    const long = Number(row.b_over_a);
    const outline: readonly Point[] = [
      [0, 0],
      [1, 0],
      [1, long],
      [0, long],
    ];
    const found = coefficient(outline, edgeOf(row.boundary), [0.5, long / 2], row.load!);
    expect.soft(Math.abs(found / Number(row.value_si) - 1), `${row.boundary} ${row.load} ${long}`).toBeLessThan(0.01);
  }
});

test('circular plates: centre deflection within 1 %', () => {
  const outline = Array.from({ length: 240 }, (_, k): Point => [
    Math.cos((k * Math.PI) / 120),
    Math.sin((k * Math.PI) / 120),
  ]);
  for (const row of rows.filter(({ case: name }) => name!.includes('circular'))) {
    const found = coefficient(outline, edgeOf(row.boundary), [0, 0], row.load!);
    expect.soft(Math.abs(found / Number(row.value_si) - 1), `${row.boundary} ${row.load}`).toBeLessThan(0.01);
  }
});

test('clamped ellipse under even pressure: closed form within 1 % (Timoshenko & Woinowsky-Krieger, §71)', () => {
  const [a, b] = [1, 0.5];
  const outline = Array.from({ length: 240 }, (_, k): Point => [
    a * Math.cos((k * Math.PI) / 120),
    b * Math.sin((k * Math.PI) / 120),
  ]);
  const exact = 1 / (24 / a ** 4 + 24 / b ** 4 + 16 / (a * a * b * b));
  expect(Math.abs(coefficient(outline, CLAMPED, [0, 0], 'uniform') / exact - 1)).toBeLessThan(0.01);
});
