/** Bars, beams and glued sections against textbook and benchmark values. */
import { EigenvalueDecomposition, CholeskyDecomposition, Matrix, inverse } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import * as beams from './formulas/beams.js';
import { FREE_BAR_COEFFICIENT, FREE_BEAM_ROOTS } from '../../language/mechanics/braces/free-beam.js';
import { plankFlexibility } from '../../language/mechanics/wood/plank.js';
import { braceSection, compositeSection, type Layer } from '../../language/mechanics/braces/sections.js';
import { number, off, readTable } from './table.js';

const rows = readTable('beam-cases.csv');
const find = (start: string): Record<string, string> => rows.find((row) => row.case!.startsWith(start))!;

describe('roots βL', () => {
  test.each([1, 2, 3, 4, 5])('free-free bar, mode %i: root of cos x cosh x = 1', (mode) => {
    const x = FREE_BEAM_ROOTS[mode - 1]!;
    expect(Math.abs(x - number(find(`free-free beam mode ${mode}`), 'value_si'))).toBeLessThan(1e-8);
    expect(Math.abs(Math.cos(x) - 1 / Math.cosh(x))).toBeLessThan(1e-9);
  });

  test.each([1, 2, 3])('cantilever, mode %i: root of cos x cosh x = −1', (mode) => {
    const x = beams.CANTILEVER_ROOTS[mode - 1]!;
    expect(Math.abs(x - number(find(`cantilever beam mode ${mode}`), 'value_si'))).toBeLessThan(1e-8);
    expect(Math.abs(Math.cos(x) + 1 / Math.cosh(x))).toBeLessThan(1e-9);
  });

  test('E = 0.9464 ρ f² L⁴/h² for a free rectangular strip', () => {
    expect(Math.abs(FREE_BAR_COEFFICIENT - number(find('free-free strip'), 'value_si'))).toBeLessThan(1e-5);
  });
});

describe('deflections (textbook, from memory), checked by integrating the bending moment', () => {
  const EI = 1e4;
  const L = 2;
  /** Unit-load method: ∫ M m dx / EI. */
  const byIntegral = (moment: (x: number) => number, unit: (x: number) => number): number => {
    const n = 6000;
    let sum = 0;
    for (let i = 0; i < n; i += 1) {
      const x = ((i + 0.5) * L) / n;
      sum += (moment(x) * unit(x) * L) / n;
    }
    return sum / EI;
  };
  const middle = (x: number): number => Math.min(x, L - x) / 2;

  test.each([
    ['centre load, F L³/48EI', beams.simpleBeamCentreLoad, middle, middle],
    ['third points, 23 F L³/1296EI', beams.simpleBeamThirdPoints, (x: number) => Math.min(x, L - x, L / 3) / 2, middle],
    ['uniform, 5 q L⁴/384EI', beams.simpleBeamUniform, (x: number) => (x * (L - x)) / 2, middle],
    ['cantilever, F L³/3EI', beams.cantileverEndLoad, (x: number) => x, (x: number) => x],
    ['clamped, F L³/192EI', beams.clampedBeamCentreLoad, (x: number) => middle(x) - L / 8, middle],
  ])('%s', (_, formula, moment, unit) => {
    expect(off(formula(1, L, EI), byIntegral(moment, unit))).toBeLessThan(1e-5);
  });

  test.each([
    [0.25, 0.25],
    [0.3, 0.5],
    [0.7, 0.2],
    [0.42, 0.9],
  ])('load at %f of the span, gauge at %f', (at, read) => {
    const unitMoment = (place: number) => (x: number) => (x < place ? x * (1 - place / L) : (place / L) * (L - x));
    const width = 0.4;
    const thickness = 0.0028;
    const modulus = (EI * 12) / (width * thickness ** 3);
    const test = { span: L, load: 1, loadAt: at * L, readAt: read * L, width, thickness };
    expect(off(plankFlexibility(test) / modulus, byIntegral(unitMoment(at * L), unitMoment(read * L)))).toBeLessThan(
      1e-5,
    );
  });

  test('shear adds 9.57 % at span/depth 14 with Sitka E/G = 1/0.064: the handbook’s 10 %', () => {
    expect(beams.shearShareOfDeflection(1, 0.064, 1, 14)).toBeCloseTo(
      number(find('3-point bending shear share'), 'value_si'),
      4,
    );
  });
});

describe('glued sections', () => {
  const block = (modulus: number, width: number, height: number, base: number): Layer => {
    const section = braceSection('rectangular', width, height);
    return { ...section, modulus, centroid: base + section.centroid };
  };

  // R.C. Hibbeler, Mechanics of Materials (from memory): wood 150 × 150 mm on a 20 mm steel strap, 12 and 200 GPa, 2
  // kN·m.
  const steel = 200e9;
  const strap = compositeSection([block(steel, 0.15, 0.02, 0), block(12e9, 0.15, 0.15, 0.02)]);

  test('wood on steel strap: transformed I 9.358e-6 m⁴', () => {
    expect(off(strap.bending / steel, number(find('composite: wood 150 x 150'), 'value_si'))).toBeLessThan(0.0001);
  });
  test('wood on steel strap: 1.71 MPa in the wood, 7.78 MPa in the steel', () => {
    expect(Math.abs(beams.bendingStress(strap, 2000, 12e9, 0.17) / 1e6)).toBeCloseTo(1.71, 2);
    expect(Math.abs(beams.bendingStress(strap, 2000, steel, 0) / 1e6)).toBeCloseTo(7.78, 1);
  });

  test('flitch beam, 12 × 200 steel between two 50 × 200 timbers (12 and 205 GPa): EI 2.44 MN·m², I 11.902e-6 m⁴', () => {
    const flitch = compositeSection([block(205e9, 0.012, 0.2, 0), block(12e9, 0.1, 0.2, 0)]);
    expect(off(flitch.bending, number(find('flitch beam'), 'value_si'))).toBeLessThan(0.0005);
    expect(off(flitch.bending / 205e9, 11.902e-6)).toBeLessThan(0.0001);
  });

  test.each([
    ['triangular', 1 / 2, 1 / 3, 1 / 36],
    ['parabolic', 2 / 3, 2 / 5, 8 / 175],
    ['rectangular', 1, 1 / 2, 1 / 12],
  ] as const)(
    '%s brace: area %f bh, centroid %f h, I %f bh³ (textbook, from memory)',
    (profile, area, centroid, second) => {
      const section = braceSection(profile, 0.008, 0.014);
      expect(off(section.area, area * 0.008 * 0.014)).toBeLessThan(1e-12);
      expect(off(section.centroid, centroid * 0.014)).toBeLessThan(1e-12);
      expect(off(section.secondMoment, second * 0.008 * 0.014 ** 3)).toBeLessThan(1e-12);
    },
  );
});

/**
 * Double-tapered cantilever, clamped at the large end, h0/h1 = 4: H.H. Mabie & C.B. Rogers, J. Acoust. Soc. Am. 51
 * (1972) 1771, as in the Code_Aster manual V2.02.009 (SDLL09). f = λ h1 / (2π L²) √(E/12ρ). Ritz with xⁿ⁺², n = 0 … 8,
 * on the sections of `braceSection`.
 */
describe('tapered cantilever, b0/b1 = 4', () => {
  const lambdas = taperedCantilever();
  test.each([1, 2, 3, 4])('mode %i', (mode) => {
    expect(
      off(lambdas[mode - 1]!, number(find(`tapered cantilever, b0/b1 = 4, mode ${mode}`), 'value_si')),
    ).toBeLessThan(0.002);
  });
});

function taperedCantilever(): number[] {
  const count = 9;
  const stiffness = Matrix.zeros(count, count);
  const mass = Matrix.zeros(count, count);
  const steps = 2000;
  for (let s = 0; s < steps; s += 1) {
    const x = (s + 0.5) / steps;
    const section = braceSection('rectangular', 4 - 3 * x, 4 - 3 * x);
    for (let i = 0; i < count; i += 1) {
      for (let j = 0; j < count; j += 1) {
        const [p, q] = [i + 2, j + 2];
        const bend = p * (p - 1) * x ** (p - 2) * (q * (q - 1) * x ** (q - 2));
        stiffness.set(i, j, stiffness.get(i, j) + (section.secondMoment * bend) / steps);
        mass.set(i, j, mass.get(i, j) + (section.area * x ** (p + q)) / steps);
      }
    }
  }
  const lower = inverse(new CholeskyDecomposition(mass).lowerTriangularMatrix);
  const values = new EigenvalueDecomposition(lower.mmul(stiffness).mmul(lower.transpose()), { assumeSymmetric: true })
    .realEigenvalues;
  // ω² = E/ρ · value with L = h1 = 1, and λ = ω √12.
  return values.sort((a, b) => a - b).map((value) => Math.sqrt(12 * value));
}
