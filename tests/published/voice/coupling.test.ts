/**
 * Published cases of strings on bodies.
 *
 * - C.E. Gough, The theory of string resonances on musical instruments, Acustica 49 (1981) 124: a string of mass m on a mode of
 *   mass M and quality Q is strongly coupled where K = (2Q/nπ) √(2m/M) > 1 (from memory; N.H. Fletcher & T.D. Rossing, The Physics
 *   of Musical Instruments, section 10.8, tell the same story for the violin's wolf).
 * - J. Woodhouse, On the synthesis of guitar plucks, Acta Acustica 90 (2004) 928, summary: the string and body modes of a
 *   normal classical guitar do not show veering except at low frequencies (summary seen).
 * - J. Woodhouse, A necessary condition for double decay envelopes in stringed instruments, J. Acoust. Soc. Am. 150 (2021) 4375,
 *   summary: in the guitar double decays are likely to be confined to a few notes near strong body resonances (summary seen).
 * - J. Woodhouse, Plucked guitar transients, Acta Acustica 90 (2004) 945: damping of six nylon strings (from memory).
 */
import { expect, test } from 'vitest';
import { plugMass } from '../../../language/mechanics/body/coupled-body.js';
import { complex, divide, subtract } from '../../../language/mechanics/voice/complex.js';
import { splitNote } from '../../../language/mechanics/voice/coupled-note.js';
import { fingerboard, stringLoss, wolvesOf } from '../../../language/mechanics/voice/index.js';
import { decayOf } from '../../../language/mechanics/voice/string-loss.js';

const HZ = 2 * Math.PI;
const ZERO = complex(0);

test.each([
  // string mass kg, mode mass kg, Q, partial
  [0.002, 0.1, 30, 1],
  [0.004, 0.4, 25, 1],
  [0.001, 0.5, 20, 1],
  [0.0005, 0.3, 60, 2],
  [0.004, 0.1, 30, 3],
])('Gough: K = (2Q/nπ)√(2m/M) for a string of %d kg on %d kg, Q %d, partial %i', (m, mass, quality, number) => {
  const pitch = 180 / number;
  const omega = HZ * 180;
  const pole = complex(omega, omega / (2 * quality));
  const mobility = divide(complex(0, -1 / (2 * mass)), subtract(complex(omega), pole));
  // Z₀ = 2 f₁ m: a string of length L has T = μ(2Lf₁)², √(Tμ) = 2f₁μL.
  const split = splitNote({ pitch, number, impedance: 2 * pitch * m, decay: 0 }, { pole, mobility }, ZERO);
  const published = ((2 * quality) / (number * Math.PI)) * Math.sqrt((2 * m) / mass);
  expect(split.coupling / published).toBeCloseTo(1, 9);
  // Weak: two decays at one pitch. Strong: two pitches with one decay.
  const [one, other] = split.roots;
  if (published > 1) expect(Math.abs(one.im / other.im - 1)).toBeLessThan(1e-6);
  else expect(Math.abs(one.re - other.re)).toBeLessThan(1e-6 * omega);
});

/** Gauge m, weight kg/m, pitch Hz; loss factor and rate (1/s) fitted to the measured decays; nylon, hard tension, 650 mm. */
const NYLON = [
  ['E4', 0.72e-3, 0.38e-3, 329.6, 40e-5, 1.5, 'nylon'],
  ['B3', 0.84e-3, 0.52e-3, 246.9, 40e-5, 1.2, 'nylon'],
  ['G3', 1.05e-3, 0.9e-3, 196, 14e-5, 1.7, 'nylon'],
  ['D3', 0.76e-3, 1.95e-3, 146.8, 5e-5, 1.2, 'silver-plated on nylon'],
  ['A2', 0.91e-3, 3.61e-3, 110, 7e-5, 0.9, 'silver-plated on nylon'],
  ['E2', 1.14e-3, 6.24e-3, 82.4, 2e-5, 1.2, 'silver-plated on nylon'],
] as const;

test.each(NYLON)(
  'Woodhouse: the own decay of the nylon %s string, within a factor of two',
  (_, gauge, massPerLength, f, factor, rate, kind) => {
    const measured = (2 * Math.PI * f * factor + rate) / 2;
    const here = decayOf(stringLoss({ gauge, massPerLength, kind }, f), f);
    expect(here / measured).toBeGreaterThan(0.5);
    expect(here / measured).toBeLessThan(2);
  },
);

test('Woodhouse: strong coupling on a classical guitar is confined to a few notes near the low resonances', () => {
  const hole = Math.PI * 0.0425 ** 2;
  const mode = (of: 'top' | 'back', frequency: number, mass: number, area: number, main: boolean, felt = 1) => ({
    of,
    main,
    frequency,
    damping: (HZ * frequency) / 35,
    volume: area / Math.sqrt(mass),
    atStrings: of === 'top' ? [1, 1, 1, 1, 1, 1].map(() => felt / Math.sqrt(mass)) : [],
  });
  // A light classical guitar: main top near 190 Hz and 0.1 kg, a stiffer back, 13.5 L.
  const body = {
    modes: [
      mode('top', 180, 0.1, 0.035, true),
      mode('top', 320, 0.25, 0.004, false, 0.3),
      mode('back', 220, 0.2, 0.04, true),
      {
        of: 'air' as const,
        main: true,
        frequency: 0,
        damping: 12,
        volume: hole / Math.sqrt(plugMass({ area: hole, thickness: 0.0025 })),
        atStrings: [],
      },
    ],
    volume: 0.0135,
    airDensity: 1.204,
    soundSpeed: 343.2,
  };
  const strings = NYLON.map(([, gauge, massPerLength, pitch, , , kind]) => ({
    gauge,
    massPerLength,
    pitch,
    loss: stringLoss({ gauge, massPerLength, kind }, pitch),
  }));
  const board = fingerboard({ body, scale: 0.65, strings });
  const wolves = wolvesOf(board);
  const told = board.notes.flat().filter((note) => note !== undefined).length;
  expect(wolves.length).toBeGreaterThan(0);
  expect(wolves.length).toBeLessThan(told / 6);
  for (const { mode: behind } of wolves) expect(behind.frequency).toBeLessThan(250);
});
