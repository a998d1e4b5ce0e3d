/** Fret places against published tables. */
import { expect, test } from 'vitest';
import { fretPlace } from '../../language/mechanics/strings/frets.js';
import { number, readTable } from './table.js';

const rows = readTable('frets.csv');

test('all three tables are here', () => expect(rows.length).toBe(35));

test.each(rows)('fret $fret on $scale_mm mm: $published_fret_to_bridge_mm mm to the bridge ($source)', (row) => {
  const scale = number(row, 'scale_mm') / 1000;
  const toBridge = scale - fretPlace(scale, number(row, 'fret'));
  if (row.published_fret_to_bridge_in !== '' && number(row, 'scale_in') === 25) {
    // Printed to a thousandth of an inch.
    expect(Math.abs(toBridge / 0.0254 - number(row, 'published_fret_to_bridge_in'))).toBeLessThanOrEqual(0.00051);
  } else {
    // Printed as nut to fret, to 0.01 mm (one row to 1e-7 mm).
    const allowed = number(row, 'scale_mm') === 650 ? 1.1e-10 : 5.1e-6;
    expect(Math.abs(toBridge - number(row, 'published_fret_to_bridge_mm') / 1000)).toBeLessThanOrEqual(allowed);
  }
  expect(fretPlace(scale, number(row, 'fret')) / fretPlace(1, number(row, 'fret'))).toBeCloseTo(scale, 12);
});
