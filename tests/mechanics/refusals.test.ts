/** Whatever goes in, what comes out is a finite number or one kind of error that names the quantity in plain words. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as air from '../../language/mechanics/body/air.js';
import * as body from '../../language/mechanics/body/coupled-body.js';
import * as bridge from '../../language/mechanics/strings/bridge-statics.js';
import { braceMass, effectiveStiffness, gluedStiffnessAt } from '../../language/mechanics/braces/carved-brace.js';
import { domeRise, swellingCurvature } from '../../language/mechanics/wood/dome-movement.js';
import { MechanicsError } from '../../language/mechanics/error.js';
import { finishMass } from '../../language/mechanics/wood/finish-film.js';
import { fretPlace, nutSpacing } from '../../language/mechanics/strings/frets.js';
import * as moisture from '../../language/mechanics/wood/moisture.js';
import { modulusFromPlank } from '../../language/mechanics/wood/plank.js';
import { plateBending } from '../../language/mechanics/wood/orthotropic-plate.js';
import { braceSection } from '../../language/mechanics/braces/sections.js';
import { actionAt, saddleHeightForAction } from '../../language/mechanics/strings/neck-angle.js';
import { stringWeight } from '../../language/mechanics/strings/string-weight.js';
import * as strings from '../../language/mechanics/strings/string-tension.js';
import { taperedPlate } from '../../language/mechanics/wood/uneven-plate.js';
import * as wood from '../../language/mechanics/wood/measured-wood.js';

type Numbers = [number, number, number, number, number];

const FUNCTIONS: Record<string, (n: Numbers) => unknown> = {
  blankDensity: ([a, b, c, d]) => wood.blankDensity({ length: a, width: b, thickness: c }, d),
  modulusFromBendingTap: ([a, b, c, d]) => wood.modulusFromBendingTap(a, b, c, d),
  shearFromTwistTapCorrected: ([a, b, c, d, e]) =>
    wood.shearFromTwistTapCorrected(a, b, { length: c, width: d, thickness: e }),
  radiationRatio: ([a, b]) => wood.radiationRatio(a, b),
  panelMerit: ([a, b]) => wood.panelMerit(a, b),
  specificGravityAt: ([a, b, c]) => wood.specificGravityAt(a, b, c),
  modulusFromPlank: ([a, b, c, d, e]) => modulusFromPlank({ span: a, load: b, loadAt: c, width: d, thickness: e }, a),
  plateBending: ([a, b, c, d, e]) => plateBending({ along: a, across: b, shear: c, poissonLR: d }, e),
  taperedPlate: ([a, b, c, d, e]) => taperedPlate({ centre: a, edge: b, band: c }, d, e),
  equilibriumMoisture: ([a, b]) => moisture.equilibriumMoisture(a, b),
  humidityForMoisture: ([a, b]) => moisture.humidityForMoisture(a, b),
  propertyAtMoisture: ([a, b, c, d]) => moisture.propertyAtMoisture(a, b, c, d),
  movement: ([a, b, c, d]) => moisture.movement(a, b, c, d),
  domeRise: ([a, b]) => domeRise(a, b),
  swellingCurvature: ([a, b, c, d, e]) =>
    swellingCurvature({ plateAxial: a, plateBending: b, braceAxial: c, braceBending: d, offset: e }, a),
  braceSection: ([a, b, c, d]) => braceSection('gabled', a, b, { slopeShare: c, crestShare: d }),
  braceMass: ([a, b, c, d, e]) =>
    braceMass({ profile: 'parabolic', length: a, width: b, height: c, ends: { height: d, length: e } }, 400),
  effectiveStiffness: ([a, b, c, d]) =>
    effectiveStiffness({ profile: 'triangular', length: a, width: b, height: c }, d),
  gluedStiffnessAt: ([a, b, c, d, e]) =>
    gluedStiffnessAt(
      { profile: 'rectangular', length: a, width: b, height: c },
      d,
      { width: a, thickness: e, modulus: d },
      e,
    ),
  stringWeight: ([a, b]) => stringWeight('nickel-plated steel', a, b),
  stringTension: ([a, b, c]) => strings.stringTension(a, b, c),
  stretchForPitch: ([a, b, c, d, e]) => strings.stretchForPitch({ tension: a, core: b, coreModulus: c }, d, e),
  saddleSetback: ([a, b, c, d, e]) =>
    strings.saddleSetback({ tension: a, core: b, coreModulus: c, scale: d, action: e }),
  saddleForces: ([a, b, c]) => bridge.saddleForces(a, b, c),
  bridgeGlueLine: ([a, b, c, d]) => bridge.bridgeGlueLine({ length: a, width: b }, c, d),
  rigidAirFrequency: ([a, b, c, d]) =>
    air.rigidAirFrequency({ volume: a, openings: [{ area: b, thickness: c }], celsius: d }),
  coupledModes: ([a, b, c, d, e]) =>
    body.coupledModes({ top: { mass: a, stiffness: b, area: c }, volume: d, openings: [{ area: e }] }),
  effectiveMassFromAddedMass: ([a, b, c]) => body.effectiveMassFromAddedMass(a, b, c),
  fretPlace: ([a, b]) => fretPlace(a, b),
  nutSpacing: ([a, b, c, d, e]) => nutSpacing(a, b, [c, d, e], 'gaps'),
  actionAt: ([a, b, c, d, e]) => actionAt({ scale: a, atNut: b, atSaddle: c, relief: d }, e),
  saddleHeightForAction: ([a, b, c, d]) => saddleHeightForAction({ scale: a, atNut: b, relief: c }, d),
  finishMass: ([a, b, c]) => finishMass(a, b, c),
};

const wild = fc.oneof(
  fc.double(),
  fc.constantFrom(0, -0, -1, Number.NaN, Infinity, -Infinity, 1e308, 5e-324, 1e-300, 1),
  fc.double({ min: 1e-4, max: 2, noNaN: true }),
);

describe.each(Object.entries(FUNCTIONS))('%s', (_, call) => {
  test('gives finite numbers or a plain refusal', () => {
    fc.assert(
      fc.property(fc.tuple(wild, wild, wild, wild, wild), (numbers) => {
        try {
          expectFinite(call(numbers));
        } catch (error) {
          if (!(error instanceof MechanicsError)) throw error;
          expect(error.quantity).toMatch(/^[A-Za-z].+/);
          expect(error.message).toMatch(/[a-z].*\.$/);
        }
      }),
      { numRuns: 400 },
    );
  });

  test('refuses a missing number', () => {
    expect(() => call([Number.NaN, Number.NaN, Number.NaN, Number.NaN, Number.NaN])).toThrow(MechanicsError);
  });
});

function expectFinite(result: unknown): void {
  if (typeof result === 'number') {
    if (!Number.isFinite(result)) throw new Error(`came out as ${result}`);
  } else if (typeof result === 'object' && result !== null) {
    Object.values(result).forEach(expectFinite);
  }
}
