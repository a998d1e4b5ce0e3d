import fc from 'fast-check';
import { expect, test } from 'vitest';
import { airSpring, coupledModes, plugMass } from '../../../language/mechanics/body/coupled-body.js';
import { powerBalance } from './power-balance.js';
import { coupledBodyModes, response } from '../../../language/mechanics/voice/sounding-body.js';
import { bodies } from './made-bodies.js';

const frequency = fc.double({ min: 40, max: 700, noNaN: true });

test('what the string gives is what is lost and what is radiated, to 1e-9, over 1000 bodies', () => {
  fc.assert(
    fc.property(bodies, frequency, fc.nat(5), (body, f, string) => {
      const { given, radiated, lost } = powerBalance(body, string, 2 * Math.PI * f);
      const gone = lost.reduce((sum, each) => sum + each, radiated);
      expect(Math.abs(given - gone)).toBeLessThan(1e-9 * gone);
      expect(Math.min(radiated, ...lost)).toBeGreaterThanOrEqual(0);
    }),
    { numRuns: 1000 },
  );
});

test('a body gives nothing back: Re Y is never negative', () => {
  fc.assert(
    fc.property(bodies, frequency, fc.nat(5), (body, f, string) => {
      expect(response(body, string, 2 * Math.PI * f).mobility.re).toBeGreaterThanOrEqual(0);
    }),
    { numRuns: 1000 },
  );
});

test('with one mode of top and back each, the resonances are those of the three oscillators', () => {
  fc.assert(
    fc.property(bodies, (body) => {
      const [top, back, air] = ['top', 'back', 'air'].map((of) =>
        body.modes.find((mode) => mode.of === of && mode.main)!,
      );
      // The piston of a mode: 1 kg, so that its area is its volume.
      const piston = ({ frequency: f, volume }: NonNullable<typeof top>) => ({
        mass: 1,
        stiffness: (2 * Math.PI * f) ** 2,
        area: volume,
      });
      // A plug of area S and mass m that pushes S/√m per unit of its mode, for a hole in a plate of 3 mm.
      const area = holeOf(air!.volume);
      const three = coupledModes({
        top: piston(top!),
        back: piston(back!),
        volume: body.volume,
        openings: [{ area, thickness: 0.003 }],
      });
      const same = {
        ...body,
        modes: [top!, back!, air!],
        airDensity: 1,
        soundSpeed: Math.sqrt(airSpring(body.volume) * body.volume),
      };
      coupledBodyModes(same).forEach(({ frequency: f }, r) =>
        expect(Math.abs(f / three[r]!.frequency - 1)).toBeLessThan(1e-6),
      );
    }),
    { numRuns: 200 },
  );
});

/** m²: the hole whose S/√m is this, by bisection. */
function holeOf(volume: number): number {
  let [low, high] = [1e-4, 0.05];
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (middle / Math.sqrt(plugMass({ area: middle, thickness: 0.003 })) < volume) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
