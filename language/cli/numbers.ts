/** Values as numbers for another program: in a unit, and in SI. */
import { unitFor } from '../reports/shop-values.js';
import { sameDimension } from '../quantities/dimension.js';
import type { Unit } from '../quantities/unit.js';
import { differenceFromSi, fromSi, unit as unitNamed } from '../quantities/units.js';
import type { DefinitionKind, QuantityValue, Value } from '../facts/facts.js';
import { quantitiesIn } from '../recipes/instrument/values.js';

/** Plain data: a number, a text, `null` for unknown, a list, or the ends of a range. */
export type Plain = number | string | null | readonly Plain[] | { readonly [key: string]: Plain };

export interface PlainValue {
  readonly value: Plain;
  readonly unit?: string;
  readonly si?: Plain;
  readonly tolerance?: number;
}

/** A value in the unit its path is shown in. */
export function plainValue(path: string, value: Value, kind?: DefinitionKind): PlainValue {
  const quantities = quantitiesIn(value);
  const first = quantities[0];
  if (!first) return { value: shapeOf(value, () => null) };
  const unit = commonUnit(first, quantities, unitFor(path, kind));
  const tolerance = value.kind === 'quantity' ? value.quantity.tolerance : undefined;
  return {
    value: shapeOf(value, ({ quantity }) => tidy(unit ? fromSi(quantity.si, unit) : quantity.si)),
    unit: unit?.symbol,
    si: shapeOf(value, ({ quantity }) => tidy(quantity.si)),
    ...(tolerance !== undefined && { tolerance: tidy(unit ? differenceFromSi(tolerance, unit) : tolerance) }),
  };
}

/** A computed number in the unit it is shown in. */
export function inUnit(si: number, symbol: string, how: 'value' | 'difference' = 'value'): number {
  const unit = symbol === '' ? undefined : unitNamed(symbol);
  if (!unit) return tidy(si);
  return tidy(how === 'value' ? fromSi(si, unit) : differenceFromSi(si, unit));
}

/** Twelve digits: what a double can promise after a conversion, without a tail of nines. */
export function tidy(number: number): number {
  return Number(number.toPrecision(12));
}

function shapeOf(value: Value, number: (quantity: QuantityValue) => Plain): Plain {
  switch (value.kind) {
    case 'quantity':
      return number(value);
    case 'range':
      return { ...(value.low && { low: number(value.low) }), ...(value.high && { high: number(value.high) }) };
    case 'size':
      return value.parts.map(number);
    case 'point':
      return { station: number(value.station), offset: number(value.offset) };
    case 'list':
      return value.items.map((item) => shapeOf(item, number));
    case 'text':
      return value.text;
    case 'name':
      return value.name;
    case 'date':
      return value.date;
    case 'unknown':
      return null;
    case 'unreadable':
      return value.written;
  }
}

function commonUnit(
  { quantity }: QuantityValue,
  all: readonly QuantityValue[],
  wanted: Unit | undefined,
): Unit | undefined {
  const unit = wanted && sameDimension(wanted.dimension, quantity.dimension) ? wanted : quantity.unit;
  return unit && all.every((each) => sameDimension(each.quantity.dimension, unit.dimension)) ? unit : undefined;
}
