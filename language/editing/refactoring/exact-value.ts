/** Quantities written so that reading them gives the same again, in whichever unit. */
import { differenceFromSi, differenceToSi, fromSi, toSi } from '../../quantities/units.js';
import type { Quantity } from '../../quantities/quantity.js';
import type { Unit } from '../../quantities/unit.js';

/** `0.125 in`, `2.85 mm ± 0.05 mm`; undefined where no twelve figures say it. */
export function writeExactly({ si, tolerance }: Quantity, unit: Unit): string | undefined {
  const value = figures(si, (number) => toSi(number, unit), fromSi(si, unit));
  if (value === undefined) return undefined;
  const written = `${asMakersWrite(value, unit)} ${unit.symbol}`;
  if (tolerance === undefined) return written;
  const half = figures(tolerance, (number) => differenceToSi(number, unit), differenceFromSi(tolerance, unit));
  return half === undefined ? undefined : `${written} ± ${half} ${unit.symbol}`;
}

/** Well within what counts as the same value when recipes are compared. */
const CLOSE = 2e-10;

/** The fewest figures that read as the same. */
function figures(si: number, read: (number: number) => number, number: number): string | undefined {
  for (let digits = 1; digits <= 12; digits++) {
    const text = withoutExponent(Number(number.toPrecision(digits)));
    if (text !== undefined && Math.abs(read(Number(text)) - si) <= CLOSE * Math.abs(si)) return text;
  }
  return undefined;
}

function withoutExponent(number: number): string | undefined {
  if (!/e/.test(String(number))) return String(number);
  const text = number.toFixed(18).replace(/\.?0+$/, '');
  return Number(text) === number ? text : undefined;
}

/** Inches with many decimals that are sixty-fourths after all: `7/64`, `1 3/4`. */
function asMakersWrite(text: string, { symbol }: Unit): string {
  const number = Number(text);
  const decimals = text.split('.')[1]?.length ?? 0;
  if (symbol !== 'in' || decimals <= 3 || number <= 0 || !Number.isInteger(number * 64)) return text;
  let [over, under] = [(number % 1) * 64, 64];
  for (; over % 2 === 0; over /= 2) under /= 2;
  const whole = Math.floor(number);
  return `${whole > 0 ? `${whole} ` : ''}${over}/${under}`;
}
