import { describe, expect, it } from 'vitest';
import { TOPS, VENNICK } from '../recipes/shop-of.js';
import { check, codesOf, expectMarked, finding, fixed } from './marked-text.js';

const BASE = `${TOPS}${VENNICK}recipe v-1 for vennick { top { wood: sitka-31  thickness: 2.8 mm } }
`;

function child(...lines: readonly string[]): string {
  return `${BASE}recipe v-2 from v-1 {\n  because "To see."\n${lines.map((line) => `  ${line}\n`).join('')}}`;
}

describe('a hold', () => {
  it('that is solved gives no finding', () => {
    const codes = codesOf(
      child('change top.wood: sitka-31 -> engelmann-37', 'hold top.stiffness.along by top.thickness'),
    );
    expect(codes.filter((code) => code.startsWith('hold'))).toEqual([]);
  });

  it('out of reach says how close it came, and where', () => {
    const { message } = finding(
      check(child('hold top.stiffness.along at 90 N·m by top.thickness')),
      'hold-out-of-reach',
    );
    expect(message).toMatch(
      /cannot be held at 90 N·m: between .* mm and 3\.\d mm the nearest is [\d.]+ N·m \(−\d+ %\), with top\.thickness at 3\.\d mm/,
    );
  });

  it('of a second quantity by the same size is one too many', () => {
    const text = child(
      'change top.wood: sitka-31 -> engelmann-37',
      'hold top.stiffness.along by top.thickness',
      'hold top.mass by top.thickness',
    );
    const found = check(text).findings.filter(({ code }) => code === 'hold-loop');
    expect(found).toHaveLength(2);
    expect(found[0]!.message).toContain('top.thickness cannot serve two holds');
  });

  it('by something that does not move it, of something unknown, or of nothing, says so in place', () => {
    expectMarked(
      `${BASE}recipe v-2 from v-1 {
  because "To see."
  hold top.mass by bridge.height
  //^^^^^^^^^^^^^^^^^^^^^^^^^^^^ hold-no-effect: top.mass does not depend on bridge.height.
  hold back.mass by top.thickness
  //^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ hold-unknown: back.wood
  hold top.loudness by top.thickness
  //   ^^^^^^^^^^^^ hold-not-possible: top.loudness is not a quantity that is computed
}`.replace(/ {2}\/\/\^\^/g, '//^^^^'),
    );
  });

  it('without a size to move gets the usual one', () => {
    const text = child('hold top.stiffness.along');
    expect(fixed(check(text), 'hold-without-by', 'Add')).toBe(child('hold top.stiffness.along by top.thickness'));
  });
});

describe('an expectation', () => {
  const expecting = (line: string) => `${BASE}recipe v-2 from v-1 { because "To see."  expect ${line} }`;

  it('that is met gives no finding, one missed the number and by how much', () => {
    expect(codesOf(expecting('top.mass: below 200 g')).filter((code) => code.startsWith('expectation'))).toEqual([]);
    expect(finding(check(expecting('top.mass: below 150 g')), 'expectation-missed').message).toMatch(
      /^top\.mass comes to \d+\.\d+ ± \d+\.\d+ g: [\d.]+ g above what is expected \(below 150 g\)\.$/,
    );
    expect(finding(check(expecting('top.mass: 170..185 g')), 'expectation-missed').message).toMatch(
      /[\d.]+ g below what is expected/,
    );
  });

  it('missed by less than the ± says that it may still be met', () => {
    const message = (line: string) => finding(check(expecting(line)), 'expectation-missed').message;
    const [, mass, spread] = /comes to ([\d.]+) ± ([\d.]+) g/.exec(message('top.mass: below 150 g'))!;
    const justBelow = Number(mass) - Number(spread) / 2;
    expect(message(`top.mass: below ${justBelow.toFixed(2)} g`)).toMatch(/within the ±: it may still/);
    expect(message('top.mass: below 150 g')).not.toMatch(/within the ±/);
  });

  it('of something that cannot be computed names what is missing', () => {
    expect(finding(check(expecting('back.mass: below 300 g')), 'expectation-unknown').message).toContain('back.wood');
  });

  it('of a misspelled quantity offers the right one', () => {
    const text = expecting('top.stiffness.alnog: below 30 N·m');
    expect(fixed(check(text), 'expectation-not-a-quantity', 'Write top.stiffness.along')).toContain(
      'expect top.stiffness.along:',
    );
  });

  it('that is no bound says what one looks like', () => {
    expect(finding(check(expecting('top.mass: light')), 'expectation-not-a-quantity').message).toContain(
      '`below 190 g`',
    );
  });
});
