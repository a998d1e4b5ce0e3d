import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { climateChange } from '../../language/mechanics/wood/climate.js';
import { domeRise, domeRiseChange, swellingCurvature } from '../../language/mechanics/wood/dome-movement.js';
import * as moisture from '../../language/mechanics/wood/moisture.js';

const celsius = fc.double({ min: -5, max: 45, noNaN: true });
const humidity = fc.double({ min: 0.02, max: 0.95, noNaN: true });

test('moisture rises with humidity, and humidity comes back from moisture', () => {
  fc.assert(
    fc.property(celsius, humidity, (t, h) => {
      expect(moisture.equilibriumMoisture(t, h + 0.02)).toBeGreaterThan(moisture.equilibriumMoisture(t, h));
      expect(moisture.humidityForMoisture(t, moisture.equilibriumMoisture(t, h))).toBeCloseTo(h, 9);
    }),
  );
});

test('dry air dries wood to nothing; wood wetter than air allows is refused', () => {
  expect(moisture.equilibriumMoisture(20, 0)).toBe(0);
  expect(() => moisture.humidityForMoisture(20, 0.6)).toThrow(/cannot hold/);
});

test('drier wood is stiffer down to the table’s end and constant above the intersection', () => {
  const at = (m: number): number => moisture.propertyAtMoisture(10.8e9, 8.5e9, m, 0.27);
  fc.assert(
    fc.property(fc.double({ min: 0.04, max: 0.25, noNaN: true }), (m) => {
      expect(at(m)).toBeGreaterThan(at(m + 0.01));
    }),
  );
  expect(at(0.12)).toBeCloseTo(10.8e9, 0);
  expect(at(0.27)).toBe(8.5e9);
  expect(at(0.8)).toBe(8.5e9);
  expect(
    moisture.moistureFactor(10.8e9, 8.5e9, 0.08, 0.12, 0.27) * moisture.moistureFactor(10.8e9, 8.5e9, 0.12, 0.08, 0.27),
  ).toBeCloseTo(1, 12);
});

describe('climate', () => {
  const top = {
    width: 0.39,
    thickness: 0.0028,
    widthCoefficient: 0.00148,
    thicknessCoefficient: 0.00263,
    at12: 10.8e9,
    green: 8.5e9,
    intersection: 0.27,
  };

  test('a top of 390 mm that goes from 45 to 22 % RH at 20 °C shrinks by some 2 mm', () => {
    const change = climateChange(top, { celsius: 20, humidity: 0.45 }, { celsius: 20, humidity: 0.22 });
    expect(1000 * change.width).toBeLessThan(-1.8);
    expect(1000 * change.width).toBeGreaterThan(-2.3);
    expect(change.mass).toBeLessThan(1);
    expect(change.stiffness).toBeGreaterThan(1);
    expect(change.bending).toBeGreaterThan(1);
  });

  test('there and back again changes nothing', () => {
    fc.assert(
      fc.property(celsius, humidity, celsius, humidity, (t1, h1, t2, h2) => {
        const out = climateChange(top, { celsius: t1, humidity: h1 }, { celsius: t2, humidity: h2 });
        const back = climateChange(top, { celsius: t2, humidity: h2 }, { celsius: t1, humidity: h1 });
        expect(out.width + back.width).toBeCloseTo(0, 12);
        expect(out.mass * back.mass).toBeCloseTo(1, 12);
        expect(out.stiffness! * back.stiffness!).toBeCloseTo(1, 10);
      }),
    );
  });

  test('without the green value the change of stiffness is unknown, not one', () => {
    const change = climateChange(
      { ...top, green: undefined },
      { celsius: 20, humidity: 0.4 },
      { celsius: 20, humidity: 0.6 },
    );
    expect(change.stiffness).toBeUndefined();
    expect(change.bending).toBeUndefined();
  });
});

describe('dome', () => {
  test('rise of a 28 ft dome over 390 mm is 2.23 mm', () =>
    expect(1000 * domeRise(28 * 0.3048, 0.39)).toBeCloseTo(2.228, 3));
  test('a chord wider than the sphere is refused', () => expect(() => domeRise(0.1, 0.39)).toThrow(/radius/));

  test('two equal layers bend as Timoshenko’s bimetal: κ = 3 ε / 2 h', () => {
    const h = 0.002;
    const E = 1e9;
    const w = 0.01;
    const layer = { axial: E * w * (h / 2), bending: (E * w * (h / 2) ** 3) / 12 };
    const strip = {
      plateAxial: layer.axial,
      plateBending: layer.bending,
      braceAxial: layer.axial,
      braceBending: layer.bending,
      offset: h / 2,
    };
    expect(swellingCurvature(strip, 0.001)).toBeCloseTo((1.5 * 0.001) / h, 9);
  });

  test('a swelling plate raises the dome, a drying one lowers it, by the same amount', () => {
    const strip = { plateAxial: 2e5, plateBending: 0.13, braceAxial: 1.2e6, braceBending: 15, offset: 0.0084 };
    const up = domeRiseChange(0.39, swellingCurvature(strip, 0.003));
    expect(up).toBeGreaterThan(0);
    expect(domeRiseChange(0.39, swellingCurvature(strip, -0.003))).toBeCloseTo(-up, 12);
  });
});
