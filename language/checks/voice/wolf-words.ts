/** A wolf in a maker's words: which note, why, what it does, and where the resonance would rather lie. */
import { type Wolf, wolvesOf } from '../../mechanics/voice/index.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { nearestNote } from '../../quantities/pitch.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Voice } from '../../recipes/derived/voice-board.js';
import { english, sentences, type Wording } from '../../wording/wording.js';

/** By the place of the string, the highest first. */
const STRING_NAMES = [
  english('the first string'),
  english('the second string'),
  english('the third string'),
  english('the fourth string'),
  english('the fifth string'),
  english('the sixth string'),
];

const RESONANCES = {
  top: english('the main top resonance'),
  back: english('the main back resonance'),
  air: english('the main air resonance'),
} as const;

/** One for each note that a resonance splits, on however many strings, the worst first. */
export function wolfSentences({ board }: Voice, wording: Wording): readonly string[] {
  const byNote = new Map<string, Wolf[]>();
  for (const wolf of wolvesOf(board)) {
    const key = `${wolf.mode.frequency} ${nearestNote(wolf.note.pitch)?.name}`;
    byNote.set(key, [...(byNote.get(key) ?? []), wolf]);
  }
  return [...byNote.values()].map((wolves) => sentenceOf(wolves, board, wording));
}

function sentenceOf(wolves: readonly Wolf[], { body }: Voice['board'], wording: Wording): string {
  const { say, and } = wording;
  const { note, mode, beat, better } = wolves[0]!;
  const where = and(
    [...wolves].sort((a, b) => a.note.string - b.note.string).map((each) => stringName(each.note.string, wording)),
  );
  const part = body.modes[mode.mostly]!;
  const resonance = part.main ? wording.text(RESONANCES[part.of]) : say`a higher top resonance`;
  const split = say`${noteName(note.pitch)} on ${where} is split by ${resonance} (${hertz(mode.frequency)}): it warbles ${beat.toFixed(0)} times a second and falls by 60 dB in ${note.sustain.toFixed(1)} s.`;
  const shift = Math.abs(better - mode.frequency);
  const move =
    better > mode.frequency
      ? say`With that resonance ${hertz(shift)} higher, at ${hertz(better)}, it would lie between two notes.`
      : say`With that resonance ${hertz(shift)} lower, at ${hertz(better)}, it would lie between two notes.`;
  return sentences(split, move);
}

export function stringName(string: number, { text, say }: Wording): string {
  const name = STRING_NAMES[string];
  return name === undefined ? say`string ${string + 1}` : text(name);
}

export function noteName(hz: number): string {
  return nearestNote(hz)?.name ?? '';
}

function hertz(frequency: number): string {
  return writeQuantity(frequency, DIMENSION.frequency, { unit: 'Hz', digits: frequency < 10 ? 2 : 3 });
}
