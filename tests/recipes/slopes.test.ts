import { describe, expect, it } from 'vitest';
import { MechanicsError } from '../../language/mechanics/error.js';
import { DIMENSION } from '../../language/quantities/dimension.js';
import type { DerivedQuantity } from '../../language/recipes/evaluation/derived-quantity.js';
import { shopOf } from './shop-of.js';
import { differenceTo } from '../../language/recipes/evaluation/slopes.js';

const quantity = (compute: DerivedQuantity['compute']): DerivedQuantity => ({
  path: 'top.mass',
  dimension: DIMENSION.mass,
  unit: 'g',
  sentence: '',
  formula: '',
  source: '',
  compute,
});

const evaluation = shopOf().workshop.evaluate(new Map());
const slope = (compute: DerivedQuantity['compute']) =>
  differenceTo(evaluation, quantity(compute), '', { path: 'top.thickness', si: 2 });

describe('the slope of a quantity', () => {
  it('is a central difference, or one-sided at the edge of what the formula allows', () => {
    expect(slope((ask) => ask.number('top.thickness') ** 2)).toBeCloseTo(4, 6);
    const edge = slope((ask) => {
      const thickness = ask.number('top.thickness');
      if (thickness > 2) throw new MechanicsError('thickness', 'The thickness is too large.');
      return 3 * thickness;
    });
    expect(edge).toBeCloseTo(3, 6);
  });

  it('hides no bug', () => {
    const bug = () => {
      throw new TypeError('a bug');
    };
    expect(() => slope(bug)).toThrow('a bug');
  });
});
