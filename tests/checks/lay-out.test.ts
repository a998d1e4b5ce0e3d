import { describe, expect, it } from 'vitest';
import { VENNICK } from '../recipes/shop-of.js';
import { check, codesOf, expectMarked, finding } from './marked-text.js';

describe('lay-out', () => {
  it('of a sound model gives no finding', () => {
    expect(codesOf(VENNICK).filter((code) => code === 'off-the-plate' || code === 'sizes-disagree')).toEqual([]);
  });

  it('finds a brace that ends beyond the edge, where its end is written', () => {
    const text = VENNICK.replace('to: (405 mm, -92 mm)', 'to: (405 mm, -292 mm)');
    const { message } = finding(check(text), 'off-the-plate');
    expect(message).toMatch(
      /^bracing\.x-treble\.to lies outside the body: at station 405 mm the body is 14\d(\.\d)? mm wide/,
    );
  });

  it('finds it in the recipe that makes the body smaller', () => {
    const text = `${VENNICK}recipe v-1 for vennick { }
recipe v-2 from v-1 {
  because "A narrow one."
  change body.upper-bout.width: 286 mm -> 250 mm
  change body.waist.width: 241 mm -> 200 mm
  change bracing.x-bass.from: (78 mm, -150 mm) -> (20 mm, -180 mm)
}`;
    expect(
      check(text)
        .findings.filter(({ code }) => code === 'off-the-plate')
        .map(({ message }) => message),
    ).toEqual([expect.stringContaining('bracing.x-bass.from')]);
  });

  it('finds a hole that does not lie on the top', () => {
    expect(
      codesOf(VENNICK.replace('diameter: 101 mm  station: 335 mm', 'diameter: 101 mm  station: 460 mm')),
    ).toContain('off-the-plate');
  });

  it('finds sizes the wrong way round', () => {
    expectMarked(`
model tarn {
  top { thickness: 2.4 mm  edge-thickness: 2.8 mm }
  //                       ^^^^^^^^^^^^^^^^^^^^^^ sizes-disagree: thicker at the edge
  bracing.x-bass { height: 15 mm  end-height: 16 mm }
  //                              ^^^^^^^^^^^^^^^^^ sizes-disagree: higher there than its full height
}`);
  });
});
