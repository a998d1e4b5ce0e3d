import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { guessedAcross, guessedShear, reciprocalPoisson } from '../../language/mechanics/wood/handbook.js';
import { modulusFromPlank, plankDeflection } from '../../language/mechanics/wood/plank.js';
import { plateBending, reducedStiffness } from '../../language/mechanics/wood/orthotropic-plate.js';
import * as wood from '../../language/mechanics/wood/measured-wood.js';
import { elasticityFromTaps } from '../published/formulas/elasticity-from-taps.js';
import { handbookElasticity } from '../published/formulas/handbook-elasticity.js';

/** m: that gives bending stiffness D (N·m) to a plate of reduced stiffness Q (Pa). */
const thicknessForBending = (bending: number, q: number): number => Math.cbrt((12 * bending) / q);

const blank = fc.record({
  length: fc.double({ min: 0.3, max: 0.7, noNaN: true }),
  width: fc.double({ min: 0.1, max: 0.3, noNaN: true }),
  thickness: fc.double({ min: 0.002, max: 0.008, noNaN: true }),
});
const modulus = fc.double({ min: 5e8, max: 2e10, noNaN: true });
const thickness = fc.double({ min: 0.0015, max: 0.006, noNaN: true });

test('a tap twice as high means a wood four times as stiff', () => {
  fc.assert(
    fc.property(blank, fc.double({ min: 20, max: 300, noNaN: true }), (size, tap) => {
      const once = wood.modulusFromBendingTap(400, tap, size.length, size.thickness);
      const twice = wood.modulusFromBendingTap(400, 2 * tap, size.length, size.thickness);
      expect(twice / once).toBeCloseTo(4, 10);
      expect(wood.shearFromTwistTap(400, 2 * tap, size) / wood.shearFromTwistTap(400, tap, size)).toBeCloseTo(4, 10);
    }),
  );
});

test('only the taps that were read give moduli', () => {
  const size = { length: 0.56, width: 0.212, thickness: 0.00441 };
  const read = elasticityFromTaps(size, 0.214, { along: 75.5 });
  expect(read.density).toBeCloseTo(408.7, 1);
  expect(read.along).toBeGreaterThan(9e9);
  expect(read.across).toBeUndefined();
  expect(read.shear).toBeUndefined();
  const all = elasticityFromTaps(size, 0.214, { along: 75.5, across: 46, twist: 31 });
  expect(all.shearCorrected! / all.shear!).toBeCloseTo(1 / wood.TWIST_TAP_SHARE, 12);
});

describe('plank test', () => {
  const rig = fc.record({
    span: fc.double({ min: 0.2, max: 0.6, noNaN: true }),
    load: fc.double({ min: 1, max: 60, noNaN: true }),
    width: fc.double({ min: 0.1, max: 0.45, noNaN: true }),
    thickness,
  });
  const place = fc.double({ min: 0.05, max: 0.95, noNaN: true });

  test('modulus from deflection is the inverse of deflection from modulus, wherever load and gauge are', () => {
    fc.assert(
      fc.property(rig, modulus, place, place, (test, E, load, gauge) => {
        const full = { ...test, loadAt: load * test.span, readAt: gauge * test.span };
        expect(modulusFromPlank(full, plankDeflection(full, E)) / E).toBeCloseTo(1, 10);
      }),
    );
  });

  test('load and gauge may change places (Maxwell)', () => {
    fc.assert(
      fc.property(rig, modulus, place, place, (test, E, a, b) => {
        const there = plankDeflection({ ...test, loadAt: a * test.span, readAt: b * test.span }, E);
        const back = plankDeflection({ ...test, loadAt: b * test.span, readAt: a * test.span }, E);
        expect(there / back).toBeCloseTo(1, 9);
      }),
    );
  });

  test('off-centre load of a 457 mm span bends less under itself than a centred one', () => {
    const test = { span: 0.457, load: 22.2, width: 0.4, thickness: 0.0028 };
    expect(plankDeflection({ ...test, loadAt: 0.457 / 2 - 0.076 }, 1e10)).toBeLessThan(plankDeflection(test, 1e10));
  });
});

describe('six tops for one stiffness (invented, worked out by hand at 500 mm span, 2.268 kg, 400 mm width)', () => {
  const load = 2.268 * 9.80665;
  test.each([
    ['T-1', 8.6e9, 365, 3.02, 149, 9.2],
    ['T-2', 10.8e9, 421, 2.8, 159, 7.33],
    ['T-3', 12.6e9, 402, 2.66, 144, 6.28],
    ['T-4', 14.6e9, 492, 2.53, 168, 5.42],
    ['T-5', 12.4e9, 436, 2.67, 157, 6.38],
    ['T-6', 9.0e9, 448, 2.98, 180, 8.79],
  ])('%s', (_, along, density, millimetres, grams, deflection) => {
    const target = (10.8e9 * 0.0028 ** 3) / 12;
    const h = thicknessForBending(target, along);
    expect(Math.abs(1000 * h - millimetres)).toBeLessThan(0.0051);
    expect(Math.abs(1000 * density * h * 0.135 - grams) / grams).toBeLessThan(0.005);
    const left = plankDeflection({ span: 0.5, load, width: 0.4, thickness: 0.0028 }, along);
    expect(Math.abs(1000 * left - deflection) / deflection).toBeLessThan(0.005);
  });

  test('the stiffest top is not the lightest: it weighs less only if E^(1/3)/ρ rises', () => {
    const weight = (E: number, density: number): number => density * thicknessForBending(1, E);
    fc.assert(
      fc.property(
        modulus,
        modulus,
        fc.double({ min: 300, max: 900, noNaN: true }),
        fc.double({ min: 300, max: 900, noNaN: true }),
        (a, b, p, q) => {
          fc.pre(Math.abs(wood.panelMerit(a, p) / wood.panelMerit(b, q) - 1) > 1e-9);
          expect(weight(a, p) < weight(b, q)).toBe(wood.panelMerit(a, p) > wood.panelMerit(b, q));
        },
      ),
    );
    expect(1000 * wood.panelMerit(14.6e9, 492)).toBeCloseTo(4970, -1);
  });
});

test('thickness for a stiffness is the inverse of the stiffness of a thickness', () => {
  fc.assert(
    fc.property(modulus, thickness, (along, h) => {
      const wood = { along, across: along / 12, shear: along / 15, poissonLR: 0.37 };
      expect(thicknessForBending(plateBending(wood, h).along, reducedStiffness(wood).q11) / h).toBeCloseTo(1, 12);
    }),
  );
});

test('moisture raises density, and specific gravity goes back to itself', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.2, max: 0.9, noNaN: true }),
      fc.double({ min: 0, max: 0.29, noNaN: true }),
      (gravity, moisture) => {
        expect(wood.basicSpecificGravity(wood.specificGravityAt(gravity, moisture), moisture)).toBeCloseTo(gravity, 12);
        expect(wood.densityFromSpecificGravity(gravity, moisture + 0.01)).toBeGreaterThan(
          wood.densityFromSpecificGravity(gravity, moisture),
        );
      },
    ),
  );
  expect(wood.specificGravityAt(0.4, 0.6)).toBe(0.4);
});

test('figures of merit', () => {
  expect(wood.soundSpeed(11e9, 420)).toBeCloseTo(5117.7, 1);
  expect(wood.specificStiffness(11e9, 420)).toBeCloseTo(26190476, 0);
  expect(wood.radiationRatio(11e9, 420)).toBeCloseTo(12.185, 3);
});

test('guesses for taps not read stay near the species ratios', () => {
  expect(guessedAcross(10e9, 'softwood', 'quartersawn')).toBeCloseTo(0.825e9, 0);
  expect(guessedAcross(10e9, 'hardwood', 'flatsawn')).toBeCloseTo(0.6e9, 0);
  expect(guessedShear(10e9, 'softwood')).toBeCloseTo(0.65e9, 0);
});

test('a Poisson ratio no plate can have is refused', () => {
  expect(() => reciprocalPoisson(2.9, 1e9, 1e9)).toThrow(/Poisson/);
  expect(() =>
    handbookElasticity(1e10, { acrossRadial: 1, acrossTangential: 1, shearLR: 0.1, poissonLR: 1.2 }),
  ).toThrow(/Poisson/);
});
