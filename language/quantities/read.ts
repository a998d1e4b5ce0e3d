/** From words on the page to quantities. */
import { add } from './arithmetic.js';
import { DIMENSION, type Dimension } from './dimension.js';
import { isMismatch, type Mismatch } from './mismatch.js';
import { readNumber } from './number.js';
import type { Quantity } from './quantity.js';
import { suggestUnits, toSi, unit } from './units.js';
import { ENGLISH, type Wording } from '../wording/wording.js';

export { readNumber } from './number.js';

export type QuantityReading =
  | { readonly ok: true; readonly quantity: Quantity }
  | {
      readonly ok: false;
      readonly code: 'unknown-unit' | 'bad-number';
      readonly message: string;
      /** Texts for the part at fault (the unit, or the number), best first. */
      readonly suggestions: readonly string[];
    };

/**
 * Reads a number and, where there is one, its unit: `('7/64', '"')`, `('2.85', 'mm')`, `('9/10')`. Without a unit the
 * quantity is a pure number. `expected` only sharpens the suggestions for an unknown unit. Never throws.
 */
export function readQuantity(
  numberText: string,
  unitText?: string,
  expected?: Dimension,
  wording: Wording = ENGLISH,
): QuantityReading {
  const { say } = wording;
  const reading = readNumber(numberText, wording);
  if (!reading.ok) return reading;
  if (unitText === undefined || unitText.trim() === '') {
    return { ok: true, quantity: { si: reading.number, dimension: DIMENSION.number } };
  }
  const found = unit(unitText);
  if (found === undefined) return unknownUnit(unitText, expected, wording);
  const si = toSi(reading.number, found);
  if (!Number.isFinite(si)) {
    return {
      ok: false,
      code: 'bad-number',
      message: say`"${numberText.trim()}" is too large to be meant.`,
      suggestions: [],
    };
  }
  return { ok: true, quantity: { si, dimension: found.dimension, unit: found } };
}

/** `5 ft 3 in`: the parts of one value written in several units, added up; the first unit is remembered. */
export function addQuantities(parts: readonly [Quantity, ...Quantity[]]): Quantity | Mismatch {
  const [first, ...rest] = parts;
  let sum: Quantity = first;
  for (const part of rest) {
    // -5 ft 3 in is minus (5 ft 3 in).
    const next = add(sum, first.si < 0 ? { ...part, si: -part.si } : part);
    if (isMismatch(next)) return next;
    sum = next;
  }
  return sum;
}

function unknownUnit(written: string, expected: Dimension | undefined, { say, text }: Wording): QuantityReading {
  const word = written.trim().slice(0, 40);
  const suggestions = suggestUnits(word, expected);
  const message =
    suggestions.length === 0
      ? say`"${word}" is not a unit I know.`
      : say`"${word}" is not a unit I know: did you mean ${suggestions.join(` ${text('or')} `)}?`;
  return { ok: false, code: 'unknown-unit', message, suggestions };
}
