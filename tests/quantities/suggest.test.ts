import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { didYouMean } from '../../language/quantities/suggest.js';

const NAMES = [
  'top.thickness',
  'back.thickness',
  'top.wood',
  'bracing.x-bass.height',
  'bracing.x-treble.height',
  'body.lower-bout.width',
  'strings',
  'sitka-spruce',
  'red-spruce-9',
  'black-walnut',
  'tarn-6',
  'tarn-7',
];

describe('did you mean', () => {
  it.each([
    ['top.thicknes', 'top.thickness'],
    ['top.thikness', 'top.thickness'],
    ['Top.Thickness', 'top.thickness'],
    ['tpo.wood', 'top.wood'],
    ['spruce-sitka', 'sitka-spruce'],
    ['bracing.bass-x.height', 'bracing.x-bass.height'],
    ['bracings.x-bass.height', 'bracing.x-bass.height'],
    ['lower-bout.width', 'body.lower-bout.width'],
    ['string', 'strings'],
    ['tarn7', 'tarn-7'],
    ['black walnut', 'black-walnut'],
    ['balck-walnut', 'black-walnut'],
  ])('%s: %s', (word, meant) => {
    expect(didYouMean(word, NAMES)[0]).toBe(meant);
  });

  it('finds the right last word under another part', () => {
    expect(didYouMean('thickness', NAMES)).toEqual(['top.thickness', 'back.thickness']);
    expect(didYouMean('back.wood', NAMES)).toEqual(['top.wood']);
  });

  it('names only the certain one when there is one', () => {
    expect(didYouMean('TARN-7', NAMES)).toEqual(['tarn-7']);
  });

  it('keeps quiet when nothing is near', () => {
    for (const word of ['', 'x', 'rosewood', 'humidity', 'a'.repeat(5000)]) expect(didYouMean(word, NAMES)).toEqual([]);
  });

  it('gives no more than asked, each once, never the word itself', () => {
    expect(didYouMean('tarn-1', ['tarn-2', 'tarn-3', 'tarn-4', 'tarn-3'], { most: 2 })).toEqual(['tarn-2', 'tarn-3']);
    expect(didYouMean('tarn-7', ['tarn-7'])).toEqual([]);
  });

  it('takes any text', () => {
    fc.assert(
      fc.property(fc.string(), fc.array(fc.string()), (word, candidates) => {
        for (const meant of didYouMean(word, candidates)) expect(candidates).toContain(meant);
      }),
    );
  });
});
