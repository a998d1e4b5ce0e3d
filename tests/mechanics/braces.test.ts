import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { braceHeight } from '../../language/mechanics/braces/brace-height.js';
import * as braces from '../../language/mechanics/braces/carved-brace.js';
import { braceSection, compositeSection, type Profile } from '../../language/mechanics/braces/sections.js';

const PROFILES: Profile[] = ['rectangular', 'triangular', 'parabolic', 'gabled'];
const E = 11.5e9;
const strip = { width: 0.06, thickness: 0.0028, modulus: 1e9 };
const brace = (over: Partial<braces.Brace> = {}): braces.Brace => ({
  profile: 'rectangular',
  length: 0.4,
  width: 0.008,
  height: 0.014,
  ...over,
});

describe('sections', () => {
  test.each(PROFILES)('%s agrees with slices', (profile) => {
    const [b, h] = [0.008, 0.0147];
    const widthAt = (z: number): number => {
      if (profile === 'rectangular') return b;
      if (profile === 'triangular') return b * (1 - z / h);
      if (profile === 'parabolic') return b * Math.sqrt(1 - z / h);
      return z < 0.4 * h ? b : b + ((0.25 * b - b) * (z - 0.4 * h)) / (0.6 * h);
    };
    const section = braceSection(profile, b, h, { slopeShare: 0.6, crestShare: 0.25 });
    let [area, first, second] = [0, 0, 0];
    const n = 20000;
    for (let i = 0; i < n; i += 1) {
      const z = ((i + 0.5) * h) / n;
      const slice = (widthAt(z) * h) / n;
      area += slice;
      first += slice * z;
      second += slice * z * z;
    }
    const centroid = first / area;
    expect(section.area / area).toBeCloseTo(1, 5);
    expect(section.centroid / centroid).toBeCloseTo(1, 5);
    expect(section.secondMoment / (second - area * centroid ** 2)).toBeCloseTo(1, 4);
  });

  test('a gable with no slope is a rectangle, one that is all slope a triangle', () => {
    expect(braceSection('gabled', 0.008, 0.014, { slopeShare: 0 })).toEqual(braceSection('rectangular', 0.008, 0.014));
    const triangle = braceSection('triangular', 0.008, 0.014);
    const gable = braceSection('gabled', 0.008, 0.014, { slopeShare: 1 });
    expect(gable.secondMoment / triangle.secondMoment).toBeCloseTo(1, 12);
  });

  test('stiffness goes with height cubed, free', () => {
    fc.assert(
      fc.property(fc.constantFrom(...PROFILES), fc.double({ min: 0.003, max: 0.02, noNaN: true }), (profile, h) => {
        const ratio = braceSection(profile, 0.008, 2 * h).secondMoment / braceSection(profile, 0.008, h).secondMoment;
        expect(ratio).toBeCloseTo(8, 9);
      }),
    );
  });

  test('gluing two halves gives the whole, and the order of layers does not matter', () => {
    const half = braceSection('rectangular', 0.01, 0.005);
    const layers = [
      { ...half, modulus: E },
      { ...half, centroid: 0.0075, modulus: E },
    ];
    const whole = braceSection('rectangular', 0.01, 0.01);
    expect(compositeSection(layers).bending / (E * whole.secondMoment)).toBeCloseTo(1, 12);
    expect(compositeSection([...layers].reverse()).bending).toBeCloseTo(compositeSection(layers).bending, 9);
  });
});

describe('height along a brace', () => {
  const height = braceHeight({
    length: 0.4,
    height: 0.015,
    ends: { height: 0.002, length: 0.05 },
    scallops: [{ at: 0.2, height: 0.008, length: 0.1 }],
  });
  test.each([
    [0, 0.002],
    [0.025, 0.0085],
    [0.05, 0.015],
    [0.15, 0.015],
    [0.175, 0.0115],
    [0.2, 0.008],
    [0.25, 0.015],
    [0.4, 0.002],
  ])('at %f m: %f m', (x, h) => expect(height(x)).toBeCloseTo(h, 12));

  test('named places are joined by straight lines', () => {
    const named = braceHeight({
      length: 0.3,
      height: 0.01,
      stations: [
        { distance: 0.2, height: 0.014 },
        { distance: 0, height: 0.004 },
        { distance: 0.3, height: 0.002 },
      ],
    });
    expect(named(0.1)).toBeCloseTo(0.009, 12);
    expect(named(0.25)).toBeCloseTo(0.008, 12);
  });

  test('tapers that overlap, cuts above the brace and places off it are refused', () => {
    const base = { length: 0.4, height: 0.015 };
    expect(() => braceHeight({ ...base, ends: { height: 0, length: 0.3 } })).toThrow(/longer/);
    expect(() => braceHeight({ ...base, ends: { height: 0.02, length: 0.1 } })).toThrow(/more than/);
    expect(() => braceHeight({ ...base, scallops: [{ at: 0.5, height: 0.01, length: 0.1 }] })).toThrow(/beyond/);
  });
});

describe('mass and stiffness', () => {
  test('a square-cut brace weighs its volume, and all three means of its stiffness agree', () => {
    expect(braces.braceMass(brace(), 400)).toBeCloseTo(0.4 * 0.008 * 0.014 * 400, 12);
    const EI = (E * 0.008 * 0.014 ** 3) / 12;
    const { mean, series, halfWave } = braces.effectiveStiffness(brace(), E);
    for (const value of [mean, series, halfWave]) expect(value / EI).toBeCloseTo(1, 4);
  });

  test('a brace tapered to a point at both ends loses the volume of the tapers', () => {
    const pointed = brace({ ends: { height: 0, length: 0.1 } });
    expect(braces.braceVolume(pointed)).toBeCloseTo(0.008 * 0.014 * 0.3, 12);
    expect(braces.effectiveStiffness(pointed, E).series).toBe(0);
  });

  test('series ≤ half-wave … mean: bounds in their order, glued or not', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...PROFILES),
        fc.double({ min: 0.001, max: 0.014, noNaN: true }),
        fc.double({ min: 0.02, max: 0.2, noNaN: true }),
        fc.boolean(),
        (profile, end, taper, glued) => {
          const made = brace({ profile, ends: { height: end, length: taper } });
          const { mean, series } = braces.effectiveStiffness(made, E, glued ? strip : undefined);
          expect(series).toBeLessThanOrEqual(mean * (1 + 1e-9));
        },
      ),
    );
  });

  test('carving never adds mass or stiffness', () => {
    const base = brace({ profile: 'parabolic' });
    const carved = brace({ profile: 'parabolic', scallops: [{ at: 0.12, height: 0.007, length: 0.15 }] });
    expect(braces.braceMass(carved, 400)).toBeLessThan(braces.braceMass(base, 400));
    for (const kind of ['mean', 'series', 'halfWave'] as const) {
      expect(braces.effectiveStiffness(carved, E, strip)[kind]).toBeLessThan(
        braces.effectiveStiffness(base, E, strip)[kind],
      );
    }
  });

  test('gluing to the plate stiffens, with a power of the height between 2 and 3', () => {
    const at = (height: number): number => braces.gluedStiffnessAt(brace({ height }), E, strip, 0.2);
    expect(at(0.014)).toBeGreaterThan((E * 0.008 * 0.014 ** 3) / 12);
    const power = Math.log(at(0.0145) / at(0.0135)) / Math.log(0.0145 / 0.0135);
    expect(power).toBeGreaterThan(2);
    expect(power).toBeLessThan(3);
    const share = braces.braceShareAt(brace(), E, strip, 0.2);
    expect(share).toBeGreaterThan(0.9);
    expect(share).toBeLessThan(1);
  });
});
