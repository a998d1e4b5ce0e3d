/** Bodies and strings at random, as wide as guitars come and wider. */
import fc from 'fast-check';
import { plugMass } from '../../../language/mechanics/body/coupled-body.js';
import type {
  FingerboardInput,
  PartMode,
  SoundingBody,
  SoundingString,
} from '../../../language/mechanics/voice/index.js';
import { stringLoss } from '../../../language/mechanics/voice/index.js';
import { STRING_KINDS } from '../string-kinds.js';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

function plateMode(of: 'top' | 'back', main: boolean, strings: number) {
  return fc
    .record({
      mass: number(0.03, 0.6),
      frequency: main ? number(90, 280) : number(150, 700),
      quality: number(8, 120),
      area: main ? number(0.01, 0.08) : number(-0.02, 0.02),
      felt: fc.array(number(-1, 1), { minLength: strings, maxLength: strings }),
    })
    .map(({ mass, frequency, quality, area, felt }): PartMode => ({
      of,
      main,
      frequency,
      damping: (2 * Math.PI * frequency) / quality,
      volume: area / Math.sqrt(mass),
      atStrings: of === 'top' ? felt.map((share) => (main ? 1 + share / 5 : share) / Math.sqrt(mass)) : [],
    }));
}

const air = number(0.07, 0.11).map((diameter): PartMode => {
  const area = (Math.PI * diameter ** 2) / 4;
  const mass = plugMass({ area, thickness: 0.003 });
  return { of: 'air', main: true, frequency: 0, damping: 12, volume: area / Math.sqrt(mass), atStrings: [] };
});

export const bodies: fc.Arbitrary<SoundingBody> = fc
  .tuple(
    plateMode('top', true, 6),
    fc.array(plateMode('top', false, 6), { maxLength: 5 }),
    plateMode('back', true, 6),
    fc.array(plateMode('back', false, 6), { maxLength: 3 }),
    air,
    number(0.006, 0.025),
  )
  .map(([top, tops, back, backs, hole, volume]) => ({
    modes: [top, ...tops, back, ...backs, hole],
    volume,
    airDensity: 1.204,
    soundSpeed: 343.2,
  }));

const OPEN = [329.63, 246.94, 196, 146.83, 110, 82.41];

export const stringSets: fc.Arbitrary<readonly SoundingString[]> = fc.tuple(
  ...OPEN.map((pitch) =>
    fc
      .record({
        up: number(-5, 3),
        gauge: number(0.2e-3, 1.6e-3),
        density: number(1000, 7800),
        kind: fc.constantFrom(...STRING_KINDS),
      })
      .map(({ up, gauge, density, kind }) => ({
        pitch: pitch * 2 ** (up / 12),
        massPerLength: (density * Math.PI * gauge ** 2) / 4,
        loss: stringLoss({ kind, gauge, massPerLength: (density * Math.PI * gauge ** 2) / 4 }, pitch),
      })),
  ),
);

export const instruments: fc.Arbitrary<FingerboardInput> = fc.record({
  body: bodies,
  scale: number(0.48, 0.7),
  strings: stringSets,
});
