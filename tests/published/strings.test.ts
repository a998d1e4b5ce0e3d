/** String weights and tensions against published charts. */
import { describe, expect, test } from 'vitest';
import { STEEL_WIRE_DENSITY, stringWeight, type StringKind } from '../../language/mechanics/strings/string-weight.js';
import { stringTension } from '../../language/mechanics/strings/string-tension.js';
import { number, off, readTable } from './table.js';

/** Hz, of a note so many semitones above A4 = 440 Hz (ISO 16). */
const pitchFrequency = (semitones: number): number => 440 * 2 ** (semitones / 12);

const INCH = 0.0254;
/** Exact: 0.45359237 kg × 9.80665 m/s². */
const POUND_FORCE = 4.4482216152605;
/** kg/m per lb/in */
const POUND_PER_INCH = 0.45359237 / INCH;

const KINDS: Record<string, StringKind> = {
  'plain steel': 'plain steel',
  'nickel-plated steel round wound': 'nickel-plated steel',
  'stainless round wound': 'stainless steel',
  'stainless flat wound': 'stainless flat wound',
  'phosphor bronze round wound': 'phosphor bronze',
};
const chart = readTable('strings.csv');
const weightOf = (kind: StringKind, thousandths: number): number =>
  stringWeight(kind, thousandths * 0.001 * INCH).massPerLength;

describe('unit weights, D’Addario string tension brochure (public transcriptions; phosphor bronze from memory)', () => {
  test('the whole chart is here', () => expect(chart.length).toBe(68));

  test.each(chart)('$item $material: $unit_weight_lb_per_in lb/in ($known)', (row) => {
    const published = number(row, 'unit_weight_lb_per_in') * POUND_PER_INCH;
    expect(off(published, number(row, 'value_si_kg_per_m'))).toBeLessThan(1e-5);
    const { massPerLength } = stringWeight(KINDS[row.material!]!, number(row, 'diameter_in') * INCH);
    // Plain 1 %, round wound 3 %. Flat wound: the chart itself jumps by 7 % between neighbours, which no smooth rule
    // follows.
    const allowed = row.material === 'plain steel' ? 0.01 : row.material === 'stainless flat wound' ? 0.042 : 0.03;
    expect(off(massPerLength, published)).toBeLessThan(allowed);
  });

  test('music wire of 7807 kg/m³ fits the plain strings from 0.010 in up within 0.05 %', () => {
    const thick = chart.filter((row) => row.material === 'plain steel' && number(row, 'diameter_in') >= 0.01);
    for (const row of thick) {
      const density = number(row, 'value_si_kg_per_m') / ((Math.PI * (number(row, 'diameter_in') * INCH) ** 2) / 4);
      expect(off(density, STEEL_WIRE_DENSITY)).toBeLessThan(0.0005);
    }
  });
});

/** Semitones from A4 of the open strings, treble first. */
const E4 = -5;
const B3 = -10;
const G3 = -14;
const D3 = -19;
const A2 = -24;
const E2 = -29;
const STANDARD = [E4, B3, G3, D3, A2, E2];

function pounds(kind: StringKind, thousandths: number, note: number, scaleInch: number): number {
  return stringTension(weightOf(kind, thousandths), pitchFrequency(note), scaleInch * INCH) / POUND_FORCE;
}

const totals = readTable('string-set-totals.csv');

describe('set totals from gauges, jakewildwood.blogspot.com (2015), gauges as usual for the names', () => {
  const SETS: Record<string, number[]> = {
    'light 12-54': [12, 16, 24, 32, 42, 54],
    'medium (13-56)': [13, 17, 26, 35, 45, 56],
  };
  const kindOf = (thousandths: number): StringKind => (thousandths < 20 ? 'plain steel' : 'phosphor bronze');
  const cases = totals.filter((row) => row.case! in SETS);
  test('both sets at five scales', () => expect(cases.length).toBe(10));
  test.each(cases)('$case at $scale_in in: $tension_lbf lbf', (row) => {
    const total = SETS[row.case!]!.reduce(
      (sum, gauge, i) => sum + pounds(kindOf(gauge), gauge, STANDARD[i]!, number(row, 'scale_in')),
      0,
    );
    expect(off(total, number(row, 'tension_lbf'))).toBeLessThan(0.03);
  });
});

describe('single strings at 25.5 in, watchalan.com chart', () => {
  const D4 = -7;
  test.each([
    ["D .014 (d')", 'plain steel', 14, D4],
    ['B .016', 'plain steel', 16, B3],
    ['G .025', 'phosphor bronze', 25, G3],
    ['D .034', 'phosphor bronze', 34, D3],
    ['G2 .047', 'phosphor bronze', 47, -26],
  ] as const)('%s', (name, kind, gauge, note) => {
    const row = totals.find((each) => each.case === name)!;
    expect(off(pounds(kind, gauge, note, 25.5), number(row, 'tension_lbf'))).toBeLessThan(
      kind === 'plain steel' ? 0.01 : 0.03,
    );
  });
});

test('phosphor bronze .024, .032 and .042 at G3, D3, A2 and 25.5 in: 30.2, 30.5, 29.9 lbf (brochure, from memory)', () => {
  expect(off(pounds('phosphor bronze', 24, G3, 25.5), 30.2)).toBeLessThan(0.03);
  expect(off(pounds('phosphor bronze', 32, D3, 25.5), 30.5)).toBeLessThan(0.03);
  expect(off(pounds('phosphor bronze', 42, A2, 25.5), 29.9)).toBeLessThan(0.03);
});
