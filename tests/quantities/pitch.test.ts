import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frequencyOf, nearestNote, readNote } from '../../language/quantities/pitch.js';

describe('note names', () => {
  // Equal temperament on A4 = 440 Hz (ISO 16:1975); the open strings to two decimals (from memory).
  it.each([
    ['A4', 440],
    ['A2', 110],
    ['E2', 82.41],
    ['D3', 146.83],
    ['G3', 196.0],
    ['B3', 246.94],
    ['E4', 329.63],
    ['C4', 261.63],
    ['F#3', 185.0],
    ['F♯3', 185.0],
    ['Gb3', 185.0],
    ['Bb2', 116.54],
    ['Cb4', 246.94],
    ['B#3', 261.63],
  ])('%s sounds at %d Hz', (name, hz) => {
    expect(frequencyOf(name)).toBeCloseTo(hz, 2);
  });

  it('asks for the octave', () => {
    const reading = readNote('F#');
    expect(reading).toMatchObject({ ok: false, code: 'missing-octave' });
    expect(reading).toHaveProperty('message', 'Which octave of F#? F#2 (92.5 Hz), F#3 (185.0 Hz), F#4 (370.0 Hz).');
    const near = readNote('F#+', [150, 250]);
    expect(near).toMatchObject({ code: 'missing-octave', candidates: [{ name: 'F#3' }] });
  });

  it('offers the proper spelling of a slip, and words for anything else', () => {
    expect(readNote('f#3')).toMatchObject({ ok: false, code: 'not-a-note', suggestions: ['F#3'] });
    for (const text of ['H2', '', 'E22x', 'A440', '12', '###']) {
      expect(readNote(text)).toMatchObject({ ok: false, code: 'not-a-note', suggestions: [] });
    }
    expect(frequencyOf('F#')).toBeUndefined();
  });

  it('follows another tuning fork', () => {
    expect(frequencyOf('A4', 432)).toBe(432);
    expect(nearestNote(432, 432)).toMatchObject({ name: 'A4', cents: 0 });
  });
});

describe('the nearest note', () => {
  it('names it and says how far off', () => {
    expect(nearestNote(185)).toMatchObject({ name: 'F#3' });
    expect(nearestNote(185)!.cents).toBeCloseTo(0.026, 3);
    expect(nearestNote(100)!.name).toBe('G2');
    expect(nearestNote(16.3516)!.name).toBe('C0');
    expect(nearestNote(8)!.name).toMatch(/^B-2|C-1$/);
  });

  it('is undefined for no frequency', () => {
    for (const hz of [0, -5, NaN, Infinity]) expect(nearestNote(hz)).toBeUndefined();
  });

  it('goes there and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 20, max: 4000, noNaN: true }), (hz) => {
        const near = nearestNote(hz)!;
        expect(Math.abs(near.cents)).toBeLessThanOrEqual(50 + 1e-9);
        expect(frequencyOf(near.name)! * 2 ** (near.cents / 1200)).toBeCloseTo(hz, 8);
      }),
    );
  });
});
