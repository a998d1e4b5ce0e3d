/** What is heard of two instruments, note by note over the fingerboard, and their wolves. */
import { BAND_TOP, LAST_FRET, type SoundingNote, STANDARD_PLUCK } from '../../mechanics/voice/index.js';
import { noteName, wolfSentences } from '../../checks/voice/wolf-words.js';
import { shownDifference } from '../../checks/phrases.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import { heardOf, type Voice } from '../../recipes/derived/voice-board.js';
import type { Comparison } from '../../recipes/instrument/comparison.js';
import type { Workshop } from '../../recipes/workshop.js';
import { shareOf } from '../figures.js';

export interface ComparedFingerboard {
  /** What was plucked, and what is not told. */
  readonly pluck: string;
  /** The highest first. */
  readonly strings: readonly ComparedString[];
  /** One sentence each; the worst first. */
  readonly wolves: { readonly a: readonly string[]; readonly b: readonly string[] };
}

export interface ComparedString {
  /** Its open note. */
  readonly name: string;
  /** By fret, as far as either is told. */
  readonly notes: readonly ComparedNote[];
}

export interface ComparedNote {
  readonly fret: number;
  readonly note: string;
  readonly a?: HeardNote;
  readonly b?: HeardNote;
  /** `+0.6 dB` and `+12 %`: the second against the first. */
  readonly louder?: string;
  readonly longer?: string;
}

export interface HeardNote {
  /** dB and s, for drawing. */
  readonly level: number;
  readonly sustain: number;
  /** The same in words: `82.1 dB`, `4.3 s`. */
  readonly loud: string;
  readonly long: string;
}

/** Undefined unless both can be worked out. */
export function comparedFingerboard(workshop: Workshop, { a, b }: Comparison): ComparedFingerboard | undefined {
  const [one, other] = [heardOf(a.evaluation), heardOf(b.evaluation)];
  if (!one || !other) return undefined;
  const { wording } = workshop;
  const count = Math.min(one.board.strings.length, other.board.strings.length);
  const { force, fromSaddle } = STANDARD_PLUCK;
  return {
    pluck: wording.say`Each string is drawn straight up with ${force} N, ${fromSaddle * 1000} mm from the saddle, and let go; loudness one metre away, over the first eighth of a second. Above ${BAND_TOP} Hz nothing is told. Decibels and seconds are approximate: what differs is surer than what is.`,
    strings: Array.from({ length: count }, (_, s) => comparedString(one, other, s, workshop)),
    wolves: { a: wolfSentences(one, wording), b: wolfSentences(other, wording) },
  };
}

function comparedString(one: Voice, other: Voice, string: number, workshop: Workshop): ComparedString {
  const notes: ComparedNote[] = [];
  for (let fret = 0; fret <= LAST_FRET; fret++) {
    const [a, b] = [one.board.notes[string]?.[fret], other.board.notes[string]?.[fret]];
    if (!a && !b) continue;
    notes.push({
      fret,
      note: noteName((a ?? b)!.pitch),
      ...(a ? { a: heard(a) } : {}),
      ...(b ? { b: heard(b) } : {}),
      ...(a && b
        ? {
            louder: shownDifference(Math.round(10 * (b.level - a.level)) / 10, LEVEL),
            longer: shareOf(b.sustain / a.sustain - 1, workshop.wording),
          }
        : {}),
    });
  }
  return { name: noteName(one.board.strings[string]!.pitch), notes };
}

const LEVEL = { dimension: DIMENSION.level, unit: 'dB' };

function heard({ level, sustain }: SoundingNote): HeardNote {
  return {
    level,
    sustain,
    loud: writeQuantity(level, DIMENSION.level, { unit: 'dB', digits: 3 }),
    long: writeQuantity(sustain, DIMENSION.time, { unit: 's', digits: 2 }),
  };
}
