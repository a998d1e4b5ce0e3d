/** Two dimensions that do not go together, told in plain words. */
import { isNumber, sameDimension, withArticle, type Dimension } from './dimension.js';
import type { Quantity } from './quantity.js';
import type { Unit } from './unit.js';
import { numberOf, unitsOf } from './units.js';

export interface Mismatch {
  readonly ok: false;
  /** `missing-unit`: a bare number where a dimension is needed. `wrong-dimension`: a unit of another kind. */
  readonly code: 'missing-unit' | 'wrong-dimension';
  readonly expected: Dimension;
  readonly found: Dimension;
  readonly message: string;
  /** Units (canonical spellings) that would fit, best first. */
  readonly suggestions: readonly string[];
}

export function isMismatch(value: object): value is Mismatch {
  return 'ok' in value && value.ok === false && 'expected' in value;
}

/** Undefined when the quantity has the dimension; otherwise what is wrong, with units that would fit. */
export function expectDimension(quantity: Quantity, dimension: Dimension): Mismatch | undefined {
  if (sameDimension(quantity.dimension, dimension)) return undefined;
  return mismatch(quantity, dimension);
}

/** Describes why `quantity` does not fit where `expected` is needed. */
export function mismatch(quantity: Quantity, expected: Dimension): Mismatch {
  const written = quantity.unit?.symbol;
  const suggestions = fittingUnits(expected, quantity.unit);
  const bare = quantity.unit === undefined && isNumber(quantity.dimension);
  const hint = suggestions.length === 0 ? '' : ` Use ${suggestions.join(' or ')}.`;
  const code = bare ? 'missing-unit' : 'wrong-dimension';
  const message = bare
    ? `${number(quantity)} has no unit, and ${withArticle(expected)} needs one.${hint}`
    : isNumber(expected)
      ? `A plain number is needed here, not ${withArticle(quantity.dimension)}${written === undefined ? '' : ` in ${written}`}.`
      : `${foundWords(quantity, written)} where ${withArticle(expected)} is needed.${hint}`;
  return { ok: false, code, expected, found: quantity.dimension, message, suggestions };
}

function foundWords(quantity: Quantity, written: string | undefined): string {
  if (isNumber(quantity.dimension)) return written === '%' ? 'Per cent' : 'A plain number';
  const words = withArticle(quantity.dimension);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${written === undefined ? '' : ` (${written})`}`;
}

/** A slip between units that look or sound alike is mended by the other one; else the dimension's usual units. */
function fittingUnits(expected: Dimension, written: Unit | undefined): string[] {
  if (isNumber(expected)) return [];
  const alike = written === undefined ? [] : (ALIKE.get(written.symbol) ?? []);
  const fitting = unitsOf(expected).filter(({ symbol }) => alike.includes(symbol));
  if (fitting.length > 0) return fitting.map(({ symbol }) => symbol);
  const all = unitsOf(expected);
  const metric = all.find((one) => one.system !== 'inch');
  const inch = all.find((one) => one.system === 'inch');
  return [metric, inch].flatMap((one) => one?.symbol ?? []);
}

const ALIKE: ReadonlyMap<string, readonly string[]> = new Map([
  ['lb', ['lbf']],
  ['oz', ['ozf']],
  ['kg', ['kgf', 'N']],
  ['g', ['gf']],
  ['lbf', ['lb']],
  ['ozf', ['oz']],
  ['kgf', ['kg']],
  ['gf', ['g']],
  ['N', ['kg', 'g']],
  ['lb/in', ['lbf/in']],
  ['lbf/in', ['lb/in']],
  ['deg', ['°C', '°F']],
  ['°C', ['deg']],
  ['°F', ['deg']],
  ['%', ['%RH', '%MC', 'cents']],
  ['%RH', ['%MC', '%']],
  ['%MC', ['%RH', '%']],
  ['N·m', ['N·m²', 'N/m']],
  ['N·m²', ['N·m', 'N/m']],
  ['N/m', ['N·m']],
  ['Hz', ['cents']],
  ['cents', ['Hz']],
]);

function number(quantity: Quantity): string {
  return String(Number(numberOf(quantity).toPrecision(6)));
}
