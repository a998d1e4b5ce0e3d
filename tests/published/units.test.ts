/**
 * Unit factors against outside numbers: the factors of NIST Special Publication 811 (2008), Appendix B, and UCUM, as
 * collected in data/unit-factors.csv with the source of each row; the exact ratios those definitions imply; and the
 * conversions of the mathjs library.
 */
import { readFileSync } from 'node:fs';
import { unit as mathUnit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { fromSi, toSi, unit } from '../../language/quantities/units.js';
import { STANDARD_GRAVITY } from '../../language/quantities/units/define.js';

/** The row's name in the file -> the language's spelling. */
const SPELLING: Readonly<Record<string, string>> = {
  inch: 'in',
  foot: 'ft',
  'mil (0.001 in)': 'mil',
  'pound (avoirdupois)': 'lb',
  'ounce (avoirdupois)': 'oz',
  'pound-force': 'lbf',
  'ounce-force': 'ozf',
  'kilogram-force': 'kgf',
  psi: 'psi',
  ksi: 'ksi',
  'lb/ft3': 'lb/ft3',
  'lb/in (unit weight)': 'lb/in',
  'lb/in3': 'lb/in3',
  'lbf.in (torque)': 'lbf.in',
  'lbf/in (stiffness)': 'lbf/in',
  'degree Celsius': '°C',
  'degree Fahrenheit': '°F',
  percent: '%',
  'degree of arc': 'deg',
  gigapascal: 'GPa',
  millimetre: 'mm',
  gram: 'g',
};

interface Row {
  readonly name: string;
  readonly ucum: string;
  readonly value: string;
  readonly si: string;
  readonly exact: string;
}

const ROWS: readonly Row[] = readFileSync(new URL('data/unit-factors.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [name = '', ucum = '', value = '', si = '', exact = ''] = cells(line);
    return { name, ucum, value, si, exact };
  });

describe('every row of the factor table', () => {
  it('has 24 rows, all of them looked at below', () => {
    const elsewhere = ['standard gravity', 'cent (music)'];
    expect(ROWS).toHaveLength(24);
    expect(ROWS.filter(({ name }) => SPELLING[name] === undefined && !elsewhere.includes(name))).toEqual([]);
  });

  it.each(ROWS.filter(({ name }) => SPELLING[name] !== undefined))('$name', ({ name, ucum, value, si, exact }) => {
    const found = unit(SPELLING[name]!)!;
    const written = Number(value);
    // Exact rows to double rounding. The derived ones, and the ounce-force, are written with fewer digits than they have,
    // some cut and not rounded: within their last digit (the exact ratios below hold them to double rounding).
    const complete = exact === 'yes' && name !== 'ounce-force';
    const slack = complete ? Number.EPSILON * written : Math.max(lastPlace(value), Number.EPSILON * written);
    expect(Math.abs(found.factor - written)).toBeLessThanOrEqual(slack);
    expect(found.ucum).toBe(ucum);
    const offset = /offset ([\d.]+)( F)?/.exec(si);
    if (offset === null) expect(found.offset).toBeUndefined();
    else expect(found.offset).toBeCloseTo(Number(offset[1]) * (offset[2] === undefined ? 1 : 5 / 9), 12);
  });

  it('standard gravity', () => {
    expect(STANDARD_GRAVITY).toBe(Number(ROWS.find(({ name }) => name === 'standard gravity')?.value));
  });

  it('the cent: 1200 log2(f2/f1)', () => {
    expect(ROWS.find(({ name }) => name === 'cent (music)')?.ucum).toContain('1200 log2(f2/f1)');
    expect(fromSi(Math.log2(440 / 220), unit('cents')!)).toBe(1200);
    expect(fromSi(Math.log2(3 / 2), unit('cents')!)).toBeCloseTo(701.955, 3); // the just fifth (from memory)
  });
});

describe('factors as exact ratios of whole numbers', () => {
  // 1 in = 254/10^4 m, 1 lb = 45359237/10^8 kg, g = 980665/10^5 m/s² (NIST SP 811, App. B), in whole numbers.
  const IN: Ratio = [254n, 10_000n];
  const FT = times(IN, [12n, 1n]);
  const LB: Ratio = [45_359_237n, 100_000_000n];
  const G: Ratio = [980_665n, 100_000n];
  const LBF = times(LB, G);
  const PSI = over(over(LBF, IN), IN);
  it.each<[string, Ratio]>([
    ['in', IN],
    ['thou', over(IN, [1000n, 1n])],
    ['ft', FT],
    ['in2', times(IN, IN)],
    ['ft2', times(FT, FT)],
    ['in3', times(times(IN, IN), IN)],
    ['lb', LB],
    ['oz', over(LB, [16n, 1n])],
    ['lbf', LBF],
    ['ozf', over(LBF, [16n, 1n])],
    ['gf', over(G, [1000n, 1n])],
    ['psi', PSI],
    ['ksi', times(PSI, [1000n, 1n])],
    ['Mpsi', times(PSI, [1_000_000n, 1n])],
    ['lb/ft3', over(over(over(LB, FT), FT), FT)],
    ['lb/in3', over(over(over(LB, IN), IN), IN)],
    ['lb/in', over(LB, IN)],
    ['lbf/in', over(LBF, IN)],
    ['lbf.in', times(LBF, IN)],
    ['lbf.ft', times(LBF, FT)],
    ['lbf.in2', times(times(LBF, IN), IN)],
  ])('%s', (spelling, ratio) => {
    const exact = nearestDouble(ratio);
    expect(Math.abs(unit(spelling)!.factor / exact - 1)).toBeLessThanOrEqual(2 * Number.EPSILON);
  });
});

describe('definitions of UCUM (table of units, ucum-essence)', () => {
  it.each([
    ['in', 2.54, 'cm'],
    ['ft', 12, 'in'],
    ['mil', 1e-3, 'in'],
    ['in2', 1, 'sq in'],
    ['lb', 7000 * 64.79891, 'mg'],
    ['oz', 1 / 16, 'lb'],
    ['lbf', 0.45359237 * 9.80665, 'N'],
    ['gf', 9.80665e-3, 'N'],
    ['deg', (2 * Math.PI) / 360, 'rad'],
    ['L', 1000, 'cm3'],
    ['h', 60, 'min'],
    ['day', 24, 'h'],
    ['week', 7, 'days'],
  ])('1 %s is %d %s', (spelling, number, other) => {
    expect(toSi(1, unit(spelling)!) / toSi(number, unit(other)!)).toBeCloseTo(1, 15);
  });

  it('a degree Fahrenheit is 5/9 K', () => {
    expect(unit('°F')!.factor).toBe(5 / 9);
  });
});

describe('conversions of mathjs', () => {
  // Number, from, to, and the two in mathjs's spelling. Its pound per square inch is rounded, so it is composed, a
  // million of them by the factor at the end.
  const pairs: [number, string, string, string, string, number?][] = [
    [0.11, 'in', 'mm', 'inch', 'mm'],
    [110, 'thou', 'mm', 'mil', 'mm'],
    [5, 'mil', 'µm', 'mil', 'um'],
    [28, 'ft', 'm', 'ft', 'm'],
    [495, 'mm', 'in', 'mm', 'inch'],
    [0.135, 'm²', 'in²', 'm^2', 'inch^2'],
    [3, 'ft²', 'cm²', 'ft^2', 'cm^2'],
    [13.2, 'L', 'in³', 'L', 'inch^3'],
    [820, 'in³', 'L', 'inch^3', 'L'],
    [172, 'g', 'oz', 'g', 'oz'],
    [1.1, 'oz', 'g', 'oz', 'g'],
    [4.5, 'lb', 'kg', 'lbm', 'kg'],
    [412, 'kg/m³', 'lb/ft³', 'kg/m^3', 'lbm/ft^3'],
    [25.7, 'pcf', 'g/cc', 'lbm/ft^3', 'g/cm^3'],
    [0.0005, 'lb/in', 'g/m', 'lbm/inch', 'g/m'],
    [163, 'lbf', 'N', 'lbf', 'N'],
    [730, 'N', 'lbf', 'N', 'lbf'],
    [2.268, 'kgf', 'N', 'kgf', 'N'],
    [1.6, 'Mpsi', 'GPa', 'lbf/inch^2', 'GPa', 1e6],
    [12, 'GPa', 'psi', 'GPa', 'lbf/inch^2'],
    [52, 'kN/m', 'lbf/in', 'kN/m', 'lbf/inch'],
    [300, 'lbf/in', 'N/mm', 'lbf/inch', 'N/mm'],
    [9.3, 'N·m', 'lbf·in', 'N m', 'lbf inch'],
    [7, 'lbf·ft', 'N·m', 'lbf ft', 'N m'],
    [15.9, 'N·m²', 'lbf·in²', 'N m^2', 'lbf inch^2'],
    [1.5, 'deg', 'rad', 'deg', 'rad'],
    [20, '°C', '°F', 'degC', 'degF'],
    [68, '°F', '°C', 'degF', 'degC'],
    [45, '°C', 'K', 'degC', 'K'],
    [14, 'days', 'h', 'day', 'hour'],
    [7, 'weeks', 'days', 'week', 'day'],
    [1.2, 'kHz', 'Hz', 'kHz', 'Hz'],
  ];

  it.each(pairs)('%d %s in %s', (number, from, to, theirFrom, theirTo, scale = 1) => {
    const ours = fromSi(toSi(number, unit(from)!), unit(to)!);
    const theirs = mathUnit(number * scale, theirFrom).toNumber(theirTo);
    // A temperature is rounded as kelvin on the way.
    const size = Math.max(Math.abs(theirs), unit(from)!.offset ?? 0);
    expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(1e-15 * size);
  });
});

type Ratio = readonly [top: bigint, bottom: bigint];

function times([a, b]: Ratio, [c, d]: Ratio): Ratio {
  return [a * c, b * d];
}

function over([a, b]: Ratio, [c, d]: Ratio): Ratio {
  return [a * d, b * c];
}

/** The ratio to 30 decimals, then rounded once. */
function nearestDouble([top, bottom]: Ratio): number {
  const scaled = (top * 10n ** 30n) / bottom;
  return Number(`${scaled}e-30`);
}

/** One unit in the last digit written: 0.01 for `12.34`. */
function lastPlace(written: string): number {
  const [mantissa = '', exponent = '0'] = written.toLowerCase().split('e');
  return 10 ** (Number(exponent) - (mantissa.split('.')[1]?.length ?? 0));
}

/** The cells of one line of a CSV file (RFC 4180). */
function cells(line: string): string[] {
  return [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(([, quoted, plain]) => quoted ?? plain ?? '');
}
