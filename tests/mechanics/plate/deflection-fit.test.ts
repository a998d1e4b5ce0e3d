/** E along from a deflection, where beam theory knows the answer: narrow planks. */
import { describe, expect, test } from 'vitest';
import { plankDeflection } from '../../../language/mechanics/wood/plank.js';
import {
  fitDeflection,
  TopSolver,
  type DeflectionTest,
  type OrthotropicWood,
} from '../../../language/mechanics/plate/index.js';

const solver = new TopSolver();
const E = 11e9;

/** Stiff through the thickness, so that nothing but bending along the plank is left. */
const stiff: OrthotropicWood = {
  eAlong: 9e9,
  eAcross: 11e9,
  poisson: 0,
  shearInPlane: 5e9,
  shearAlong: 1e12,
  shearAcross: 1e12,
  density: 400,
};
const spruce: OrthotropicWood = {
  eAlong: 9e9,
  eAcross: 0.8e9,
  poisson: 0.37,
  shearInPlane: 0.75e9,
  shearAlong: 0.7e9,
  shearAcross: 0.04e9,
  density: 400,
};

const supports = [0.02, 0.52] as const;
const span = supports[1] - supports[0];
const sizes = { length: 0.55, width: 0.03, thickness: 0.006, supports, force: 5 };

function fitted(test: DeflectionTest): number {
  const result = fitDeflection(solver, test);
  if (!result.ok) throw new Error(JSON.stringify(result));
  return result.eAlong.value;
}

describe('a narrow plank that only bends: the simple beam, load anywhere, dial anywhere', () => {
  test.each([
    [0.25, 0.25],
    [0.15, 0.15],
    [0.15, 0.25],
    [0.35, 0.1],
  ])('load at %d m, dial at %d m', (load, read) => {
    const { width, thickness, force } = sizes;
    const deflection = plankDeflection({ span, load: force, loadAt: load, readAt: read, width, thickness }, E);
    const found = fitted({ ...sizes, loadAt: supports[0] + load, readAt: supports[0] + read, deflection, wood: stiff });
    expect(Math.abs(found / E - 1)).toBeLessThan(0.005);
  });
});

test('shear in a thick plank is not taken for softness: 1.2 F a b / (span · G · area) of Timoshenko within 1 %', () => {
  const [width, thickness, a] = [0.02, 0.02, 0.2];
  const force = 20;
  const wood = { ...stiff, shearAlong: 0.7e9 };
  const bending = plankDeflection({ span, load: force, loadAt: a, width, thickness }, E);
  const shear = (1.2 * force * a * (span - a)) / (span * wood.shearAlong * width * thickness);
  expect(shear / bending).toBeGreaterThan(0.03);
  const at = { loadAt: supports[0] + a, deflection: bending + shear };
  const found = fitted({ ...sizes, width, thickness, force, ...at, wood });
  expect(Math.abs(found / E - 1)).toBeLessThan(0.01);
});

test('a wide plate under a weight in its middle dishes: the beam formula would read E along low', () => {
  const wide = { ...sizes, width: 0.2, thickness: 0.003 };
  const asBeam = plankDeflection({ span, load: wide.force, width: wide.width, thickness: wide.thickness }, E);
  const found = fitted({ ...wide, loadAt: supports[0] + span / 2, deflection: asBeam, wood: spruce });
  expect(found / E).toBeGreaterThan(1.04);
  expect(found / E).toBeLessThan(1.15);
});

test('the uncertainty of the dial is that of E', () => {
  const test: DeflectionTest = { ...sizes, loadAt: 0.27, deflection: 0.01, uncertainty: 0.0003, wood: spruce };
  const result = fitDeflection(solver, test);
  expect(result.ok && result.eAlong.uncertainty).toBeCloseTo(0.03, 12);
});

describe('what cannot be right is said, not computed', () => {
  const good: DeflectionTest = { ...sizes, loadAt: 0.27, deflection: 0.005, wood: spruce };
  test.each<[string, Partial<DeflectionTest>, string]>([
    ['no deflection', { deflection: 0 }, 'deflection'],
    ['no number', { force: NaN }, 'force'],
    ['supports in one place', { supports: [0.3, 0.3] }, 'supports'],
    ['a support off the plank', { supports: [0.02, 0.6] }, 'supports'],
    ['a weight beyond the supports', { loadAt: 0.54 }, 'loadAt'],
    ['a dial beyond the supports', { readAt: 0.01 }, 'readAt'],
    ['a deflection of a metre', { deflection: 1e4 }, 'deflection'],
  ])('%s', (_, change, path) => {
    const result = fitDeflection(solver, { ...good, ...change });
    expect(result).toMatchObject({ ok: false, stopped: false, problems: [{ severity: 'error', path }] });
  });
  test('a fit that is no longer wanted stops', () => {
    expect(fitDeflection(solver, good, () => true)).toMatchObject({ ok: false, stopped: true });
  });
});
