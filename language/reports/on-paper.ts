/** Values on paper: who measures in inches finds the inches, with the millimetres beside them. */
import { unitFor, writeInShopUnit } from './shop-values.js';
import { DIMENSION } from '../quantities/dimension.js';
import { unit } from '../quantities/units.js';
import { writeQuantity } from '../quantities/write.js';
import type { Value } from '../facts/facts.js';
import type { ShopSettings } from '../recipes/instrument/shop-settings.js';

/**
 * A size written in inches, or in a shop that prints inches, has them first. What is usually said in feet and was written in
 * metres stays in metres: `9 m`, not 29.5276 ft. Everything else is in the catalogue's unit.
 */
export function writeOnPaper(path: string, value: Value, { units }: Pick<ShopSettings, 'units'>): string {
  if (value.kind !== 'quantity') return writeInShopUnit(path, value);
  const { quantity, written } = value;
  const usual = unitFor(path);
  if (usual?.symbol !== 'mm') {
    const isForeign = usual?.system === 'inch' && quantity.unit !== undefined && quantity.unit.system !== 'inch';
    if (!isForeign || units === 'inch') return writeInShopUnit(path, value);
    return writeQuantity(quantity.si, quantity.dimension, { unit: quantity.unit, digits: BENCH_DIGITS });
  }
  const wroteInches = quantity.unit?.system === 'inch' && written !== '';
  if (!wroteInches && units !== 'inch') return writeInShopUnit(path, value);
  return `${wroteInches ? written : length(quantity.si, 'in')} (${length(quantity.si, 'mm')})`;
}

/** A length in m that nobody wrote down as such, in the shop's units. */
export function lengthOnPaper(metres: number, { units }: Pick<ShopSettings, 'units'>): string {
  if (units === 'inch') return `${length(metres, 'in')} (${length(metres, 'mm')})`;
  return writeQuantity(metres, DIMENSION.length, { unit: unit('mm') });
}

function length(metres: number, symbol: 'in' | 'mm'): string {
  return writeQuantity(metres, DIMENSION.length, { unit: unit(symbol), digits: BENCH_DIGITS });
}

/** The unit the tolerance beside it is told in. */
export function unitOnPaper(path: string, { units }: Pick<ShopSettings, 'units'>): string | undefined {
  const symbol = unitFor(path)?.symbol;
  return symbol === 'mm' && units === 'inch' ? 'in' : symbol;
}

/** 5/16" is 7.938 mm; more digits than that nobody can plane to. */
const BENCH_DIGITS = 4;
