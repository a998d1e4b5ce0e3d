import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readNumber } from '../../language/quantities/number.js';

describe('numbers as builders write them', () => {
  it.each([
    ['2.85', 2.85],
    ['.110', 0.11],
    ['5.', 5],
    ['110', 110],
    ['-0.15', -0.15],
    ['+3', 3],
    ['−3', -3],
    ['7/64', 7 / 64],
    ['9/10', 0.9],
    ['1 3/4', 1.75],
    ['1-3/4', 1.75],
    ['-1 3/4', -1.75],
    ['1¾', 1.75],
    ['½', 0.5],
    ['3⁄8', 0.375],
    ['7 / 64', 7 / 64],
    ['1.5e-3', 0.0015],
    ['  12 ', 12],
    ['0', 0],
  ])('%s is %d', (written, number) => {
    expect(readNumber(written)).toEqual({ ok: true, number });
  });

  it.each([
    ['1,5', 'decimals are written with a point', ['1.5']],
    ['0,110', 'decimals are written with a point', ['0.110']],
    ['1,500', 'thousands or decimals', ['1.500', '1500']],
    ['1,234,567', 'without commas', ['1234567']],
    ['1 500', 'without the spaces', ['1500']],
    ['1 7/4', 'less than one', ['2 3/4']],
    ['-2 8/4', 'less than one', ['-4']],
    ['1/0', 'divides by zero', []],
    ['', 'missing', []],
    ['abc', 'not a number', []],
    ['1.2.3', 'not a number', []],
    ['1/2/3', 'not a number', []],
    ['NaN', 'not a number', []],
    ['Infinity', 'not a number', []],
    ['1e999', 'too large', []],
    ['1,2,3,', 'not a number', []],
    ['9'.repeat(1000), 'too long', []],
  ])('%s is asked about', (written, words, suggestions) => {
    const reading = readNumber(written);
    expect(reading).toMatchObject({ ok: false, code: 'bad-number', suggestions });
    expect(reading.ok ? '' : reading.message).toContain(words);
  });

  it('every suggestion can itself be read', () => {
    for (const written of ['1,5', '0,110', '1,500', '1,234,567', '1 500', '1 7/4', '-2 8/4', '12,5']) {
      const reading = readNumber(written);
      const suggestions = reading.ok ? [] : reading.suggestions;
      expect(suggestions.length).toBeGreaterThan(0);
      for (const suggestion of suggestions) expect(readNumber(suggestion).ok).toBe(true);
    }
  });

  it('reads back every finite number and never throws on any text', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 }), (number) => {
        const reading = readNumber(String(number));
        expect(reading.ok && reading.number).toBe(number + 0);
      }),
    );
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...Array.from('0123456789.,/+-e ¾⁄−x"')) }), (text) => {
        const reading = readNumber(text);
        expect(reading.ok ? Number.isFinite(reading.number) : reading.message.length > 0).toBe(true);
      }),
    );
  });
});
