import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as bridge from '../../language/mechanics/strings/bridge-statics.js';
import { STRING_KINDS } from './string-kinds.js';
import { stringWeight, woundMassPerLength } from '../../language/mechanics/strings/string-weight.js';
import * as strings from '../../language/mechanics/strings/string-tension.js';

const steel = stringWeight('plain steel', 0.0003048);
const plain = {
  tension: strings.stringTension(steel.massPerLength, 329.63, 0.645),
  core: steel.core,
  coreModulus: steel.coreModulus,
};

test('tension and pitch are inverse; tension goes with the square of scale and pitch', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 3e-4, max: 2e-2, noNaN: true }),
      fc.double({ min: 60, max: 400, noNaN: true }),
      fc.double({ min: 0.55, max: 0.72, noNaN: true }),
      (mu, f, scale) => {
        const T = strings.stringTension(mu, f, scale);
        expect(Math.sqrt(T / mu) / (2 * scale) / f).toBeCloseTo(1, 12);
        expect(strings.stringTension(mu, 2 * f, scale) / T).toBeCloseTo(4, 10);
      },
    ),
  );
});

test.each(STRING_KINDS)('%s: heavier with gauge, core inside the string', (kind) => {
  fc.assert(
    fc.property(fc.double({ min: 0.0004, max: 0.0016, noNaN: true }), (gauge) => {
      const thin = stringWeight(kind, gauge);
      expect(stringWeight(kind, gauge * 1.05).massPerLength).toBeGreaterThan(thin.massPerLength);
      expect(thin.core).toBeLessThanOrEqual(gauge);
      expect(thin.uncertainty).toBeGreaterThan(0);
    }),
  );
});

test('a close-wound wire has the length and area the geometry says', () => {
  // 1 m of string: 1/w turns of length π(d + w), area πw²/4.
  const [D, d] = [0.0013, 0.0005];
  const w = (D - d) / 2;
  const wrap = (1 / w) * Math.PI * (d + w) * ((Math.PI * w * w) / 4) * 8800;
  expect(woundMassPerLength(D, d, 7807, 8800)).toBeCloseTo((Math.PI / 4) * d * d * 7807 + wrap, 12);
});

test('a known core replaces the rule; one as thick as the string is refused', () => {
  expect(stringWeight('phosphor bronze', 0.00106, 0.0004).core).toBe(0.0004);
  expect(() => stringWeight('phosphor bronze', 0.00106, 0.0011)).toThrow(/core/);
  expect(() => stringWeight('plain steel', 12)).toThrow(/gauge/);
});

test('a plain .012 needs under 2 mm of stretch for a semitone on 0.9 m', () => {
  const stretch = strings.stretchForPitch(plain, 0.9, 1);
  expect(1000 * stretch).toBeGreaterThan(0.3);
  expect(1000 * stretch).toBeLessThan(2);
  expect(strings.stretchForPitch(plain, 0.9, -1)).toBeLessThan(0);
});

test('setback grows with action and lies in the range of practice for steel strings', () => {
  const at = (action: number): number => 1000 * strings.saddleSetback({ ...plain, scale: 0.645, action });
  expect(at(0.002)).toBeGreaterThan(0.3);
  expect(at(0.002)).toBeLessThan(3);
  expect(at(0.003)).toBeGreaterThan(at(0.002));
});

describe('bridge', () => {
  test('730 N at 12 mm: 8.76 N·m', () => expect(bridge.bridgeCouple(730, 0.012)).toBeCloseTo(8.76, 12));

  test('the forces of one string before and behind the saddle add up', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1.3, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        (behind, playing) => {
          const { down, forward, breakAngle } = bridge.saddleForces(100, behind, playing);
          // Two forces of 100 N, their resultant 200 sin(half the break angle).
          expect(Math.hypot(down, forward)).toBeCloseTo(200 * Math.sin(breakAngle / 2), 9);
        },
      ),
    );
  });

  test('the linear pull on the glue line carries the couple', () => {
    const { shear, peel } = bridge.bridgeGlueLine({ length: 0.152, width: 0.034 }, 730, 0.012);
    expect(shear).toBeCloseTo(730 / (0.152 * 0.034), 6);
    let moment = 0;
    const n = 2000;
    for (let i = 0; i < n; i += 1) {
      const x = ((i + 0.5) / n - 0.5) * 0.034;
      moment += ((peel * x) / 0.017) * x * (0.034 / n) * 0.152;
    }
    expect(moment).toBeCloseTo(8.76, 4);
  });

  test('angle of the string behind the saddle', () => expect(bridge.pinAngle(0.003, 0.006)).toBeCloseTo(0.46365, 5));

  test('a pinned bridge block tips less than the whole couple', () => {
    const tipping = bridge.pinBridgeTipping(730, 0.46, 0.012, 0.004);
    expect(tipping).toBeGreaterThan(0);
    expect(tipping).toBeLessThan(bridge.bridgeCouple(730, 0.012));
  });
});
