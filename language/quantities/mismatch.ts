/** Two dimensions that do not go together, told in plain words. */
import { isNumber, withArticle, type Dimension } from './dimension.js';
import type { Quantity } from './quantity.js';
import type { Unit } from './unit.js';
import { numberOf, unitsOf } from './units.js';
import { ENGLISH, english, sentences, type Wording } from '../wording/wording.js';

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

/** Describes why `quantity` does not fit where `expected` is needed. */
export function mismatch(quantity: Quantity, expected: Dimension, wording: Wording = ENGLISH): Mismatch {
  const { say, text } = wording;
  const written = quantity.unit?.symbol;
  const suggestions = fittingUnits(expected, quantity.unit);
  const bare = quantity.unit === undefined && isNumber(quantity.dimension);
  const hint = suggestions.length === 0 ? '' : say`Use ${suggestions.join(` ${text('or')} `)}.`;
  const [wanted, found] = [withArticle(expected, wording), withArticle(quantity.dimension, wording)];
  const code = bare ? 'missing-unit' : 'wrong-dimension';
  const message = bare
    ? sentences(say`${number(quantity)} has no unit, and ${wanted} needs one.`, hint)
    : isNumber(expected)
      ? written === undefined
        ? say`A plain number is needed here, not ${found}.`
        : say`A plain number is needed here, not ${found} in ${written}.`
      : sentences(say`${foundWords(quantity, written, wording)} where ${wanted} is needed.`, hint);
  return { ok: false, code, expected, found: quantity.dimension, message, suggestions };
}

function foundWords(quantity: Quantity, written: string | undefined, wording: Wording): string {
  if (isNumber(quantity.dimension))
    return wording.text(written === '%' ? english('Per cent') : english('A plain number'));
  const words = withArticle(quantity.dimension, wording);
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
