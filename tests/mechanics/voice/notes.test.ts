import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Complex, complex, divide, multiply, size, subtract } from '../../../language/mechanics/voice/complex.js';
import { type Partial, splitNote } from '../../../language/mechanics/voice/coupled-note.js';
import { fingerboard, summaryOf, wolvesOf } from '../../../language/mechanics/voice/index.js';
import { decayOf, timeToFall60 } from '../../../language/mechanics/voice/string-loss.js';
import { instruments } from './made-bodies.js';

/** Decay (1/s) of a partial while the coupling is weak: 2 f₁ Z₀ Re Y and what the string loses itself. */
function weakDecay({ pitch, impedance, decay }: Partial, mobility: Complex): number {
  return 2 * pitch * impedance * mobility.re + decay;
}

const ZERO = complex(0);

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const partials = fc.record({
  pitch: between(70, 400),
  number: fc.integer({ min: 1, max: 4 }),
  impedance: between(0.1, 1.2),
  decay: between(0.1, 1.5),
});
const modes = fc
  .record({ frequency: between(80, 400), quality: between(8, 80), mass: between(0.05, 2) })
  .map(({ frequency, quality, mass }) => {
    const omega = 2 * Math.PI * frequency;
    return { pole: complex(omega, omega / (2 * quality)), felt: 1 / Math.sqrt(mass) };
  });

type Mode = { readonly pole: Complex; readonly felt: number };

/** As the mode is near its resonance: Y = −iφ²/2(ω − p), so that g² = f₁Z₀φ² is real. */
function under({ pole, felt }: Mode, { pitch, number }: Pick<Partial, 'pitch' | 'number'>) {
  const away = subtract(complex(2 * Math.PI * pitch * number), pole);
  return { pole, mobility: divide(complex(0, -(felt ** 2) / 2), away) };
}

describe('a partial and a mode', () => {
  test('the two frequencies solve (ω − ω_s)(ω − p) = g², and their shares add up to one', () => {
    fc.assert(
      fc.property(partials, modes, (partial, mode) => {
        const { roots, shares } = splitNote(partial, under(mode, partial), ZERO);
        const string = complex(2 * Math.PI * partial.number * partial.pitch, partial.decay);
        const g2 = partial.pitch * partial.impedance * mode.felt ** 2;
        for (const root of roots) {
          const left = multiply(subtract(root, string), subtract(root, mode.pole));
          expect(size(subtract(left, complex(g2)))).toBeLessThan(1e-6 * (g2 + size(subtract(string, mode.pole)) ** 2));
        }
        expect(
          size(subtract(complex(1), complex(shares[0].re + shares[1].re, shares[0].im + shares[1].im))),
        ).toBeLessThan(1e-9);
        // Neither grows.
        for (const root of roots) expect(root.im).toBeGreaterThan(0);
      }),
      { numRuns: 1000 },
    );
  });

  test('on a saddle that does not move the string has its own decay', () => {
    fc.assert(
      fc.property(partials, modes, (partial, { pole }) => {
        const { roots, coupling } = splitNote(partial, { pole, mobility: ZERO }, ZERO);
        expect(roots[0].im).toBeCloseTo(partial.decay, 9);
        expect(coupling).toBe(0);
      }),
    );
  });

  test('a saddle that takes as much as the string loses itself takes half, and T₆₀ is halved', () => {
    fc.assert(
      fc.property(partials, (partial) => {
        const matched = complex(partial.decay / (2 * partial.pitch * partial.impedance));
        expect(weakDecay(partial, matched)).toBeCloseTo(2 * partial.decay, 9);
        const { roots } = splitNote(partial, { pole: complex(1e5, 10), mobility: ZERO }, matched);
        expect((2 * timeToFall60(roots[0].im)) / timeToFall60(partial.decay)).toBeCloseTo(1, 6);
      }),
    );
  });

  test('tuned to the mode and strongly coupled, each tone has half the energy and half the body’s decay', () => {
    const pole = complex(2 * Math.PI * 110, 15);
    const partial = { pitch: 110, number: 1, impedance: 1, decay: 0 };
    const { roots, shares, coupling } = splitNote(partial, under({ pole, felt: 5 }, partial), ZERO);
    expect(coupling).toBeGreaterThan(1);
    expect(size(shares[0])).toBeCloseTo(size(shares[1]), 9);
    for (const root of roots) expect(root.im).toBeCloseTo(7.5, 9);
    // Δω = 2√(g² − (γ/4)²), here with γ/2 = 15.
    expect(Math.abs(roots[0].re - roots[1].re)).toBeCloseTo(2 * Math.sqrt(110 * 25 - 7.5 ** 2), 6);
  });

  test('far from the mode the decay is the weak one, 2 f₁ Z₀ Re Y', () => {
    const mode = { pole: complex(2 * Math.PI * 180, 25), felt: 0.5 };
    const partial = { pitch: 110, number: 1, impedance: 0.5, decay: 0 };
    const omega = 2 * Math.PI * 110;
    const [re, im] = [size(mode.pole) ** 2 - omega ** 2, 2 * omega * mode.pole.im];
    const mobility = divide(complex(0, omega * mode.felt ** 2), complex(re, im));
    const { roots } = splitNote(partial, { pole: mode.pole, mobility }, ZERO);
    expect(roots[0].im / weakDecay(partial, mobility)).toBeCloseTo(1, 2);
  });
});

describe('a fingerboard', () => {
  test('a thousand random instruments: every number is one, no note outlasts its own string and the body', () => {
    fc.assert(
      fc.property(instruments, (input) => {
        const board = fingerboard(input);
        const slowest = Math.min(...board.modes.map(({ damping }) => damping / 2));
        for (const note of board.notes.flat()) {
          if (!note) continue;
          expect(Number.isFinite(note.level + note.bandSustain)).toBe(true);
          expect(note.sustain).toBeGreaterThan(0);
          // A sharp resonance of the body may outlast a dull string, and then lend it some of that.
          const longest = timeToFall60(Math.min(note.ownDecay, slowest));
          expect(note.sustain).toBeLessThan(1.02 * longest);
        }
        const { level, sustain, unevenness, shortest } = summaryOf(board);
        expect(Number.isFinite(level + sustain + unevenness)).toBe(true);
        expect(shortest).toBeLessThanOrEqual(sustain * (1 + 1e-12));
        for (const { better, beat } of wolvesOf(board)) expect(Number.isFinite(better + beat)).toBe(true);
      }),
      { numRuns: 1000, endOnFailure: true },
    );
  });

  test('on a body that does not move every note has its string’s own decay', () => {
    fc.assert(
      fc.property(instruments, (input) => {
        const modes = input.body.modes.map((mode) => ({ ...mode, atStrings: mode.atStrings.map(() => 0) }));
        const board = fingerboard({ ...input, body: { ...input.body, modes } });
        for (const note of board.notes.flat()) {
          if (!note) continue;
          const own = decayOf(input.strings[note.string]!.loss, note.pitch);
          expect(note.sustain).toBeCloseTo(timeToFall60(own), 6);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('a heavier top of the same resonance and area is softer and rings longer', () => {
    fc.assert(
      fc.property(instruments, (input) => {
        const heavier = input.body.modes.map((mode) =>
          mode.of === 'top'
            ? { ...mode, volume: mode.volume / 1.1, atStrings: mode.atStrings.map((felt) => felt / 1.1) }
            : mode,
        );
        const rigid = { ...input.body, volume: 1e6 };
        const [light, heavy] = [rigid, { ...rigid, modes: heavier }].map((body) =>
          summaryOf(fingerboard({ ...input, body })),
        );
        expect(heavy!.level).toBeLessThan(light!.level);
        expect(heavy!.sustain).toBeGreaterThan(light!.sustain * 0.999);
      }),
      { numRuns: 200 },
    );
  });

  test('each answer moves smoothly when a resonance sweeps past the notes: no step above 0.2 dB or 3 % per 0.1 Hz', () => {
    const [input] = fc.sample(instruments, { numRuns: 1 });
    let before: ReturnType<typeof summaryOf> | undefined;
    for (let f = 140; f < 190; f += 0.1) {
      const modes = input!.body.modes.map((mode) =>
        mode.of === 'top' && mode.main ? { ...mode, frequency: f } : mode,
      );
      const now = summaryOf(fingerboard({ ...input!, body: { ...input!.body, modes } }));
      if (before) {
        expect(Math.abs(now.level - before.level)).toBeLessThan(0.2);
        expect(Math.abs(Math.log(now.sustain / before.sustain))).toBeLessThan(0.03);
      }
      before = now;
    }
  });
});
