/** The maker's word for a difference: a plate is thinner, a brace lower, a mass lighter. Never told by colour alone. */
import { DIMENSION, type Dimension, sameDimension } from '../../quantities/dimension.js';
import type { Wording } from '../../wording/wording.js';
import { english } from '../../wording/wording.js';

/** `thinner` for a thickness that went down; `less` where the trade has no word of its own. `by` in any unit, not zero. */
export function moreOrLess(path: string, dimension: Dimension | undefined, by: number, wording: Wording): string {
  const last = path.slice(path.lastIndexOf('.') + 1);
  const named = (text: string) => BY_NAME.find(([name]) => name.test(text));
  // `stiffness.along` says what it is only in the word before.
  const found = named(last) ?? BY_DIMENSION.find(([of]) => isOf(of, dimension)) ?? named(path);
  const [less, more] = found?.[1] ?? [english('less'), english('more')];
  return wording.text(by < 0 ? less : more);
}

function isOf(dimension: Dimension, other: Dimension | undefined): boolean {
  return other !== undefined && sameDimension(dimension, other);
}

type Pair = readonly [less: string, more: string];

const BY_NAME: readonly (readonly [name: RegExp, words: Pair])[] = [
  [/thickness|film/, [english('thinner'), english('thicker')]],
  [/width|distance/, [english('narrower'), english('wider')]],
  [/height|action|protrusion|crown|rise|dip|belly/, [english('lower'), english('higher')]],
  [/depth/, [english('shallower'), english('deeper')]],
  [/length|scale|span/, [english('shorter'), english('longer')]],
  [/diameter|radius|area|volume|size/, [english('smaller'), english('larger')]],
  [/stiffness|modulus/, [english('less stiff'), english('stiffer')]],
  [/compliance|sag|deflection/, [english('stiffer'), english('softer')]],
  [/tension/, [english('slacker'), english('tighter')]],
  [/station/, [english('nearer the tail'), english('farther from the tail')]],
  [/density/, [english('lighter'), english('denser')]],
];

const BY_DIMENSION: readonly (readonly [of: Dimension, words: Pair])[] = [
  [DIMENSION.mass, [english('lighter'), english('heavier')]],
  [DIMENSION.frequency, [english('lower'), english('higher')]],
  [DIMENSION.temperature, [english('cooler'), english('warmer')]],
];
