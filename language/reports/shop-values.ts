/**
 * Values as recipe text in the one unit the catalogue offers for their path, so that two that mean the same are written
 * the same: `110 thou` and `2.794 mm` both come out as `2.794 mm`.
 */
import { catalogue } from '../catalogue/catalogue.js';
import { isNumber, sameDimension } from '../quantities/dimension.js';
import { writeQuantity } from '../quantities/write.js';
import type { Unit } from '../quantities/unit.js';
import { unit as unitNamed } from '../quantities/units.js';
import type { DefinitionKind, QuantityValue, Value } from '../facts/facts.js';
import { valueText } from '../recipes/instrument/value-text.js';

/** What was written keeps six digits; what was computed has those that mean something at the bench. */
const WRITTEN_DIGITS = 6;

export function writeInShopUnit(path: string, value: Value, kind?: DefinitionKind): string {
  const unit = unitFor(path, kind);
  return valueText(value, (number) => writeNumber(number, unit));
}

/** The unit a path is shown in. */
export function unitFor(path: string, kind?: DefinitionKind): Unit | undefined {
  const symbol = catalogue.property(path, kind)?.unit;
  return symbol === undefined ? undefined : unitNamed(symbol);
}

function writeNumber({ quantity, written }: QuantityValue, wanted: Unit | undefined): string {
  const { si, dimension, tolerance } = quantity;
  if (quantity.unit === undefined && isNumber(dimension)) return written || String(Number(si.toPrecision(6)));
  const unit = wanted && sameDimension(wanted.dimension, dimension) ? wanted : quantity.unit;
  const number = writeQuantity(si, dimension, { unit, digits: written === '' ? undefined : WRITTEN_DIGITS });
  if (tolerance === undefined) return number;
  return `${number} ± ${writeQuantity(tolerance, dimension, { unit, difference: true, digits: WRITTEN_DIGITS }).replace(/^\+/, '')}`;
}
