/** The three taps of a blank: as read, or, where one was not, worked out from the other modes that were. */
import { modeWord } from '../../facts/plate-mode.js';
import { MechanicsError } from '../../mechanics/error.js';
import { RELATED_MODES, tapsFromModes, type FittedTaps } from '../../mechanics/wood/tap-modes.js';
import type { Ask } from '../evaluation/derived-quantity.js';
import { RELATION_ERRORS } from './model-errors.js';

/** Hz; undefined where the tap was not read and the modes that were do not tell it. */
export function tapOf(ask: Ask, which: 'along' | 'across' | 'twist'): number | undefined {
  const read = ask.numberIf(`tap.${which}`);
  if (read !== undefined) return read;
  const found = ask.shared('taps from other modes', tapsFromOthers);
  if (found === undefined) return undefined;
  ask.doubt(RELATION_ERRORS[which]);
  return found[which];
}

function tapsFromOthers(ask: Ask): FittedTaps | undefined {
  const read = RELATED_MODES.map((mode) => {
    const word = modeWord({ linesAlong: Number(mode[0]), linesAcross: Number(mode[1]) });
    return [mode, ask.numberIf(`tap.${word}`)] as const;
  }).filter(([, frequency]) => frequency !== undefined);
  if (read.length < 3 || !isOfHalfPlate((path) => ask.numberIf(path))) return undefined;
  try {
    return tapsFromModes(Object.fromEntries(read));
  } catch (error) {
    // Too few to tell all three, or of no plate at all: a rule asks about that.
    if (error instanceof MechanicsError) return undefined;
    throw error;
  }
}

/** The relations between modes are those of half-plates, two to three and a half times as long as they are wide. */
export function isOfHalfPlate(number: (path: string) => number | undefined): boolean {
  const [length, width] = [number('blank.length'), number('blank.width')];
  if (length === undefined || width === undefined) return false;
  return length >= 2 * width && length <= 3.5 * width;
}
