/** Where things lie, as quantities, rules and drawings ask for it: one answer for all. */
import { describe, expect, it } from 'vitest';
import { BRIDGE, SADDLE_BY_SCALE } from '../../language/recipes/derived/layout/bridge-place.js';
import { braceLine } from '../../language/recipes/derived/layout/brace-line.js';
import { SOUNDHOLE } from '../../language/recipes/derived/layout/soundhole.js';
import { madeOf } from '../../language/recipes/evaluation/shared-part.js';
import { shopOf } from './shop-of.js';

function evaluated(text: string) {
  return shopOf(`model m { ${text} }\nrecipe r for m { }`).workshop.evaluation('r')!;
}

describe('a part that is asked for by rules and drawings', () => {
  it('names what it lacks, and says why it cannot be made', () => {
    expect(madeOf(evaluated('soundhole.diameter: 100 mm'), SOUNDHOLE)).toEqual({ missing: ['soundhole.station'] });
    expect(madeOf(evaluated('scale: 645 mm  body.length: 496 mm  neck.join-fret: 14.5'), SADDLE_BY_SCALE)).toEqual({
      missing: [],
      trouble: 'A fret is a whole number from 0 up to three octaves.',
    });
  });
});

describe('an oval soundhole', () => {
  const oval = 'soundhole { station: 330 mm  width: 120 mm  length: 80 mm }';
  it('is oval for the air and for the solver', () => {
    const evaluation = evaluated(oval);
    expect(madeOf(evaluation, SOUNDHOLE).made).toEqual({
      shape: 'oval',
      centre: [0.33, 0],
      along: 0.08,
      across: 0.12,
    });
  });
});

describe('a curved brace', () => {
  it('is as long as the line through its points', () => {
    const evaluation = evaluated(
      'bracing.arch { from: (100 mm, 0 mm)  curve: (130 mm, 40 mm)  to: (160 mm, 0 mm)  width: 6 mm  height: 10 mm }',
    );
    expect(evaluation.number('bracing.arch.length')).toBeCloseTo(0.1, 12); // twice 3–4–5
    expect(madeOf(evaluation, braceLine('bracing', 'arch')).made?.points).toHaveLength(3);
  });
});

describe('the bridge', () => {
  it('stands where scale, fret at the body and length of the body put the saddle', () => {
    // Half the scale to the twelfth fret: 645/2 = 322.5 mm on the body of a twelve-fret guitar (ISO 16, equal temperament).
    const twelve = evaluated('scale: 645 mm  body.length: 490 mm  neck.join-fret: 12');
    expect(madeOf(twelve, SADDLE_BY_SCALE).made).toBeCloseTo(0.49 - 0.3225, 9);
    const bridge = madeOf(evaluated('bridge { station: 170 mm  offset: 2 mm  width: 30 mm  length: 150 mm }'), BRIDGE);
    // Its front edge 10 mm before the saddle: common practice.
    expect(bridge.made?.map((point) => point.map((place) => Math.round(place * 1e6) / 1e3))).toEqual([
      [150, -73],
      [180, -73],
      [180, 77],
      [150, 77],
    ]);
  });
});
