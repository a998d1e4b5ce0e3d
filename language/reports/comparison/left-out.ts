/** What two instruments have in common and a comparison leaves out: how far the formulas themselves may be off. */
import { writeQuantity } from '../../quantities/write.js';
import type { DerivedDifference } from '../../recipes/instrument/comparison.js';
import type { Wording } from '../../wording/wording.js';

/** One sentence for all rows; undefined where nothing to speak of cancels. */
export function leftOutInWords(rows: readonly DerivedDifference[], { say, some }: Wording): string | undefined {
  const told = rows.filter(({ quantity, a, cancelled }) => quantity.voicing && isWorthTelling(a, cancelled));
  if (told.length === 0) return undefined;
  const each = told.map(({ path, quantity, cancelled = 0 }) => {
    const amount = writeQuantity(cancelled, quantity.dimension, { unit: quantity.unit || undefined, digits: 1 });
    return `${path} ± ${amount}`;
  });
  return say`In both alike, and so in no difference: how far the formulas themselves may be off (${some(each)}).`;
}

/** A thousandth of the value is nothing to speak of. */
function isWorthTelling(value: number | undefined, cancelled: number | undefined): boolean {
  return value !== undefined && cancelled !== undefined && cancelled > 1e-3 * Math.abs(value);
}
