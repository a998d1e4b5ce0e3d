/** The plate element and its laminate: what they must reproduce exactly. */
import { describe, expect, test } from 'vitest';
import type { OrthotropicWood } from '../../../language/mechanics/plate/index.js';
import {
  AT_A,
  AT_B,
  AT_BENDING,
  AT_D,
  AT_MASS,
  AT_SHEAR,
  LAMINATE_SIZE,
  laminate,
} from '../../../language/mechanics/plate/element/laminate.js';
import { plateElement } from '../../../language/mechanics/plate/element/plate-element.js';
import { spruce } from '../../published/plate/reference-tops.js';

const h = 0.003;
const row = (
  layers: readonly { wood: OrthotropicWood; grain: number; from: number; to: number }[],
  grain = 0,
): Float64Array => {
  const out = new Float64Array(LAMINATE_SIZE);
  laminate(
    layers.map((layer) => ({ ...layer, massShare: 1 })),
    grain,
    out,
    0,
  );
  return out;
};
const plate = (grain = 0): Float64Array => row([{ wood: spruce, grain, from: -h / 2, to: h / 2 }], grain);

describe('laminate', () => {
  test('one layer: 5/6 G h in shear, Q h³/12 in bending, nothing between plane and bending', () => {
    const r = plate();
    const q = 1 / (1 - (spruce.poisson ** 2 * spruce.eAcross) / spruce.eAlong);
    expect(r[AT_SHEAR]! / ((5 / 6) * spruce.shearAlong * h)).toBeCloseTo(1, 12);
    expect(r[AT_SHEAR + 2]! / ((5 / 6) * spruce.shearAcross * h)).toBeCloseTo(1, 12);
    expect(r[AT_D]! / ((q * spruce.eAlong * h ** 3) / 12)).toBeCloseTo(1, 12);
    expect(r[AT_MASS]! / (spruce.density * h)).toBeCloseTo(1, 12);
    expect([...r.subarray(AT_B, AT_B + 6)]).toEqual([0, 0, 0, 0, 0, 0]);
  });

  test('one layer given as two is the same plate', () => {
    const two = row([
      { wood: spruce, grain: 0, from: -h / 2, to: 0.0004 },
      { wood: spruce, grain: 0, from: 0.0004, to: h / 2 },
    ]);
    plate().forEach((value, i) => {
      if (i < AT_B || i >= AT_BENDING) expect(two[i]).toBeCloseTo(value, 6);
      if (i >= AT_D && i < AT_BENDING) expect(two[i]).toBeCloseTo(value, 9);
    });
  });

  test('grain turned by a right angle exchanges along and across', () => {
    const [a, b] = [plate(0), plate(Math.PI / 2)];
    expect(b[AT_A + 3]! / a[AT_A]!).toBeCloseTo(1, 12);
    expect(b[AT_D]! / a[AT_D + 3]!).toBeCloseTo(1, 12);
    expect(b[AT_SHEAR]! / a[AT_SHEAR + 2]!).toBeCloseTo(1, 12);
  });
});

const FLAT = new Float64Array(4);

describe('plate element of any convex shape', () => {
  const x = Float64Array.of(0, 0.021, 0.018, -0.002);
  const y = Float64Array.of(0.001, -0.002, 0.017, 0.013);
  const block = row([
    { wood: spruce, grain: 0, from: -h / 2, to: h / 2 },
    { wood: spruce, grain: 1, from: h / 2, to: h / 2 + 0.006 },
  ]);
  /** Energy of a motion u, v, w, βx, βy given at every place. */
  const energy = (laminateRow: Float64Array, motion: (px: number, py: number) => readonly number[]): number => {
    const element = plateElement();
    expect(element.compute(x, y, FLAT, laminateRow, 0, true)).toBe(true);
    const u = Array.from(x, (px, i) => motion(px, y[i]!)).flat();
    let sum = 0;
    for (let i = 0; i < 20; i++) for (let j = 0; j < 20; j++) sum += u[i]! * element.whole()[20 * i + j]! * u[j]!;
    return sum / 2;
  };
  const area = ((x[2]! - x[0]!) * (y[3]! - y[1]!) - (x[3]! - x[1]!) * (y[2]! - y[0]!)) / 2;

  test('rigid motions cost nothing', () => {
    for (const motion of [
      () => [1, 0, 0, 0, 0],
      () => [0, 1, 0, 0, 0],
      () => [0, 0, 1, 0, 0],
      (px: number) => [0, 0, px, -1, 0],
      (_px: number, py: number) => [0, 0, py, 0, -1],
      (px: number, py: number) => [-py, px, 0, 0, 0],
    ]) {
      expect(Math.abs(energy(block, motion))).toBeLessThan(1e-6);
    }
  });

  test('even curvature without shear has exactly the energy of its bending stiffness', () => {
    for (const [kx, ky, kxy] of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
      [0.3, -0.7, 0.4],
    ] as const) {
      const r = plate(0.4);
      const d = r.subarray(AT_D, AT_D + 6);
      const exact =
        (area / 2) *
        (d[0]! * kx * kx +
          d[3]! * ky * ky +
          d[5]! * kxy * kxy +
          2 * (d[1]! * kx * ky + d[2]! * kx * kxy + d[4]! * ky * kxy));
      const found = energy(r, (px, py) => [
        0,
        0,
        -(kx * px * px + ky * py * py + kxy * px * py) / 2,
        kx * px + (kxy * py) / 2,
        ky * py + (kxy * px) / 2,
      ]);
      expect(found / exact).toBeCloseTo(1, 9);
    }
  });

  test('even stretch has exactly the energy of its membrane stiffness', () => {
    const r = plate(0.4);
    const [ex, ey, exy] = [0.001, -0.0004, 0.0007];
    const a = r.subarray(AT_A, AT_A + 6);
    const exact =
      (area / 2) *
      (a[0]! * ex * ex +
        a[3]! * ey * ey +
        a[5]! * exy * exy +
        2 * (a[1]! * ex * ey + a[2]! * ex * exy + a[4]! * ey * exy));
    const found = energy(r, (px, py) => [ex * px + (exy * py) / 2, ey * py + (exy * px) / 2, 0, 0, 0]);
    expect(found / exact).toBeCloseTo(1, 9);
  });

  test('a corner that points inward is refused', () => {
    const x4 = Float64Array.of(0, 0.02, 0.004, 0);
    const y4 = Float64Array.of(0, 0, 0.004, 0.02);
    expect(plateElement().compute(x4, y4, FLAT, plate(), 0, true)).toBe(false);
  });
});
