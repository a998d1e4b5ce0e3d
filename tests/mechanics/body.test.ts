import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as air from '../../language/mechanics/body/air.js';
import * as body from '../../language/mechanics/body/coupled-body.js';

/** m², of a round hole of diameter d (m). */
const roundHole = (d: number): number => (Math.PI * d * d) / 4;

/** Hz, in open air. */
const pistonFrequency = ({ mass, stiffness }: { mass: number; stiffness: number }): number =>
  Math.sqrt(stiffness / mass) / (2 * Math.PI);

const mass = fc.double({ min: 0.02, max: 0.4, noNaN: true });
const frequency = fc.double({ min: 80, max: 400, noNaN: true });
const area = fc.double({ min: 0.01, max: 0.1, noNaN: true });
const piston = fc
  .tuple(mass, frequency, area)
  .map(([m, f, a]): body.Piston => ({ mass: m, stiffness: m * (2 * Math.PI * f) ** 2, area: a }));
const box = fc.record({
  volume: fc.double({ min: 0.006, max: 0.022, noNaN: true }),
  openings: fc
    .tuple(fc.double({ min: 0.06, max: 0.12, noNaN: true }), fc.double({ min: 0.001, max: 0.005, noNaN: true }))
    .map(([diameter, thickness]) => [{ area: roundHole(diameter), thickness }]),
  celsius: fc.double({ min: 0, max: 35, noNaN: true }),
});

test('two oscillators: f₁ f₂ = f_top f_air to 1e-9, and f₁ < both < f₂, over 1000 bodies', () => {
  fc.assert(
    fc.property(box, piston, (inside, top) => {
      const [low, high] = body.coupledModes({ ...inside, top }).map((mode) => mode.frequency) as [number, number];
      const alone = pistonFrequency(top);
      const rigid = air.rigidAirFrequency(inside);
      expect(Math.abs((low * high) / (alone * rigid) - 1)).toBeLessThan(1e-9);
      expect(low).toBeLessThan(Math.min(alone, rigid));
      expect(high).toBeGreaterThan(Math.max(alone, rigid));
    }),
    { numRuns: 1000 },
  );
});

test('sum of squares: f₁² + f₂² = f_p² + f_air², with f_p the top on the sealed air (Christensen & Vistisen)', () => {
  fc.assert(
    fc.property(box, piston, (inside, top) => {
      const modes = body.coupledModes({ ...inside, top });
      const sealed = {
        ...top,
        stiffness: top.stiffness + body.airSpring(inside.volume, inside.celsius) * top.area ** 2,
      };
      const sum = pistonFrequency(sealed) ** 2 + air.rigidAirFrequency(inside) ** 2;
      expect(Math.abs(modes.reduce((total, mode) => total + mode.frequency ** 2, 0) / sum - 1)).toBeLessThan(1e-9);
    }),
  );
});

test('three oscillators: f₁ f₂ f₃ = f_top f_back f_air to 1e-9; energy shares add up to one', () => {
  fc.assert(
    fc.property(box, piston, piston, (inside, top, back) => {
      const modes = body.coupledModes({ ...inside, top, back });
      const product = pistonFrequency(top) * pistonFrequency(back) * air.rigidAirFrequency(inside);
      expect(Math.abs(modes.reduce((total, mode) => total * mode.frequency, 1) / product - 1)).toBeLessThan(1e-9);
      for (const { energy } of modes) {
        expect(Object.values(energy).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
      }
    }),
    { numRuns: 1000 },
  );
});

describe('an OM of usual values', () => {
  const om: body.CoupledBody = {
    top: { mass: 0.085, stiffness: 0.085 * (2 * Math.PI * 150) ** 2, area: 0.06 },
    back: { mass: 0.25, stiffness: 0.25 * (2 * Math.PI * 198) ** 2, area: 0.05 },
    volume: 0.0145,
    openings: [{ area: roundHole(0.1), thickness: 0.0028 }],
  };
  const read = (changed: body.CoupledBody): number[] => body.coupledModes(changed).map((mode) => mode.frequency);
  const base = read(om);

  test('main air, main top, main back in that order and in the range of practice', () => {
    expect(body.coupledModes(om).map((mode) => mode.of)).toEqual(['air', 'top', 'back']);
    expect(base[0]).toBeGreaterThan(90);
    expect(base[0]).toBeLessThan(110);
    expect(base[1]).toBeGreaterThan(165);
    expect(base[1]).toBeLessThan(200);
    expect(base[2]).toBeGreaterThan(200);
    expect(base[2]).toBeLessThan(250);
  });

  test('added mass lowers the top most; a larger hole raises the air; a deeper body lowers all', () => {
    const heavy = read({ ...om, top: { ...om.top, mass: om.top.mass + 0.005 } });
    expect(heavy[1]! - base[1]!).toBeLessThan(-2);
    expect(Math.abs(heavy[0]! - base[0]!)).toBeLessThan(Math.abs(heavy[1]! - base[1]!));
    expect(read({ ...om, openings: [{ area: roundHole(0.106), thickness: 0.0028 }] })[0]).toBeGreaterThan(base[0]!);
    read({ ...om, volume: 0.0152 }).forEach((f, i) => expect(f).toBeLessThan(base[i]!));
  });

  test('a port raises the air and adds no mode of its own', () => {
    const ported = read({ ...om, openings: [...om.openings, { area: 0.0012, thickness: 0.002 }] });
    expect(ported.length).toBe(3);
    expect(ported[0]).toBeGreaterThan(base[0]!);
  });

  test('a hole in two halves of equal conductance is one hole', () => {
    const [hole] = om.openings;
    const halves = read({
      ...om,
      openings: [hole!, hole!],
      volume: 2 * om.volume,
      top: { ...om.top, area: om.top.area * Math.SQRT2 },
      back: { ...om.back!, area: om.back!.area * Math.SQRT2 },
    });
    halves.forEach((f, i) => expect(f).toBeCloseTo(base[i]!, 9));
  });
});

test('the added-mass test gives back the mass and stiffness it was made from', () => {
  fc.assert(
    fc.property(mass, frequency, fc.double({ min: 0.005, max: 0.03, noNaN: true }), (m, f, added) => {
      const stiffness = m * (2 * Math.PI * f) ** 2;
      const after = Math.sqrt(stiffness / (m + added)) / (2 * Math.PI);
      const found = body.effectiveMassFromAddedMass(f, after, added);
      expect(found.mass / m).toBeCloseTo(1, 6);
      expect(found.stiffness / stiffness).toBeCloseTo(1, 6);
      expect(body.monopoleMobility(m, stiffness)).toBeCloseTo(1 / Math.sqrt(m * stiffness), 12);
    }),
  );
  expect(() => body.effectiveMassFromAddedMass(180, 181, 0.02)).toThrow(/lower/);
});

describe('air', () => {
  test('a port works in parallel with the hole', () => {
    const hole = { area: roundHole(0.1) };
    const one = air.rigidAirFrequency({ volume: 0.0135, openings: [hole] });
    expect(air.rigidAirFrequency({ volume: 0.0135, openings: [hole, hole] }) / one).toBeCloseTo(Math.SQRT2, 12);
  });

  test('frequency falls with volume and rises with the hole', () => {
    fc.assert(
      fc.property(box, (inside) => {
        const f = air.rigidAirFrequency(inside);
        expect(air.rigidAirFrequency({ ...inside, volume: inside.volume * 1.1 })).toBeLessThan(f);
        const wider = inside.openings.map((opening) => ({ ...opening, area: opening.area * 1.1 }));
        expect(air.rigidAirFrequency({ ...inside, openings: wider })).toBeGreaterThan(f);
      }),
    );
  });

  test('an elliptical hole counts by its area', () =>
    expect(air.ellipticalHole(0.12, 0.08)).toBeCloseTo((Math.PI * 0.12 * 0.08) / 4, 12));
});
