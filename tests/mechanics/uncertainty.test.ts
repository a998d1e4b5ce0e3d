import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rigidAirFrequency } from '../../language/mechanics/body/air.js';
import { coupledModes, effectiveMassFromAddedMass } from '../../language/mechanics/body/coupled-body.js';
import { sample, type Input } from '../../language/mechanics/gum.js';
import { elasticityFromTaps } from '../published/formulas/elasticity-from-taps.js';
import { propagate } from './first-order.js';
import { modulusFromPlank } from '../../language/mechanics/wood/plank.js';
import { stringTension } from '../../language/mechanics/strings/string-tension.js';

/** m², of a round hole of diameter d (m). */
const roundHole = (d: number): number => (Math.PI * d * d) / 4;

type Model = (values: readonly number[]) => number;

const at = (value: number, sigma: number): Input => ({ value, sigma });

/** Each case: a function as the engine uses it, inputs with workshop uncertainties. */
const CASES: [string, Model, Input[]][] = [
  [
    'E along from blank, mass and tap',
    ([l, w, h, m, f]) => elasticityFromTaps({ length: l!, width: w!, thickness: h! }, m!, { along: f! }).along!,
    [at(0.56, 0.0005), at(0.212, 0.0005), at(0.00441, 0.00003), at(0.214, 0.0005), at(75.5, 0.5)],
  ],
  [
    'E from a plank test',
    ([span, load, width, h, deflection]) =>
      modulusFromPlank({ span: span!, load: load!, width: width!, thickness: h! }, deflection!),
    [at(0.5, 0.001), at(22.24, 0.05), at(0.4, 0.001), at(0.0028, 0.00003), at(0.00733, 0.00008)],
  ],
  [
    'string tension',
    ([mu, f, scale]) => stringTension(mu!, f!, scale!),
    [at(0.00723, 0.0001), at(110, 0.1), at(0.645, 0.001)],
  ],
  [
    'rigid-box air',
    ([volume, diameter, h]) =>
      rigidAirFrequency({ volume: volume!, openings: [{ area: roundHole(diameter!), thickness: h! }] }),
    [at(0.0135, 0.0003), at(0.1, 0.0005), at(0.0028, 0.00005)],
  ],
  [
    'main top of the coupled body',
    ([m, k, a, volume]) =>
      coupledModes({
        top: { mass: m!, stiffness: k!, area: a! },
        volume: volume!,
        openings: [{ area: roundHole(0.1), thickness: 0.0028 }],
      })[1]!.frequency,
    [at(0.085, 0.004), at(91000, 4000), at(0.045, 0.002), at(0.0135, 0.0003)],
  ],
];

describe('first order agrees with 40 000 draws within 2 % of sigma', () => {
  test.each(CASES)('%s', (_, model, inputs) => {
    const first = propagate(model, inputs);
    const drawn = sample(model, inputs, 40000, 7);
    expect(drawn.failed).toBe(0);
    // A sampled sigma of n draws itself scatters by 1/√(2n) = 0.35 %.
    expect(Math.abs(first.sigma / drawn.sigma - 1)).toBeLessThan(0.02);
    expect(Math.abs(first.value - drawn.mean)).toBeLessThan(0.1 * first.sigma);
  });
});

test('a 1 Hz error of the added-mass test is some 7 % of the mass for 20 g', () => {
  const model: Model = ([before, after]) => effectiveMassFromAddedMass(before!, after!, 0.02).mass;
  const { value, sigma } = propagate(model, [at(180, 0), at(163, 1)]);
  expect(sigma / value).toBeGreaterThan(0.05);
  expect(sigma / value).toBeLessThan(0.08);
});

test('a product: relative uncertainties add in squares; parts name the culprit', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 9, noNaN: true }),
      fc.double({ min: 1, max: 9, noNaN: true }),
      fc.double({ min: 0.001, max: 0.02, noNaN: true }),
      fc.double({ min: 0.001, max: 0.02, noNaN: true }),
      (x, y, p, q) => {
        fc.pre(Math.abs(p / q - 1) > 1e-6);
        const result = propagate(([a, b]) => a! * b!, [at(x, x * p), at(y, y * q)]);
        expect(result.sigma / (x * y)).toBeCloseTo(Math.hypot(p, q), 9);
        expect(result.parts[0]! > result.parts[1]!).toBe(p > q);
      },
    ),
  );
});

test('an input that is certain costs nothing', () => {
  const { parts } = propagate(([a, b]) => a! + b!, [at(1, 0), at(2, 0.1)]);
  expect(parts[0]).toBe(0);
  expect(parts[1]).toBeCloseTo(0.1, 12);
});

test('drawing twice from the same start gives the same, another start another', () => {
  const model: Model = ([a]) => a! ** 2;
  const inputs = [at(3, 0.1)];
  expect(sample(model, inputs, 500, 4)).toEqual(sample(model, inputs, 500, 4));
  expect(sample(model, inputs, 500, 4)).not.toEqual(sample(model, inputs, 500, 5));
});
