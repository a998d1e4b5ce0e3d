/** Domed plates: shallow spherical panels against shallow-shell theory. */
import { describe, expect, test } from 'vitest';
import { sensitivities, TopSolver, type TopModel } from '../../../language/mechanics/plate/index.js';
import { shallowPanelModes, type Panel } from './ritz-shallow-shell.js';

const isotropic: Panel = {
  a: 0.5,
  b: 0.4,
  thickness: 0.0025,
  radius: 4.572,
  e1: 10e9,
  e2: 10e9,
  poisson: 0.3,
  shear: 10e9 / 2.6,
  density: 700,
};
/** The back of a guitar, grain along x, 15 ft; and a top at 28 ft. Moduli as handbooks have rosewood and spruce, from memory. */
const rosewood: Panel = { ...isotropic, e1: 12e9, e2: 1.4e9, poisson: 0.35, shear: 1.2e9, density: 815 };
const spruce: Panel = { ...isotropic, radius: 8.534, e1: 12e9, e2: 0.8e9, poisson: 0.37, shear: 0.75e9, density: 400 };

function model({ a, b, thickness, radius, e1, e2, poisson, shear, density }: Panel): TopModel {
  const wood = { eAlong: e1, eAcross: e2, poisson, shearInPlane: shear, density, shearAlong: 1e11, shearAcross: 1e11 };
  return {
    outline: [
      [0, 0],
      [a, 0],
      [a, b],
      [0, b],
    ],
    plate: { wood, thickness, grain: 0, dome: radius },
    edge: { kind: 'hinged', inPlane: 'held' },
  };
}

function solve(wanted: TopModel, nodes: number) {
  const result = new TopSolver().solve(wanted, { nodes, modes: 6 });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.solution;
}

test('the oracle: with diaphragms for edges ω² is the flat plate’s and E/(ρR²) more (W. Soedel, J. Acoust. Soc. Am. 59, 1976, 1260; from memory)', () => {
  const { e1, density, radius } = isotropic;
  const [domed, flat] = [isotropic, { ...isotropic, radius: 1e9 }].map((panel) =>
    shallowPanelModes(panel, 'diaphragm', 6),
  );
  for (let i = 0; i < 6; i++) {
    const more = (2 * Math.PI) ** 2 * (domed![i]! ** 2 - flat![i]! ** 2);
    expect(more / (e1 / density / radius ** 2)).toBeCloseTo(1, 6);
  }
});

describe.each([
  ['isotropic', isotropic],
  ['a back of rosewood', rosewood],
  ['a top of spruce', spruce],
] as const)('%s, hinged and held in the plane', (_, panel) => {
  const theory = shallowPanelModes(panel, 'held').slice(0, 6);
  const flat = shallowPanelModes({ ...panel, radius: 1e9 }, 'held').slice(0, 6);

  test.each([600, 1000, 1500])('six modes within 1 per cent at %d nodes', (nodes) => {
    const found = solve(model(panel), nodes).modes.map(({ frequency }) => frequency);
    found.forEach((frequency, i) => expect(Math.abs(frequency / theory[i]! - 1)).toBeLessThan(0.01));
    // The dome matters here: the flat plate would be far off.
    expect(found[0]! / flat[0]!).toBeGreaterThan(1.1);
  });

  test('the slope by the radius is that of the theory within 3 %', () => {
    const [slope] = sensitivities(solve(model(panel), 1000), [{ part: 'plate', quantity: 'dome' }]);
    const step = 0.01 * panel.radius;
    const at = (radius: number) => shallowPanelModes({ ...panel, radius }, 'held')[0]!;
    const difference = (at(panel.radius + step) - at(panel.radius - step)) / (2 * step);
    expect(slope!.frequencies[0]! / difference).toBeGreaterThan(0.97);
    expect(slope!.frequencies[0]! / difference).toBeLessThan(1.03);
  });
});

test('a dome too steep to be shallow, or without end, is refused', () => {
  for (const radius of [0.3, 0, -4, NaN, Infinity]) {
    const result = new TopSolver().solve(model({ ...isotropic, radius }));
    expect(result.ok).toBe(false);
    expect(result.problems.map(({ path }) => path)).toContain('plate.dome');
  }
});
