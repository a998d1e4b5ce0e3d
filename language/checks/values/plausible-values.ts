/** Values no guitar has, or few: a question with the usual range beside it, never a verdict. */
import type { PlausibleRange } from '../../catalogue/property.js';
import { isNumber } from '../../quantities/dimension.js';
import { sensibleReadings } from '../../quantities/readings.js';
import { numberOf } from '../../quantities/units.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Definition, QuantityValue } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';
import { type Amount, amountsIn, hasItsDimension, isWorthAsking, rangeFor } from '../amounts.js';
import { replace } from '../mending.js';
import { EVERY_KIND, type Rule } from '../rule.js';
import { sentences, type Wording } from '../../wording/wording.js';
import { suggestion } from '../phrases.js';
import { fits } from '../sound-value.js';
import { citedInBrief } from '../../wording/cited.js';

export const IMPLAUSIBLE: Rule = {
  code: 'implausible',
  severity: 'warning',
  title: 'A value far from the usual',
  reason:
    'Guitars differ, and a value outside the usual range may be just what is meant. More often it is a slip of the pen or another unit, and then everything computed from it is wrong.',
  bad: `model tarn { top.thickness: 0.110 mm }`,
  good: `model tarn { top.thickness: 0.110 in }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const amount of amountsIn(definition, workshop)) {
      if (!isNew(amount) || !hasItsDimension(amount) || !isWorthAsking(amount, definition, workshop)) continue;
      const range = rangeFor(amount, definition, workshop);
      const { value, written, part, dimension } = amount;
      if (!range || isInside(value.quantity.si, range) || isImpossible(amount, range)) continue;
      const readings = isNumber(dimension) ? [] : otherReadings(value, amount, range);
      const what = part === undefined ? written.canonical : `${written.canonical}, ${part}`;
      const hint =
        suggestion(
          readings.map(({ text }) => text),
          workshop.wording,
        ) || say`Is it meant?`;
      const span = usual(range, value, workshop.wording);
      const source = citedInBrief(range.source, workshop.wording);
      report(
        value.span,
        sentences(
          isAbove(value, range)
            ? say`${value.written} is above the usual for ${what}: ${span} (${source}).`
            : say`${value.written} is below the usual for ${what}: ${span} (${source}).`,
          hint,
        ),
        {
          severity: readings.length > 0 || isFarOut(value.quantity.si, range) ? 'warning' : 'information',
          fixes: [
            ...readings.map(({ text, replacement }) => ({ text, replacement })),
            ...marks(written.canonical, value.written),
          ].map(({ text, replacement }) => ({
            title: say`Write ${text}`,
            edits: [replace(definition, value.span, replacement)],
          })),
        },
      );
    }
  },
};

/** `7` of what is heard: seven out of ten. */
function marks(path: string, written: string): readonly { readonly text: string; readonly replacement: string }[] {
  const mark = Number(written);
  if (!path.startsWith('heard.') || !(mark > 1 && mark <= 10)) return [];
  return [{ text: `${written}/10`, replacement: `${written}/10` }];
}

export const NEGATIVE_SIZE: Rule = {
  code: 'negative-size',
  severity: 'error',
  title: 'A size below nothing',
  reason:
    'A thickness, a mass or a frequency cannot be less than nothing, and nothing can be computed from one that is.',
  bad: `model tarn { top.thickness: -2.8 mm }`,
  good: `model tarn { top.thickness: 2.8 mm }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const amount of amountsIn(definition, workshop)) {
      if (!isNew(amount) || !hasItsDimension(amount)) continue;
      const range = rangeFor(amount, definition, workshop);
      const { value, written } = amount;
      if (!range || !isImpossible(amount, range)) continue;
      const positive = value.written.replace(/^[-−]\s*/, '');
      report(value.span, say`${written.canonical} cannot be ${value.written}.`, {
        fixes:
          value.quantity.si < 0
            ? [{ title: say`Write ${positive}`, edits: [replace(definition, value.span, positive)] }]
            : [],
      });
    }
  },
};

/** Whether a value written here is far from the usual and near it in another unit: then that is asked first. */
export function mayBeAnotherUnit(path: string, definition: Definition, workshop: Workshop): boolean {
  for (const amount of amountsIn(definition, workshop)) {
    if (amount.written.canonical !== path || !isNew(amount) || !hasItsDimension(amount)) continue;
    const range = rangeFor(amount, definition, workshop);
    if (range && !isInside(amount.value.quantity.si, range) && otherReadings(amount.value, amount, range).length > 0)
      return true;
  }
  return false;
}

/** Written here, in a value of the sort that is wanted. */
function isNew({ as, value, written }: Amount): boolean {
  const { property, role, values } = written;
  const whole = values.find((one) => one.as === as)?.value;
  if (property && whole && !fits(whole, property)) return false;
  return (as === 'value' || as === 'new') && role === 'value' && value.written !== '';
}

/** Below zero where the usual range starts above it: a size, not a place or an angle. */
function isImpossible({ value, dimension }: Amount, range: PlausibleRange): boolean {
  if (dimension.name === 'temperature' || dimension.name === 'angle' || range.low < 0) return false;
  return value.quantity.si < 0 || (value.quantity.si === 0 && range.low > 0 && dimension.name !== 'number');
}

function isInside(si: number, { low, high }: PlausibleRange): boolean {
  // A bound quoted as 2.6 mm lets 2.6 mm pass, whatever the last bit of it.
  const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
  return si >= low - slack && si <= high + slack;
}

function isAbove(value: QuantityValue, range: PlausibleRange): boolean {
  return value.quantity.si > range.high;
}

/** As far outside as the range is wide: hardly anybody does that. */
function isFarOut(si: number, { low, high }: PlausibleRange): boolean {
  const width = high - low;
  return si < low - width || si > high + width || (low > 0 && si < low / 3);
}

function otherReadings(value: QuantityValue, { dimension }: Amount, range: PlausibleRange) {
  const number = /^[+-−]?[\d.,/ ¼½¾⅓⅔⅛⅜⅝⅞⁄-]+/.exec(value.written)?.[0].trim() ?? String(numberOf(value.quantity));
  return sensibleReadings(number, dimension, range)
    .filter(({ unit }) => unit !== value.quantity.unit)
    .slice(0, 2);
}

function usual({ low, high }: PlausibleRange, value: QuantityValue, { say }: Wording): string {
  const { dimension, unit } = value.quantity;
  // Told in the unit the value was written in, unless that makes an odd number of it.
  const write = (si: number) => writeQuantity(si, dimension, { unit: unit?.symbol === 'mil' ? undefined : unit });
  const [from, to] = [write(low), write(high)];
  const [, number, symbol] = /^(\S+) (\D.*)$/.exec(from) ?? [];
  return say`${symbol !== undefined && to.endsWith(` ${symbol}`) ? (number ?? from) : from} to ${to}`;
}
