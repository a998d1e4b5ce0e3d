/** How the rim holds the edge: between a hinge and a clamp, as real tops are. */
import { describe, expect, it } from 'vitest';
import { bracedShop } from './braced-shop.js';

function resonance(stiffness: string | undefined, path = 'top.main-resonance'): number {
  const rim = stiffness === undefined ? '' : `top.rim-stiffness: ${stiffness}`;
  return bracedShop(`recipe v-2 from v-1 { ${rim} }`).workshop.inFull('v-2')!.number(path)!;
}

describe('the rim’s stiffness against turning', () => {
  const hinged = resonance(undefined);

  it('is a hinge at nothing', () => {
    expect(resonance('0 N')).toBeCloseTo(hinged, 6);
  });

  it('raises the main top the more the stiffer it is, up to the clamped plate', () => {
    const heard = ['50 N', '400 N', '3000 N', '100 kN', '10000 kN', '20000 kN'].map((stiffness) =>
      resonance(stiffness),
    );
    expect(heard.every(Number.isFinite)).toBe(true);
    expect([hinged, ...heard]).toEqual([hinged, ...heard].toSorted((a, b) => a - b));
    // Close to its limit twice as stiff makes no difference any more. A spring along the edge holds of a brace that is let into
    // the rim no more than its width, so that this limit is at meganewtons; `sameness.test.ts` holds it against the clamp.
    expect(heard[5]! / heard[4]!).toBeLessThan(1.002);
    // Where rims are, a clamped plate whose braces stop short of it is some 36 % above a hinged one by an independent
    // finite-element calculation of another top.
    expect(heard[2]! / hinged).toBeGreaterThan(1.2);
    expect(heard[2]! / hinged).toBeLessThan(1.5);
  });

  it('lets the bridge turn less', () => {
    expect(resonance('400 N', 'bridge.rotation')).toBeLessThan(resonance(undefined, 'bridge.rotation'));
  });

  it('can be solved for, from the resonance that was read off an instrument', () => {
    const { workshop } = bracedShop(
      'recipe v-2 from v-1 { top.rim-stiffness: 100 N  hold top.main-resonance at 155 Hz by top.rim-stiffness }',
    );
    const evaluation = workshop.inFull('v-2')!;
    expect(evaluation.number('top.main-resonance')).toBeCloseTo(155, 1);
    expect(evaluation.number('top.rim-stiffness')).toBeGreaterThan(100);
  });

  it('has a slope', () => {
    const { workshop } = bracedShop('recipe v-2 from v-1 { top.rim-stiffness: 300 N }');
    const slope = workshop.inFull('v-2')!.gradient('top.main-resonance').get('top.rim-stiffness')!;
    const difference = (resonance('330 N') - resonance('270 N')) / 60;
    // Central difference over 20 %; perturbation within the 3 % asked of every slope.
    expect(slope / difference).toBeGreaterThan(0.97);
    expect(slope / difference).toBeLessThan(1.03);
  });
});
