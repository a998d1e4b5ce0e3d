/** What rides on the plate: the coat and small masses, against closed forms of hinged rectangles. */
import { describe, expect, test } from 'vitest';
import {
  TopSolver,
  type OrthotropicWood,
  type TopModel,
  type TopSolution,
} from '../../../language/mechanics/plate/index.js';

/** Hardly shears, so that thin-plate theory holds. */
const wood: OrthotropicWood = {
  eAlong: 11e9,
  eAcross: 0.9e9,
  poisson: 0.35,
  shearInPlane: 0.8e9,
  shearAlong: 50e9,
  shearAcross: 50e9,
  density: 420,
};
const [a, b, h] = [0.4, 0.32, 0.003];
const plate: TopModel = {
  outline: [
    [0, 0],
    [a, 0],
    [a, b],
    [0, b],
  ],
  plate: { wood, thickness: h, grain: 0 },
  edge: { kind: 'hinged', inPlane: 'free' },
};
const solved = (model: TopModel): TopSolution => {
  const result = new TopSolver().solve(model);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.solution;
};
const first = (model: TopModel): number => solved(model).modes[0]!.frequency;

/** D11, D12 + 2 D66, D22 of the wood. */
function rigidities(): readonly [number, number, number] {
  const k = h ** 3 / 12 / (1 - (wood.poisson ** 2 * wood.eAcross) / wood.eAlong);
  return [k * wood.eAlong, k * wood.poisson * wood.eAcross + (wood.shearInPlane * h ** 3) / 6, k * wood.eAcross];
}

/** ω² of mode (m, n): Navier, as in A.W. Leissa, Vibration of Plates, NASA SP-160, 1969, ch. 9. */
function square(m: number, n: number, [d1, d3, d2]: readonly [number, number, number], mass: number): number {
  const [p, q] = [(m * Math.PI) / a, (n * Math.PI) / b];
  return (d1 * p ** 4 + 2 * d3 * p * p * q * q + d2 * q ** 4) / mass;
}

describe('a coat', () => {
  const massPerArea = 0.15;

  test('of mass alone lowers every mode by the root of the masses', () => {
    const [bare, coated] = [solved(plate), solved({ ...plate, film: { massPerArea } })];
    const m = wood.density * h;
    bare.modes.forEach(({ frequency }, i) => {
      const ratio = coated.modes[i]!.frequency / frequency / Math.sqrt(m / (m + massPerArea));
      // What is left is the turning of the coat's mass with the face (rotary inertia).
      expect(Math.abs(ratio - 1)).toBeLessThan(2e-4);
    });
    expect(coated.mass - bare.mass).toBeCloseTo(massPerArea * a * b, 9);
  });

  test('that is stiff as well adds what a skin on one face adds', () => {
    const stiffness = 4e9 * 1.5e-4;
    const [d1, d3, d2] = rigidities();
    const q = [d1, d2].map((d) => (12 * d) / h ** 2);
    // A skin at h/2 on a plate of stretch Q h: about the common neutral plane, both ways apart (Poisson's coupling is small here).
    const skin = (stretch: number) => (stiffness * stretch * (h / 2) ** 2) / (stiffness + stretch);
    const shear = (12 * (wood.shearInPlane * h ** 3)) / 12 / h ** 2;
    const turned = (stiffness * 0.325 * shear * (h / 2) ** 2) / (stiffness * 0.325 + shear);
    const stiff = [d1 + skin(q[0]!), d3 + 2 * turned + 0.35 * skin(q[1]!), d2 + skin(q[1]!)] as const;
    const wanted = Math.sqrt(square(1, 1, stiff, wood.density * h + massPerArea)) / (2 * Math.PI);
    expect(first({ ...plate, film: { massPerArea, stiffness } }) / wanted).toBeGreaterThan(0.99);
    expect(first({ ...plate, film: { massPerArea, stiffness } }) / wanted).toBeLessThan(1.01);
  });
});

describe('a small mass', () => {
  const [x, y] = [0.17, 0.13];

  /** Lowest root of 1/(M ω²) = Σ φ²/(ωₙ² − ω²): the receptance of the bare plate at the place (closed form). */
  function weighted(added: number): number {
    const m = wood.density * h;
    const sum = (s: number): number => {
      let total = 0;
      for (let i = 1; i < 60; i++) {
        for (let j = 1; j < 60; j++) {
          const shape = Math.sin((i * Math.PI * x) / a) * Math.sin((j * Math.PI * y) / b);
          total += (4 * shape * shape) / (m * a * b) / (square(i, j, rigidities(), m) - s);
        }
      }
      return total - 1 / (added * s);
    };
    let [low, high] = [1, square(1, 1, rigidities(), m) - 1e-6];
    for (let step = 0; step < 80; step++) {
      const middle = (low + high) / 2;
      if (sum(middle) > 0) high = middle;
      else low = middle;
    }
    return Math.sqrt(low) / (2 * Math.PI);
  }

  test.each([0.005, 0.02])('of %s kg lowers the first mode as the receptance says', (mass) => {
    expect(Math.abs(first({ ...plate, masses: [{ x, y, mass }] }) / weighted(mass) - 1)).toBeLessThan(0.003);
  });

  test('spread over a disc weighs the same, and one off the plate is told', () => {
    const spread = solved({ ...plate, masses: [{ x, y, mass: 0.02, radius: 0.02 }] });
    expect(spread.mass - solved(plate).mass).toBeCloseTo(0.02, 9);
    expect(spread.modes[0]!.frequency / weighted(0.02)).toBeCloseTo(1, 2);
    const off = new TopSolver().solve({ ...plate, masses: [{ x: 1, y, mass: 0.02 }] });
    expect(off.problems.map(({ path }) => path)).toEqual(['masses.0']);
    expect(off.ok && off.solution.mass).toBeCloseTo(solved(plate).mass, 9);
  });

  test('moves the free plate as well', () => {
    const free: TopModel = { ...plate, edge: { kind: 'free' } };
    expect(first({ ...free, masses: [{ x: 0.01, y: 0.01, mass: 0.02 }] })).toBeLessThan(first(free));
  });
});
