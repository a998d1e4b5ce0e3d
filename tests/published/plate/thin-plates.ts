/** Bare plates of thin theory, for comparison with values that leave transverse shear out. */
import type { Edge, OrthotropicWood, Point, TopModel } from '../../../language/mechanics/plate/index.js';
import { spruce } from './reference-tops.js';
import { frequencies } from './solved.js';
import { numbers, readTable } from './tables.js';

export const frequencyTable = readTable('top-plate-frequencies.csv');

export const theory = (name: string): readonly number[] =>
  numbers(
    frequencyTable.filter((row) => row.case === name),
    'value_si',
  );

/** Thin theory has no transverse shear: the moduli through the thickness are made stiff where it is the reference. */
export const steel: OrthotropicWood = {
  eAlong: 200e9,
  eAcross: 200e9,
  poisson: 0.3,
  shearInPlane: 200e9 / 2.6,
  shearAlong: 2e12,
  shearAcross: 2e12,
  density: 8000,
};
const H = 0.001;
const D = (200e9 * H ** 3) / 12 / (1 - 0.09);

export const square: readonly Point[] = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];

export const ellipse = (a: number, b: number): readonly Point[] =>
  Array.from({ length: 240 }, (_, k): Point => [a * Math.cos((k * Math.PI) / 120), b * Math.sin((k * Math.PI) / 120)]);

export const thin = (outline: readonly Point[], edge: Edge): TopModel => ({
  outline,
  plate: { wood: steel, thickness: H, grain: 0 },
  edge,
});

/** ω L² √(m/D) for a plate with L = 1 m. */
export const parameters = (model: TopModel, nodes = 1000): readonly number[] =>
  frequencies(model, { nodes, modes: 6 }).map((f) => 2 * Math.PI * f * Math.sqrt((8000 * H) / D));

/** Lowest six frequencies, Hz, of a hinged spruce rectangle a × b m, 2.8 mm thick, in thin theory. */
export function hingedRectangle(a: number, b: number): readonly number[] {
  const h = 0.0028;
  const q = 1 / (1 - (spruce.poisson ** 2 * spruce.eAcross) / spruce.eAlong);
  const dx = (q * spruce.eAlong * h ** 3) / 12;
  const dy = (q * spruce.eAcross * h ** 3) / 12;
  const dk = (spruce.shearInPlane * h ** 3) / 12;
  const exact: number[] = [];
  for (let m = 1; m < 8; m++) {
    for (let n = 1; n < 8; n++) {
      const [p, r] = [m / a, n / b];
      // ω² = π⁴ (D_x p⁴ + 2 (ν_LR D_y + 2 D_k) p² r² + D_y r⁴) / ρh (S.G. Lekhnitskii, Anisotropic Plates; textbook).
      const sum = dx * p ** 4 + 2 * (spruce.poisson * dy + 2 * dk) * p * p * r * r + dy * r ** 4;
      exact.push((Math.PI / 2) * Math.sqrt(sum / (spruce.density * h)));
    }
  }
  return exact.sort((s, t) => s - t).slice(0, 6);
}
