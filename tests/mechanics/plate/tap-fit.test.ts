/** Wood from taps: what the fit says of its own certainty, and what it refuses. Recovery of published plates: tests/published/plate. */
import { describe, expect, test } from 'vitest';
import {
  fitTaps,
  TopSolver,
  type FittedWood,
  type OrthotropicWood,
  type Tap,
  type TapTest,
} from '../../../language/mechanics/plate/index.js';

const solver = new TopSolver();

const guess: OrthotropicWood = {
  eAlong: 11e9,
  eAcross: 0.9e9,
  poisson: 0.37,
  shearInPlane: 0.7e9,
  shearAlong: 0.7e9,
  shearAcross: 0.04e9,
  density: 420,
};
const long: Tap = { mode: { along: 2, across: 0 }, frequency: 80 };
const cross: Tap = { mode: { along: 0, across: 2 }, frequency: 165 };
const twist: Tap = { mode: { along: 1, across: 1 }, frequency: 55 };
const plate: TapTest = { length: 0.58, width: 0.215, thickness: 0.0047, wood: guess, taps: [long, cross, twist] };

function fit(test: TapTest): FittedWood {
  const result = fitTaps(solver, test);
  if (!result.ok) throw new Error(JSON.stringify(result));
  return result.fitted;
}

test('three taps, three constants: every tap is met, and the same taps give the same figures', () => {
  const once = fit(plate);
  for (const misfit of once.misfits) expect(Math.abs(misfit)).toBeLessThan(1e-4);
  expect(fit(plate)).toEqual(once);
  expect(fitTaps(new TopSolver(), plate)).toEqual({ ok: true, fitted: once });
});

test('a hertz on each tap: a constant goes with the square of its frequency', () => {
  const taps = plate.taps.map((tap) => ({ ...tap, uncertainty: 1 }));
  const { eAlong, eAcross, shearInPlane } = fit({ ...plate, taps });
  expect(eAlong.uncertainty).toBeCloseTo(2 / long.frequency, 2);
  expect(eAcross.uncertainty).toBeCloseTo(2 / cross.frequency, 2);
  // The twist mode owes its last tenth to bending.
  expect(shearInPlane.uncertainty * twist.frequency).toBeGreaterThan(2);
  expect(shearInPlane.uncertainty * twist.frequency).toBeLessThan(2.4);
});

test('redundant taps that disagree widen the uncertainty beyond that of the readings', () => {
  const exact = [long, cross, twist, { mode: { along: 2, across: 1 }, frequency: 0 }];
  const wood = fit(plate).wood;
  const agreeing = frequencyOf(wood, { along: 2, across: 1 });
  const withMixed = (frequency: number): FittedWood =>
    fit({ ...plate, taps: exact.map((tap) => (tap.frequency > 0 ? tap : { ...tap, frequency })) });
  const calm = withMixed(agreeing);
  const torn = withMixed(agreeing * 1.06);
  expect(Math.abs(calm.eAlong.value / wood.eAlong - 1)).toBeLessThan(0.01);
  for (const name of ['eAlong', 'shearInPlane'] as const) {
    expect(torn[name].uncertainty).toBeGreaterThan(2 * calm[name].uncertainty);
  }
});

describe('what cannot be right is said, not computed', () => {
  const cases: [string, Partial<TapTest>, string][] = [
    ['a plate without thickness', { thickness: 0 }, 'thickness'],
    ['a width that is no number', { width: NaN }, 'width'],
    ['a tap at 0 Hz', { taps: [long, cross, { ...twist, frequency: 0 }] }, 'taps.2'],
    ['a reading without uncertainty', { taps: [long, { ...cross, uncertainty: 0 }, twist] }, 'taps.1'],
    ['two taps for three constants', { taps: [long, twist] }, 'taps'],
    ['one mode named three times', { taps: [long, long, long] }, 'taps'],
    [
      'a mode beyond those that are told apart',
      { taps: [long, cross, { mode: { along: 9, across: 9 }, frequency: 900 }] },
      'taps.2',
    ],
  ];
  test.each(cases)('%s', (_, change, path) => {
    const result = fitTaps(solver, { ...plate, ...change });
    expect(result).toMatchObject({ ok: false, stopped: false });
    if (!result.ok) expect(result.problems.at(-1)).toMatchObject({ severity: 'error', path });
  });

  test('taps far from any wood end in a figure or a refusal, never in NaN', () => {
    for (const frequency of [0.01, 5, 1000, 1e6]) {
      const result = fitTaps(solver, { ...plate, taps: [long, cross, { ...twist, frequency }] });
      if (result.ok) expect(Number.isFinite(result.fitted.shearInPlane.value)).toBe(true);
      else expect(result.problems.length).toBeGreaterThan(0);
    }
  });

  test('a fit that is no longer wanted stops', () => {
    expect(fitTaps(solver, plate, () => true)).toMatchObject({ ok: false, stopped: true });
  });
});

/** As the fit itself would hear it: fitted with a free choice of that tap, the misfit tells. */
function frequencyOf(wood: OrthotropicWood, mode: Tap['mode']): number {
  const guessed = 130;
  const taps: Tap[] = [long, cross, twist].map((tap) => ({ ...tap, uncertainty: tap.frequency * 1e-6 }));
  const { misfits } = fit({ ...plate, wood, taps: [...taps, { mode, frequency: guessed, uncertainty: guessed * 10 }] });
  return guessed * (1 + misfits[3]!);
}
