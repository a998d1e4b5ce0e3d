/** What is heard, on the path a maker takes: a recipe beside its parent. */
import { describe, expect, it } from 'vitest';
import { comparisonTable } from '../../language/reports/comparison/comparison-table.js';
import { Asking } from '../../language/recipes/evaluation/asking.js';
import { heardOf } from '../../language/recipes/derived/voice-board.js';
import { voicePlate } from '../../language/recipes/derived/voice-plates.js';
import { bracedShop } from './braced-shop.js';

const { workshop } =
  bracedShop(`recipe v-2 from v-1 { change top.thickness: 2.80 mm -> 2.50 mm  expect voice.sustain: above 1 s }
`);
const [parent, child] = [workshop.inFull('v-1')!, workshop.inFull('v-2')!];

describe('the shares of the strain energy', () => {
  it('in the moduli of all woods add up to the whole, mode by mode, where the rim is a hinge', () => {
    for (const plate of ['top', 'back'] as const) {
      for (const { shares } of voicePlate(new Asking(parent, '', undefined), plate, 6).modes) {
        const whole = [...shares.values()].reduce((sum, share) => sum + share, 0);
        // Slopes are taken by a difference of a ten-thousandth.
        expect(whole).toBeCloseTo(1, 2);
        for (const share of shares.values()) expect(share).toBeGreaterThan(-0.01);
      }
    }
  });
});

describe('a body of measured losses', () => {
  it('has the sharpness measured on six steel-string guitars', () => {
    // Carcagno, Bucknall, Woodhouse, Fritz & Plack, J. Acoust. Soc. Am. 144 (2018) 3533, table I: Q of the main air resonance 33 to
    // 42, of the main top 17 to 28; a third either way for another model of guitar.
    const [air, top] = [parent.number('voice.q.air')!, parent.number('voice.q.top')!];
    expect(air).toBeGreaterThan(33 / 1.33);
    expect(air).toBeLessThan(42 * 1.33);
    expect(top).toBeGreaterThan(17 / 1.33);
    expect(top).toBeLessThan(28 * 1.33);
  });

  it('has the resonances that are told of the body', () => {
    const { board } = heardOf(parent)!;
    for (const name of ['air', 'top', 'back']) {
      const told = parent.number(`resonance.${name}`)!;
      expect(Math.min(...board.modes.map(({ frequency }) => Math.abs(frequency / told - 1)))).toBeLessThan(1e-3);
    }
  });
});

describe('a thinner top', () => {
  it('is a little louder or softer: which of the two is a matter of where its resonances fall among the notes', () => {
    const step = child.number('voice.loudness')! - parent.number('voice.loudness')!;
    expect(Math.abs(step)).toBeGreaterThan(0);
    expect(Math.abs(step)).toBeLessThan(1.5);
  });

  it('has slopes that a difference confirms', () => {
    const slope = parent.gradient('voice.loudness').get('top.thickness')!;
    const step = child.number('voice.loudness')! - parent.number('voice.loudness')!;
    expect(Math.sign(slope)).toBe(Math.sign(-step));
  });

  it('can be expected and seen note by note beside its parent', () => {
    expect(workshop.expectations('v-2').map(({ outcome }) => outcome)).toEqual(['met']);
    const { fingerboard } = comparisonTable(workshop, 'v-1', 'v-2')!;
    expect(fingerboard!.strings.map(({ name }) => name)).toEqual(['E4', 'B3', 'G3', 'D3', 'A2', 'E2']);
    expect(fingerboard!.strings[5]!.notes).toHaveLength(13);
    expect(fingerboard!.strings[5]!.notes[0]!.louder).toMatch(/^[+−]?[\d.]+ dB$/);
  });
});
