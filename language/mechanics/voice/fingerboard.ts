/** Every note from the open strings to the twelfth fret, what they come to together, and which of them are wolves. */
import { MechanicsError, positive } from '../error.js';
import { size } from './complex.js';
import { checkedBody, type CoupledBodyMode, coupledBodyModes, response, type SoundingBody } from './sounding-body.js';
import { BAND_TOP, type Instrument, type SoundingNote, soundingNote, type SoundingString } from './sounding-note.js';

export const LAST_FRET = 12;

export interface FingerboardInput {
  readonly body: SoundingBody;
  /** m */
  readonly scale: number;
  /** In the order of the body's `atStrings`. */
  readonly strings: readonly SoundingString[];
}

export interface Fingerboard extends Instrument {
  /** By string and fret; undefined above the band in which anything is told. */
  readonly notes: readonly (readonly (SoundingNote | undefined)[])[];
}

/** The same with one string for another, without working out the others again. */
export function withString(board: Fingerboard, string: number, other: SoundingString): Fingerboard {
  const strings = board.strings.map((each, s) => (s === string ? other : each));
  const instrument = { ...board, strings };
  return { ...instrument, notes: board.notes.map((row, s) => (s === string ? rowOf(instrument, s) : row)) };
}

/** Throws `MechanicsError` on numbers that are no instrument: a scale, weight or pitch not above zero, a loss below it. */
export function fingerboard({ body, scale, strings }: FingerboardInput): Fingerboard {
  if (strings.length === 0) throw new MechanicsError('strings', 'Without strings nothing sounds.');
  positive('scale', scale);
  strings.forEach(({ pitch }) => positive('pitch', pitch));
  const instrument = { body: checkedBody(body), modes: coupledBodyModes(body), scale, strings };
  return { ...instrument, notes: strings.map((_, s) => rowOf(instrument, s)) };
}

function rowOf(instrument: Instrument, string: number): Fingerboard['notes'][number] {
  return Array.from({ length: LAST_FRET + 1 }, (_, fret) => soundingNote(instrument, string, fret));
}

export interface Summary {
  /** dB: mean over the notes told. */
  readonly level: number;
  /** s: geometric mean of T₆₀. */
  readonly sustain: number;
  /** s: T₆₀ of the note that dies first. */
  readonly shortest: number;
  /** dB, root mean square: how far a note starts louder or softer than its two neighbours on the string. */
  readonly unevenness: number;
  /** How many notes that is. */
  readonly count: number;
}

/** Of all strings, or of one. Throws where no note lies in the band. */
export function summaryOf({ notes }: Fingerboard, string?: number): Summary {
  const rows = string === undefined ? notes : [notes[string] ?? []];
  const told = rows.flat().filter((note) => note !== undefined);
  if (told.length === 0) throw new MechanicsError('strings', 'No note of these strings lies below 400 Hz.');
  const mean = (of: (note: SoundingNote) => number) => told.reduce((sum, note) => sum + of(note), 0) / told.length;
  const uneven = rows.flatMap((row) =>
    row.flatMap((note, fret) => {
      const [before, after] = [row[fret - 1], row[fret + 1]];
      return note && before && after ? [(note.level - (before.level + after.level) / 2) ** 2] : [];
    }),
  );
  return {
    level: mean(({ level }) => level),
    sustain: Math.exp(mean(({ sustain }) => Math.log(sustain))),
    shortest: Math.min(...told.map(({ sustain }) => sustain)),
    unevenness: uneven.length === 0 ? 0 : Math.sqrt(uneven.reduce((sum, square) => sum + square, 0) / uneven.length),
    count: told.length,
  };
}

/** s/kg: the greatest mobility below `BAND_TOP` of the saddle under a string, at one of the body's resonances. */
export function mobilityUnder({ body, modes }: Fingerboard, string: number): number {
  const peaks = modes
    .filter(({ frequency }) => frequency > 0 && frequency < BAND_TOP)
    .map(({ frequency }) => size(response(body, string, 2 * Math.PI * frequency).mobility));
  return Math.max(0, ...peaks);
}

/** A note that the body takes apart. */
export interface Wolf {
  readonly note: SoundingNote;
  /** Hz between the two tones: how fast it warbles. */
  readonly beat: number;
  /** 0 … 1: the second tone beside the first. */
  readonly evenly: number;
  /** The resonance of the body behind it. */
  readonly mode: CoupledBodyMode;
  /** Hz: the nearest place for it midway between two notes. */
  readonly better: number;
}

/** A second tone of less than this share of the first is not heard as one of two. */
const AUDIBLE_SECOND = 0.5;

/**
 * Notes with strong coupling whose two tones are both heard, the worst first; of several notes split by the same resonance
 * on the same string only the worst. A second tone counts from half the first; this line is ours.
 */
export function wolvesOf({ notes, modes }: Fingerboard): readonly Wolf[] {
  const worst = new Map<string, Wolf>();
  for (const note of notes.flat()) {
    if (!note || note.split.coupling <= 1) continue;
    const { shares, roots, with: which } = note.split;
    const evenly = size(shares[1]) / size(shares[0]);
    if (evenly < AUDIBLE_SECOND) continue;
    const mode = modes[which]!;
    const beat = Math.abs(roots[0].re - roots[1].re) / (2 * Math.PI);
    const better = nearestGap(note.pitch, mode.frequency);
    const key = `${note.string} ${which}`;
    const known = worst.get(key);
    if (!known || evenly > known.evenly) worst.set(key, { note, mode, beat, evenly, better });
  }
  return [...worst.values()].sort((a, b) => a.note.sustain - b.note.sustain);
}

/** Hz: midway between this note and the one above or below, whichever the resonance is nearer to. */
function nearestGap(tone: number, resonance: number): number {
  return resonance >= tone ? tone * 2 ** (1 / 24) : tone * 2 ** (-1 / 24);
}
