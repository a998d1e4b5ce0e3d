/** Note names and frequencies in equal temperament, A4 = 440 Hz (ISO 16:1975). */

/** ISO 16:1975: standard tuning frequency, Hz. */
export const STANDARD_A4 = 440;

export interface Note {
  /** `F#3`, in scientific pitch notation, middle C being C4. */
  readonly name: string;
  readonly hz: number;
}

export type NoteReading =
  | { readonly ok: true; readonly note: Note }
  /** A note without an octave: the notes it may be, lowest first. */
  | {
      readonly ok: false;
      readonly code: 'missing-octave';
      readonly message: string;
      readonly candidates: readonly Note[];
    }
  | {
      readonly ok: false;
      readonly code: 'not-a-note';
      readonly message: string;
      readonly suggestions: readonly string[];
    };

/** Hz; where a body resonance or an open string of a guitar may lie. */
const USUAL: readonly [number, number] = [60, 500];

/**
 * Reads `E2`, `F#3`, `Bb2`, `C♯4`. A `+` or `-` at the end ("a little sharp, a little flat") is allowed and ignored.
 * `range` (Hz) chooses the octaves offered when none is written. Frequencies are exact to double rounding.
 */
export function readNote(written: string, range: readonly [number, number] = USUAL, a4 = STANDARD_A4): NoteReading {
  const parts = /^([A-G])([#♯b♭]?)(-?\d{1,2})?[+-]?$/.exec(written.trim());
  if (parts === null) {
    const proper = written.trim().charAt(0).toUpperCase() + written.trim().slice(1).toLowerCase();
    const suggestions = /^[A-G][#♯b♭]?\d?[+-]?$/.test(proper) && proper !== written.trim() ? [proper] : [];
    const hint = suggestions.length > 0 ? ` Did you mean ${suggestions.join()}?` : ' Write it like E2, F#3 or Bb2.';
    return {
      ok: false,
      code: 'not-a-note',
      message: `"${written.trim().slice(0, 40)}" is not a note.${hint}`,
      suggestions,
    };
  }
  const name = `${parts[1]}${parts[2] === '♯' ? '#' : parts[2] === '♭' ? 'b' : (parts[2] ?? '')}`;
  if (parts[3] !== undefined) {
    const note = noteNamed(name, Number(parts[3]), a4);
    return { ok: true, note };
  }
  const candidates = OCTAVES.map((octave) => noteNamed(name, octave, a4)).filter(
    ({ hz }) => hz >= range[0] && hz <= range[1],
  );
  const options = candidates.map((note) => `${note.name} (${note.hz.toFixed(1)} Hz)`).join(', ');
  const message = `Which octave of ${name}?${options === '' ? '' : ` ${options}.`}`;
  return { ok: false, code: 'missing-octave', message, candidates };
}

/** Frequency in Hz of a note such as `A4`; undefined for anything that is not a note with its octave. */
export function frequencyOf(name: string, a4 = STANDARD_A4): number | undefined {
  const reading = readNote(name, USUAL, a4);
  return reading.ok ? reading.note.hz : undefined;
}

/**
 * The nearest note of the scale and how far the frequency lies above it (+) or below (−), in cents, -50 to 50.
 * Undefined unless the frequency is finite and positive.
 */
export function nearestNote(hz: number, a4 = STANDARD_A4): (Note & { readonly cents: number }) | undefined {
  if (!Number.isFinite(hz) || hz <= 0) return undefined;
  const steps = 12 * Math.log2(hz / a4);
  const nearest = Math.round(steps);
  const fromC0 = nearest + 57; // A4 is 57 semitones above C0
  const name = `${SHARPS[((fromC0 % 12) + 12) % 12]}${Math.floor(fromC0 / 12)}`;
  return { name, hz: a4 * 2 ** (nearest / 12), cents: (steps - nearest) * 100 };
}

const OCTAVES = [0, 1, 2, 3, 4, 5, 6, 7, 8];
const SHARPS = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'];
const SEMITONE: ReadonlyMap<string, number> = new Map(
  Object.entries<number>({ C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 }),
);

function noteNamed(name: string, octave: number, a4: number): Note {
  const step = (SEMITONE.get(name.charAt(0)) ?? 0) + (name[1] === '#' ? 1 : name[1] === 'b' ? -1 : 0);
  return { name: `${name}${octave}`, hz: a4 * 2 ** ((step + 12 * octave - 57) / 12) };
}
