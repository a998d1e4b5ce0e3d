/** What a number without a unit could mean, asked rather than guessed. */
import type { Dimension } from './dimension.js';
import { readNumber } from './number.js';
import { otherUnit, shopUnit } from './shop-units.js';
import type { Unit } from './unit.js';
import { toSi, unitsOf } from './units.js';
import { writeQuantity } from './write.js';

export interface PlausibleSpan {
  /** SI. */
  readonly low: number;
  readonly high: number;
  /** The usual value; readings near it come first. */
  readonly typical?: number;
}

export interface SensibleReading {
  readonly unit: Unit;
  readonly si: number;
  /** What to write instead of the bare number: `0.110 in`. */
  readonly replacement: string;
  /** The replacement and, where it is of the other system, what it comes to: `0.110 in = 2.79 mm`. */
  readonly text: string;
}

/**
 * The readings of a bare number that fall into the plausible range, best first: the nearest to the usual value, and
 * among equals the more usual unit. Without a range, the dimension's everyday units. A number given as text keeps its
 * spelling. Whole numbers are also tried as 64ths of an inch, as action and braces are measured; so are both numbers of
 * a fraction above one, since `6/4` is how two of them are noted side by side. Empty for text that is not a number.
 */
export function sensibleReadings(
  written: number | string,
  dimension: Dimension,
  range?: PlausibleSpan,
): SensibleReading[] {
  const text = tidy(String(written));
  const reading = readNumber(text);
  if (!reading.ok) return [];
  const candidates = unitsOf(dimension)
    .filter(({ bare }) => bare !== undefined)
    .map((one) => readingIn(one, text, toSi(reading.number, one)));
  if (range === undefined) return everyday(candidates, dimension);
  const usual = candidates.filter((one) => !isOdd(reading.number, one));
  const inch = unitsOf(dimension).find(({ symbol }) => symbol === 'in');
  if (inch !== undefined) {
    usual.push(...sixtyFourths(text).map((count) => readingIn(inch, `${count}/64`, toSi(count / 64, inch))));
  }
  return bestFirst(
    usual.filter(({ si }) => si >= range.low && si <= range.high),
    range,
  );
}

/** Nobody writes hundredths of a centimetre: that is what the smaller unit is for. */
function isOdd(number: number, { unit: { bare = Infinity } }: SensibleReading): boolean {
  return Math.abs(number) < bare;
}

/** The whole numbers below 64 that the text may count 64ths with. */
function sixtyFourths(text: string): number[] {
  const counts = /^(\d{1,2})(?: ?\/ ?(\d{1,2}))?$/.exec(text);
  if (counts === null) return [];
  const [first, second] = [Number(counts[1]), counts[2] === undefined ? undefined : Number(counts[2])];
  const meant = second === undefined ? [first] : first >= second ? [first, second] : [];
  return meant.filter((count) => count > 0 && count < 64);
}

/** Films are so thin that a thousandth of an inch is called a mil. */
const FILM = 0.6e-3;

function bestFirst(fitting: readonly SensibleReading[], range: PlausibleSpan): SensibleReading[] {
  const centre = range.typical ?? (range.low > 0 ? Math.sqrt(range.low * range.high) : (range.low + range.high) / 2);
  const farFrom = (si: number): number =>
    si > 0 && centre > 0 ? Math.abs(Math.log(si / centre)) : Math.abs(si - centre) / (Math.abs(range.high) || 1);
  const film = range.high < FILM ? true : undefined;
  const habit = ({ unit }: SensibleReading): number => (unit.film === film ? 0 : 1);
  const ordered = fitting
    .map((one, place) => ({ one, place }))
    .sort((a, b) => farFrom(a.one.si) - farFrom(b.one.si) || habit(a.one) - habit(b.one) || a.place - b.place);
  // Two names of one size (thou and mil, N/mm and kN/m) are one reading.
  return ordered
    .map(({ one }) => one)
    .filter((one, i, all) => all.findIndex((other) => nearly(other.si, one.si)) === i);
}

function everyday(candidates: readonly SensibleReading[], dimension: Dimension): SensibleReading[] {
  const metric = shopUnit(dimension);
  const inch = metric === undefined ? undefined : otherUnit(metric);
  return [metric, inch].flatMap((wanted) => candidates.find(({ unit: one }) => one === wanted) ?? []);
}

function readingIn(one: Unit, number: string, si: number): SensibleReading {
  const replacement = `${number} ${one.symbol}`;
  const metric = one.system === 'inch' ? otherUnit(one) : undefined;
  const text =
    metric === undefined ? replacement : `${replacement} = ${writeQuantity(si, one.dimension, { unit: metric })}`;
  return { unit: one, si, replacement, text };
}

function nearly(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b));
}

/** `.110` is written `0.110`. */
function tidy(written: string): string {
  return written.trim().replace(/^([+-]?)\./, '$10.');
}
