/** A way to a wish in words. */
import { STAGES } from '../../catalogue/property.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Dimension } from '../../quantities/dimension.js';
import { type Effect, isDiscernible } from '../../recipes/evaluation/effects.js';
import { computed } from '../../recipes/instrument/instrument.js';
import type { Way, Ways } from '../../recipes/ways/ways.js';
import { sentences, type Wording } from '../../wording/wording.js';
import { writeInShopUnit } from '../shop-values.js';

export interface WayInWords {
  /** `bracing.x-bass.height and bracing.x-treble.height: 15.9 mm → 15.3 mm` */
  readonly change: string;
  /** `170.1 ± 2.4 Hz, from 178 Hz` */
  readonly result: string;
  /** What else it moves: what can be told first. */
  readonly also: string;
  /** Until when it can be done. */
  readonly until: string;
}

export function wayInWords(way: Way, { quantity }: Ways, wording: Wording): WayInWords {
  const { say, and } = wording;
  const { dimension, unit } = quantity!;
  const write = (si: number) => writeQuantity(si, dimension, { unit });
  const sure = writeQuantity(way.after, dimension, { unit, uncertainty: 1.96 * way.error });
  return {
    change: say`${and(way.paths)}: ${sizeInWords(way, way.old)} → ${sizeInWords(way, way.new)}`,
    result: say`${sure}, from ${write(way.before)}`,
    also: alsoInWords(way.also, wording),
    until: untilInWords(way, wording),
  };
}

/** As the recipe would say it. */
export function sizeInWords({ paths, from }: Pick<Way, 'paths' | 'from'>, si: number): string {
  if (from.value.kind !== 'quantity') return '';
  const { quantity, span } = from.value;
  const tidy = Number(si.toPrecision(9));
  return writeInShopUnit(paths[0]!, computed({ ...quantity, si: tidy, tolerance: undefined }, span));
}

function alsoInWords(also: readonly Effect[], wording: Wording): string {
  const { say, text, some } = wording;
  const told = also.filter(isDiscernible);
  if (told.length === 0) return text('Nothing else moves by more than can be told.');
  return say`It also moves ${some(told.map(written), 3)}, which can be told.`;
}

function written({ path, quantity, difference }: Effect): string {
  return `${path} ${signed(difference, quantity.dimension, quantity.unit)}`;
}

function signed(si: number, dimension: Dimension, unit: string): string {
  return writeQuantity(si, dimension, { unit, difference: true }).replace(/^-/, '−');
}

function untilInWords({ until: { costly, impossible }, paths }: Way, wording: Wording): string {
  const { say, text } = wording;
  const stage = (name: (typeof STAGES)[number]) => text(name);
  const shaving = paths.every((path) => /^(back-)?bracing\./.test(path)) && costly === 'closing';
  if (shaving && !impossible) {
    return text('Free until the box is closed; after that by shaving the brace through the hole.');
  }
  const parts = [
    ...(costly ? [say`free until ${stage(costly)} is done`] : []),
    ...(impossible ? [say`impossible after ${stage(impossible)}`] : []),
  ];
  if (parts.length === 0) return text('Possible at any time.');
  return sentences(`${parts.join(', ')}.`.replace(/^./, (letter) => letter.toUpperCase()));
}
