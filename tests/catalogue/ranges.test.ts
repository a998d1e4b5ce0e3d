/**
 * Low, typical and high of some 350 workshop figures, each with the property that carries it or the reason why none
 * does. The figures are published by the sites named beside the ranges, common practice, or from memory.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../language/catalogue/catalogue.js';
import { plausible } from '../../language/catalogue/plausible.js';
import { toSi, unit } from '../../language/quantities/units.js';

interface Row {
  readonly parameter: string;
  readonly unit: string;
  readonly figures: readonly [low: number, typical: number, high: number];
  readonly path: string;
  readonly of: string;
  readonly reason: string;
}

const ROWS = readRows();

/** How the trade writes a unit, where it differs from the language’s symbol. */
const SYMBOLS: Readonly<Record<string, string>> = {
  m2: 'm²',
  cm2: 'cm²',
  'kg/m3': 'kg/m³',
  'N m': 'N·m',
  '% MC': '%MC',
  C: '°C',
  percent: '%',
};
const PURE = new Set(['ratio', '-', 'count', 'fret', 'frets']);

describe('every figure of the workshop', () => {
  it('is carried by a property, or a reason says why not', () => {
    expect(new Set(ROWS.map((row) => row.parameter)).size).toBe(351);
    for (const row of ROWS) expect(row.path !== '' || row.reason.length > 10, row.parameter).toBe(true);
    expect(ROWS.filter((row) => row.path === '').length).toBeLessThanOrEqual(28);
  });

  it.each(ROWS.filter((row) => row.path !== ''))('$parameter stands at $path', (row) => {
    const [low, typical, high] = inSi(row);
    const close = (a: number, b: number) => Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));
    const found = catalogue.all
      .filter((property) => property.path === row.path)
      .flatMap((property) => property.ranges)
      .filter((range) => (range.of ?? '') === row.of);
    expect(
      found.some((range) => close(range.low, low) && close(range.typical, typical) && close(range.high, high)),
    ).toBe(true);
  });
});

describe('the plausible range', () => {
  const range = (path: string, tags: readonly string[]) => {
    const property = catalogue.property(path);
    return property && plausible(property, tags, path);
  };

  it('is the one with most tags that hold', () => {
    expect(range('top.thickness', ['om', 'sitka-spruce'])).toMatchObject({
      low: 2.4e-3,
      typical: 2.8e-3,
      high: 3.2e-3,
    });
    expect(range('top.thickness', ['om', 'engelmann-spruce'])?.typical).toBeCloseTo(2.95e-3, 12);
    expect(range('top.thickness', ['parlor', 'sitka-spruce'])?.typical).toBeCloseTo(2.5e-3, 12);
    expect(range('back.thickness', ['om', 'cocobolo'])?.typical).toBeCloseTo(2.3e-3, 12);
  });

  it('knows that a form is of a kind: an OM has steel strings', () => {
    expect(range('scale', ['om'])?.of).toBe('steel-string');
    expect(range('scale', ['classical-body'])?.of).toBe('classical');
    expect(range('bridge.mass', ['flamenco'])?.of).toBe('classical');
  });

  it('tells the role of a brace from its name', () => {
    expect(range('bracing.x-bass.height', ['om'])?.of).toBe('x');
    expect(range('bracing.x-treble.height', ['parlor'])?.of).toBe('x parlor');
    expect(range('bracing.tone-bar-2.width', ['om'])?.of).toBe('tone-bar');
    expect(range('bracing.fan-3.height', ['classical'])?.of).toBe('fan');
    expect(range('back-bracing.back-4.width', ['om'])?.of).toBe('back-lower');
    expect(range('bracing.whatever.height', ['om'])?.of).toBeUndefined();
  });

  it('is as wide as all of them together when the instrument is not known', () => {
    const all = range('scale', []);
    expect(all?.low).toBeCloseTo(0.597, 12);
    expect(all?.high).toBeCloseTo(0.74, 12);
  });

  it('is unknown where no figure is known', () => {
    expect(range('top.wood', ['om'])).toBeUndefined();
    expect(catalogue.plausibleSpan('no.such.path')).toBeUndefined();
  });
});

function inSi({ unit: written, figures }: Row): readonly [number, number, number] {
  const [low, typical, high] = figures;
  if (PURE.has(written)) return figures;
  // A slope of one in n is an angle, steepest for the smallest n; lines to the centimetre are a spacing. Both are kept
  // to three decimals of a degree or a millimetre.
  const rounded = (value: number) => Math.round(value * 1000) / 1000;
  const degrees = (n: number) => (rounded((Math.atan(1 / n) * 180) / Math.PI) * Math.PI) / 180;
  if (written === '1 in n') return [degrees(high), degrees(typical), degrees(low)];
  const spacing = (lines: number) => rounded(10 / lines) * 1e-3;
  if (written === 'per cm') return [spacing(high), spacing(typical), spacing(low)];
  const milli = written === '1e-3 s/kg';
  const found = unit(milli ? 's/kg' : (SYMBOLS[written] ?? written));
  if (!found) throw new Error(`no unit ${written}`);
  const si = (value: number) => toSi(milli ? value / 1000 : value, found);
  return [si(low), si(typical), si(high)];
}

function readRows(): readonly Row[] {
  const text = readFileSync(new URL('./data/workshop-ranges.csv', import.meta.url), 'utf8');
  return text
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => {
      const cells = [...line.matchAll(/(?:^|,)(?:"([^"]*)"|([^,]*))/g)].map((cell) => cell[1] ?? cell[2] ?? '');
      const [parameter = '', written = '', low, typical, high, path = '', of = '', reason = ''] = cells;
      return { parameter, unit: written, figures: [Number(low), Number(typical), Number(high)], path, of, reason };
    });
}
