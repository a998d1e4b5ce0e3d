/** Quantities written back as a maker would: the shop's unit, and no more digits than mean something. */
import { isNumber, productName, sameDimension, type Dimension } from './dimension.js';
import type { Quantity } from './quantity.js';
import { otherUnit, shopUnit } from './shop-units.js';
import type { Fineness, Unit } from './unit.js';
import { differenceFromSi, fromSi, unit as unitNamed } from './units.js';

export interface WriteOptions {
  /** The unit to write in, or a spelling of it; the shop's unit when absent, unknown or of another dimension. */
  readonly unit?: Unit | string;
  /** Standard uncertainty in SI: it decides the digits and is written after `±`. */
  readonly uncertainty?: number;
  /** Significant digits, instead of the unit's habit. */
  readonly digits?: number;
  /** Exactly so many decimals, for a column of figures. */
  readonly decimals?: number;
  /** The value is a difference: temperatures lose their offset, and a gain is written with `+`. */
  readonly difference?: boolean;
}

/** `2.85 mm`, `172 g`, `11.20 ± 0.35 GPa`. A value that is not a finite number is written `unknown`. */
export function writeQuantity(si: number, dimension: Dimension, options: WriteOptions = {}): string {
  if (!Number.isFinite(si)) return 'unknown';
  const chosen = unitFor(si, dimension, options.unit);
  const convert = options.difference ? differenceFromSi : fromSi;
  const value = chosen === undefined ? si : convert(si, chosen);
  const uncertainty = uncertaintyIn(chosen, options.uncertainty);
  const sign = options.difference && value > 0 ? '+' : '';
  const symbol = chosen?.symbol ?? (isNumber(dimension) ? '' : productName(dimension.exponents));
  const number = uncertainty === undefined ? writeNumber(value, chosen, options) : withUncertainty(value, uncertainty);
  return withSymbol(sign + number, symbol);
}

/** The same value in both systems: `2.79 mm (0.110 in)`. One only where both systems share the unit. */
export function writeBoth(si: number, dimension: Dimension, unit?: Unit | string): string {
  const first = writeQuantity(si, dimension, unit === undefined ? {} : { unit });
  const chosen = unitFor(si, dimension, unit);
  const other = chosen === undefined || !Number.isFinite(si) ? undefined : otherUnit(chosen);
  return other === undefined ? first : `${first} (${writeQuantity(si, dimension, { unit: other })})`;
}

/** A quantity as recipe text, in the unit it was written in, its tolerance too: `2.85 mm ± 0.05 mm`. */
export function writeAsText(quantity: Quantity): string {
  const { si, dimension, unit, tolerance } = quantity;
  const value = writeQuantity(si, dimension, { unit, digits: 6 });
  if (tolerance === undefined) return value;
  const half = writeQuantity(tolerance, dimension, {
    unit: unit ?? unitFor(si, dimension, unit),
    difference: true,
    digits: 6,
  });
  return `${value} ± ${half.replace(/^\+/, '')}`;
}

/** A number with the digits a value in this unit deserves, in ASCII, without the unit. */
export function writeNumber(value: number, unit: Unit | undefined, { digits, decimals }: WriteOptions = {}): string {
  if (!Number.isFinite(value)) return 'unknown';
  if (decimals !== undefined) return fixed(value, decimals);
  if (digits !== undefined) return trimmed(significant(value, digits));
  const habit: Fineness = unit?.shown ?? { digits: 3, decimals: 6 };
  const most = Math.max(habit.decimals, decimalsFor(value, habit.least ?? 2));
  const shown = trimmed(fixed(value, Math.min(most, decimalsFor(value, habit.digits))));
  return habit.keepZeros && decimalsIn(shown) < habit.decimals ? fixed(Number(shown), habit.decimals) : shown;
}

function unitFor(si: number, dimension: Dimension, wanted: Unit | string | undefined): Unit | undefined {
  const named = typeof wanted === 'string' ? unitNamed(wanted) : wanted;
  return named !== undefined && sameDimension(named.dimension, dimension) ? named : shopUnit(dimension, si);
}

function uncertaintyIn(unit: Unit | undefined, uncertainty: number | undefined): number | undefined {
  if (uncertainty === undefined || !Number.isFinite(uncertainty) || uncertainty === 0) return undefined;
  return Math.abs(unit === undefined ? uncertainty : differenceFromSi(uncertainty, unit));
}

/** Two significant digits of the uncertainty, and the value to the same place (JCGM 100:2008 "GUM", 7.2.6). */
function withUncertainty(value: number, uncertainty: number): string {
  const decimals = decimalsFor(uncertainty, 2);
  return `${fixed(value, decimals)} ± ${fixed(uncertainty, decimals)}`;
}

/** Decimals that show so many significant digits of the value once rounded; never fewer than none. */
function decimalsFor(value: number, digits: number): number {
  if (value === 0 || digits < 1) return 0;
  const exponent = Number(value.toExponential(digits - 1).split('e')[1]);
  return Math.max(0, digits - 1 - exponent);
}

function significant(value: number, digits: number): string {
  const wanted = Math.min(Math.max(Math.round(digits), 1), 17);
  return fixed(value, decimalsFor(value, wanted));
}

function fixed(value: number, decimals: number): string {
  const size = Math.abs(value);
  if (size >= 1e15) return String(Number(value.toPrecision(6)));
  if (size > 0 && decimals > 12) {
    const digits = decimals + 1 + Math.floor(Math.log10(size));
    return String(Number(value.toPrecision(Math.min(Math.max(digits, 1), 17))));
  }
  const text = value.toFixed(Math.min(decimals, 12));
  return Number(text) === 0 ? text.replace('-', '') : text;
}

function decimalsIn(text: string): number {
  return /^-?\d+(?:\.(\d+))?$/.exec(text)?.[1]?.length ?? 0;
}

function trimmed(text: string): string {
  return /^-?\d+\.\d+$/.test(text) ? text.replace(/\.?0+$/, '') : text;
}

function withSymbol(number: string, symbol: string): string {
  return symbol === '' ? number : `${number} ${symbol}`;
}
