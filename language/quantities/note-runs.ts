/** Tunings as they are spoken: `E4 B3 G3 D3 A2 E2`, `EADGBE`, `DADGAD`. */

/** Semitones of the note names above C. */
const STEPS: ReadonlyMap<string, number> = new Map(
  Object.entries({ C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11, H: 11 }),
);
/** E2 A2 D3 G3 B3 E4, the open strings of a guitar from the sixth, as MIDI numbers (MIDI 1.0; A4 = 69). */
const STANDARD: readonly number[] = [40, 45, 50, 55, 59, 64];

/**
 * The notes, highest first as a set of strings is written; undefined where the words are no notes. Six letters without
 * octaves are a tuning from the sixth string: each is taken in the octave nearest to standard pitch.
 */
export function notesIn(written: string): readonly string[] | undefined {
  const words = written.trim().replace(/^"|"$/g, '');
  const withOctaves = words.split(/[\s,;/\u2013-]+/).filter((word) => word !== '');
  if (withOctaves.length > 1 && withOctaves.every((word) => /^[A-H][#b♯♭]?\d$/.test(word))) return withOctaves;
  const letters = [...words.replace(/[\s,;/\u2013-]+/g, '').matchAll(/[A-Ha-h][#b♯♭]?/g)].map(([note]) => note);
  if (letters.length !== STANDARD.length || letters.join('') !== words.replace(/[\s,;/\u2013-]+/g, ''))
    return undefined;
  return letters.map((letter, i) => nearest(letter, STANDARD[i] ?? 0)).reverse();
}

function nearest(letter: string, midi: number): string {
  const name = letter[0]!.toUpperCase().replace('H', 'B') + letter.slice(1);
  const sharp = /[#♯]/.test(letter) ? 1 : /[b♭]$/.test(letter.slice(1)) ? -1 : 0;
  const step = (STEPS.get(letter[0]!.toUpperCase()) ?? 0) + sharp;
  const octave = Math.round((midi - step) / 12) - 1;
  return `${name}${octave}`;
}
