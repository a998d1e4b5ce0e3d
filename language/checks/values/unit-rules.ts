/** Units: that a number has one where it needs one, and one of the right kind. Nothing is guessed; it is asked. */
import { sensibleReadings, type SensibleReading } from '../../quantities/readings.js';
import { type Dimension, isNumber } from '../../quantities/dimension.js';
import { mismatch } from '../../quantities/mismatch.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Definition, ListValue, SizeValue, Value } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';
import { type Amount, amountsIn, hasItsDimension, rangeFor } from '../amounts.js';
import type { Fix } from '../finding.js';
import { replace, textAt } from '../mending.js';
import { EVERY_KIND, type Report, type Rule } from '../rule.js';
import { sentences, type Wording } from '../../wording/wording.js';

export const MISSING_UNIT: Rule = {
  code: 'missing-unit',
  severity: 'error',
  title: 'A number without a unit',
  reason:
    'Plates are spoken of in thousandths, in inches and in millimetres. A bare number could be any of them, so it is not used until it says which.',
  bad: `model tarn { top.thickness: 0.110 }`,
  good: `model tarn { top.thickness: 0.110 in }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const inLists = new Set<Value>();
    for (const list of bareLists(definition, workshop)) {
      for (const { value } of list.amounts) inLists.add(value);
      askOfList(list, definition, workshop, report);
    }
    for (const amount of bareNumbers(definition, workshop))
      if (!isFraction(amount) && !inLists.has(amount.value)) ask(amount, definition, workshop, report);
  },
};

export const FRACTION_NEEDS_UNIT: Rule = {
  code: 'fraction-needs-unit',
  severity: 'error',
  title: 'A fraction without a unit',
  reason:
    'Action is noted as 6/4: six and four 64ths of an inch, bass and treble. As a number that reads one and a half, so it is asked about.',
  bad: `model tarn { setup.action.bass: 6/4 }`,
  good: `model tarn { setup.action.bass: 6/64 in }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    for (const amount of bareNumbers(definition, workshop))
      if (isFraction(amount)) ask(amount, definition, workshop, report);
  },
};

export const WRONG_DIMENSION: Rule = {
  code: 'wrong-dimension',
  severity: 'error',
  title: 'A unit of the wrong kind',
  reason: 'A thickness cannot be a mass. A value of the wrong kind is not used, so what needs it stays unknown.',
  bad: `model tarn { top.thickness: 2.8 g }`,
  good: `model tarn { top.thickness: 2.8 mm }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const amount of amountsIn(definition, workshop)) {
      const { value, dimension, as, written } = amount;
      if (hasItsDimension(amount) || isBare(amount)) continue;
      if (as === 'step' && isNumber(value.quantity.dimension)) continue;
      const wrong = mismatch(value.quantity, dimension, workshop.wording);
      const unit = value.unitSpan;
      const own = written.property?.unit ?? '';
      const suggestions = wrong.suggestions.includes(own)
        ? [own, ...wrong.suggestions.filter((one) => one !== own)]
        : wrong.suggestions;
      report(value.span, `${written.canonical}: ${wrong.message}`, {
        fixes: unit
          ? suggestions.map((symbol, i) => ({
              title: say`Write ${symbol}`,
              edits: [replace(definition, unit, symbol)],
              preferred: i === 0 && wrong.suggestions.length === 1,
            }))
          : [],
      });
    }
  },
};

export const MIL_IS_NOT_MM: Rule = {
  code: 'mil-is-not-mm',
  severity: 'hint',
  title: 'A mil is a thousandth of an inch',
  reason:
    'Finish is spoken of in mils, and a mil is often read as a millimetre by people who work in metric. It is 0.0254 mm.',
  bad: `model tarn { finish { system: shellac  film: 5 mil } }`,
  good: `model tarn { finish { system: shellac  film: 0.05 mm } }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const amount of amountsIn(definition, workshop)) {
      const { value } = amount;
      if (value.quantity.unit?.symbol !== 'mil' || !hasItsDimension(amount)) continue;
      const metric = writeQuantity(value.quantity.si, value.quantity.dimension, { unit: 'mm', digits: 3 });
      report(value.span, say`${value.written} is ${metric}: a mil is a thousandth of an inch.`, {
        fixes: [{ title: say`Write ${metric}`, edits: [replace(definition, value.span, metric)] }],
      });
    }
  },
};

function* bareNumbers(definition: Definition, workshop: Workshop): Iterable<Amount> {
  for (const amount of amountsIn(definition, workshop)) if (isBare(amount)) yield amount;
}

interface BareList {
  readonly list: ListValue | SizeValue;
  readonly amounts: readonly [Amount, ...Amount[]];
}

/** Lists of plain numbers in which none has a unit: one at the end would do for all. */
function* bareLists(definition: Definition, workshop: Workshop): Iterable<BareList> {
  const byList = new Map<ListValue | SizeValue, Amount[]>();
  for (const amount of amountsIn(definition, workshop)) {
    const list = amount.written.values.find(({ as }) => as === amount.as)?.value;
    if (list?.kind === 'list' || list?.kind === 'size') byList.set(list, [...(byList.get(list) ?? []), amount]);
  }
  for (const [list, [first, ...rest]] of byList) {
    const parts = list.kind === 'list' ? list.items : list.parts;
    if (!first || rest.length === 0 || rest.length + 1 !== parts.length) continue;
    const amounts: [Amount, ...Amount[]] = [first, ...rest];
    if (amounts.every((amount) => isBare(amount) && !isFraction(amount))) yield { list, amounts };
  }
}

function askOfList({ list, amounts }: BareList, definition: Definition, workshop: Workshop, report: Report): void {
  const { say, or, text } = workshop.wording;
  const [first, ...rest] = amounts.map((amount) => fittingReadings(amount, definition, workshop));
  const units = (first ?? [])
    .map(({ unit }) => unit.symbol)
    .filter((symbol) => rest.every((readings) => readings.some(({ unit }) => unit.symbol === symbol)));
  const written = textAt(definition, list.span);
  const question =
    units.length === 0 ? text('Write it after the last of them.') : say`Write ${or(units)} after the last of them.`;
  report(list.span, sentences(text('These numbers have no unit.'), question), {
    fixes: units.map((unit) => ({
      title: say`Write ${`${written} ${unit}`}`,
      edits: [replace(definition, list.span, `${written} ${unit}`)],
    })),
  });
}

function isBare({ value, dimension }: Amount): boolean {
  return (
    value.quantity.unit === undefined &&
    isNumber(value.quantity.dimension) &&
    !isNumber(dimension) &&
    value.written !== ''
  );
}

function isFraction({ value }: Amount): boolean {
  return /^\s*\d+\s*\/\s*\d+\s*$/.test(value.written);
}

/** What a bare number may mean within the usual, best first. */
function fittingReadings(amount: Amount, definition: Definition, workshop: Workshop): readonly SensibleReading[] {
  const { value, dimension, written } = amount;
  const near = sensibleReadings(value.written, dimension, rangeFor(amount, definition, workshop));
  // Only lengths and masses are spoken of in many units; days in days, hertz in hertz.
  const own = isSpokenOfInMany(dimension) ? [] : near.filter(({ unit }) => unit.symbol === written.property?.unit);
  return own.length > 0 ? own : near;
}

function ask(amount: Amount, definition: Definition, workshop: Workshop, report: Report): void {
  const { value, dimension, written } = amount;
  const range = rangeFor(amount, definition, workshop);
  const fitting = fittingReadings(amount, definition, workshop);
  const offered = fitting.length > 0 ? fitting.slice(0, 4) : sensibleReadings(value.written, dimension);
  const [only] = fitting;
  const { say, or } = workshop.wording;
  const question =
    only === undefined
      ? sentences(
          needs(written.property?.unit, offered, workshop.wording),
          range ? say`In no unit does it come near the usual.` : '',
        )
      : fitting.length === 1
        ? say`Did you mean ${only.text}?`
        : say`Which is meant: ${or(offered.map(({ text }) => text))}?`;
  report(value.span, sentences(say`${value.written} has no unit.`, question), {
    fixes: offered.map((reading) => fix(reading, amount, definition, workshop.wording)),
  });
}

function isSpokenOfInMany(dimension: Dimension): boolean {
  return dimension.name === 'length' || dimension.name === 'mass';
}

function needs(unit: string | undefined, offered: readonly SensibleReading[], { say, or }: Wording): string {
  const units = offered.map((reading) => reading.unit.symbol);
  const named = units.length > 0 ? units : unit === undefined ? [] : [unit];
  return named.length === 0 ? say`Write its unit after it.` : say`Write ${or(named)} after it.`;
}

function fix({ replacement, text }: SensibleReading, { value }: Amount, definition: Definition, { say }: Wording): Fix {
  // Nothing is preferred: what the number means is for its maker to say.
  return { title: say`Write ${text}`, edits: [replace(definition, value.span, replacement)] };
}
