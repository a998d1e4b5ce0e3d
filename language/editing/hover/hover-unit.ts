/** Hover on a unit: what it is, and the value in the units of the other system. */
import { otherUnit } from '../../quantities/shop-units.js';
import { unitsOf } from '../../quantities/units.js';
import { writeQuantity } from '../../quantities/write.js';
import type { QuantityValue } from '../../facts/facts.js';
import { paragraphs, plain } from '../markdown.js';
import { cited } from '../../wording/cited.js';
import { type Wording } from '../../wording/wording.js';

export function unitHover(value: QuantityValue, wording: Wording): string | undefined {
  const { si, dimension, unit } = value.quantity;
  if (!unit) return undefined;
  const other = otherUnit(unit);
  const others = [other, ...unitsOf(dimension).filter((each) => each.system !== unit.system)].flatMap((each) =>
    each === undefined ? [] : [writeQuantity(si, dimension, { unit: each })],
  );
  const [first] = others;
  const conversion = first === undefined ? undefined : `${plain(value.written)} = ${first}`;
  return paragraphs(
    `**${plain(unit.symbol)}**: ${plain(wording.text(unit.sentence))}`,
    conversion,
    `(${plain(cited(unit.source, wording))})`,
  );
}
