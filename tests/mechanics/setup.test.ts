import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { balance } from '../../language/mechanics/body/balance.js';
import { finishMass, sidesArea } from '../../language/mechanics/wood/finish-film.js';
import { fretPlace, nutSpacing } from '../../language/mechanics/strings/frets.js';
import * as setup from '../../language/mechanics/strings/neck-angle.js';

test('frets close up towards the bridge, the twelfth halfway', () => {
  const places = Array.from({ length: 20 }, (_, i) => fretPlace(0.645, i + 1));
  expect(places[11]).toBeCloseTo(0.3225, 12);
  const steps = places.map((place, i) => place - (places[i - 1] ?? 0));
  steps.slice(1).forEach((step, i) => expect(step).toBeLessThan(steps[i]!));
});

describe('nut spacing', () => {
  const gauges = [54, 42, 32, 24, 16, 12].map((thousandths) => thousandths * 2.54e-5);

  test('even centres', () => {
    const at = nutSpacing(0.0445, 0.003, gauges, 'centres');
    const steps = at.slice(1).map((x, i) => x - at[i]!);
    steps.forEach((step) => expect(step).toBeCloseTo(steps[0]!, 12));
    expect(at[0]! - gauges[0]! / 2).toBeCloseTo(0.003, 12);
    expect(0.0445 - at[5]! - gauges[5]! / 2).toBeCloseTo(0.003, 12);
  });

  test('even gaps', () => {
    const at = nutSpacing(0.0445, 0.003, gauges, 'gaps');
    const gaps = at.slice(1).map((x, i) => x - gauges[i + 1]! / 2 - (at[i]! + gauges[i]! / 2));
    gaps.forEach((gap) => expect(gap).toBeCloseTo(gaps[0]!, 12));
    expect(at[0]! - gauges[0]! / 2).toBeCloseTo(0.003, 12);
    expect(0.0445 - at[5]! - gauges[5]! / 2).toBeCloseTo(0.003, 12);
  });

  test('too narrow a nut is refused', () => expect(() => nutSpacing(0.008, 0.003, gauges, 'gaps')).toThrow(/fit/));
});

describe('action', () => {
  test('straight neck: halfway between nut and saddle at the twelfth fret', () => {
    expect(setup.actionAt({ scale: 0.645, atNut: 0.0004, atSaddle: 0.005 }, 12)).toBeCloseTo(0.0027, 12);
  });

  test('saddle height for an action is the inverse of the action', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.0015, max: 0.004, noNaN: true }),
        fc.double({ min: 0, max: 0.0004, noNaN: true }),
        (action, relief) => {
          const base = { scale: 0.645, relief };
          const atSaddle = setup.saddleHeightForAction(base, action);
          expect(setup.actionAt({ ...base, atSaddle }, 12)).toBeCloseTo(action, 12);
        },
      ),
    );
  });

  test('relief raises the action in the middle and nothing beyond the join', () => {
    const flat = { scale: 0.645, atSaddle: 0.005 };
    expect(setup.actionAt({ ...flat, relief: 0.0002 }, 6)).toBeGreaterThan(setup.actionAt(flat, 6));
    expect(setup.actionAt({ ...flat, relief: 0.0002 }, 16)).toBe(setup.actionAt(flat, 16));
  });

  test('an action that relief and nut do not allow is refused', () => {
    expect(() => setup.saddleHeightForAction({ scale: 0.645, relief: 0.002 }, 0.0005)).toThrow(/so low/);
  });

  test('neck angle: 3 mm over 0.3 m is 0.57°', () => {
    expect((setup.neckAngle(0.006, 0.009, 0.3) * 180) / Math.PI).toBeCloseTo(0.573, 3);
    expect(setup.stringHeightOverTop(0.009, 0.004)).toBeCloseTo(0.013, 12);
  });
});

test('finish: two thousandths of an inch of shellac on a top weigh 4 … 16 g (ranges of practice)', () => {
  const grams = 1000 * finishMass(0.136, 5.08e-5);
  expect(grams).toBeGreaterThan(4);
  expect(grams).toBeLessThan(16);
  expect(sidesArea(1.48, 0.104, 0.089)).toBeCloseTo(1.48 * 0.0965, 12);
});

test('balance: the heavier part pulls the balance point', () => {
  const whole = balance([
    { mass: 1.2, station: 0.24 },
    { mass: 0.6, station: 0.84 },
  ]);
  expect(whole.mass).toBeCloseTo(1.8, 12);
  expect(whole.station).toBeCloseTo(0.44, 12);
  expect(() => balance([])).toThrow(/part/);
});
