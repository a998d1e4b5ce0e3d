/** The maker's word for a difference: a plate is thinner, a brace lower, a mass lighter. Never told by colour alone. */
import { DIMENSION, type Dimension, sameDimension } from '../quantities/dimension.js';
import type { Wording } from '../wording/wording.js';

/** `thinner` for a thickness that went down; `less` where the trade has no word of its own. `by` in any unit, not zero. */
export function moreOrLess(path: string, dimension: Dimension | undefined, by: number, wording: Wording): string {
  const last = path.slice(path.lastIndexOf('.') + 1);
  const named = (text: string) => BY_NAME.find(([name]) => name.test(text));
  // `stiffness.along` says what it is only in the word before.
  const found = named(last) ?? BY_DIMENSION.find(([of]) => isOf(of, dimension)) ?? named(path);
  const [less, more] = found?.[1] ?? ['less', 'more'];
  return wording.text(by < 0 ? less : more);
}

function isOf(dimension: Dimension, other: Dimension | undefined): boolean {
  return other !== undefined && sameDimension(dimension, other);
}

type Pair = readonly [less: string, more: string];

const BY_NAME: readonly (readonly [name: RegExp, words: Pair])[] = [
  [/thickness|film/, ['thinner', 'thicker']],
  [/width|distance/, ['narrower', 'wider']],
  [/height|action|protrusion|crown|rise|dip|belly/, ['lower', 'higher']],
  [/depth/, ['shallower', 'deeper']],
  [/length|scale|span/, ['shorter', 'longer']],
  [/diameter|radius|area|volume|size/, ['smaller', 'larger']],
  [/stiffness|modulus/, ['less stiff', 'stiffer']],
  [/compliance|sag|deflection/, ['stiffer', 'softer']],
  [/tension/, ['slacker', 'tighter']],
  [/station/, ['nearer the tail', 'farther from the tail']],
  [/density/, ['lighter', 'denser']],
];

const BY_DIMENSION: readonly (readonly [of: Dimension, words: Pair])[] = [
  [DIMENSION.mass, ['lighter', 'heavier']],
  [DIMENSION.frequency, ['lower', 'higher']],
  [DIMENSION.temperature, ['cooler', 'warmer']],
];
