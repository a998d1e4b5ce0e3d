/** Values on paper, as they were written: who measures in inches finds the inches, with the millimetres beside them. */
import { unitFor, writeInShopUnit } from '../editing/shop-values.js';
import { writeQuantity } from '../quantities/write.js';
import type { Value } from '../recipes/facts.js';

export function writeOnPaper(path: string, value: Value): string {
  const shopUnit = unitFor(path);
  const inInches = value.kind === 'quantity' && value.quantity.unit?.system === 'inch' && value.written !== '';
  if (!inInches || shopUnit === undefined || shopUnit.system === 'inch') return writeInShopUnit(path, value);
  const { si, dimension } = value.quantity;
  return `${value.written} (${writeQuantity(si, dimension, { unit: shopUnit, digits: METRIC_DIGITS })})`;
}

/** 5/16" is 7.938 mm; more digits than that nobody can plane to. */
const METRIC_DIGITS = 4;
