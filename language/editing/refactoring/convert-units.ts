/** The value at the cursor in another unit: the same value exactly, read again as the same. */
import { replace } from '../../checks/mending.js';
import { isNumber, sameDimension } from '../../quantities/dimension.js';
import { otherUnit } from '../../quantities/shop-units.js';
import type { Unit } from '../../quantities/unit.js';
import { unitsOf } from '../../quantities/units.js';
import type { Statement, Value } from '../../facts/facts.js';
import { valuesOf } from '../../recipes/shelf/mentions.js';
import { allStatements, quantitiesIn } from '../../recipes/instrument/values.js';
import { writeExactly } from './exact-value.js';
import type { Marked, Offer } from './offered-refactoring.js';
import { touches } from './offered-refactoring.js';

export function convertUnits({ desk, definition, span }: Marked): readonly Offer[] {
  const { say } = desk.workshop.wording;
  const [meant, another] = [...allStatements(definition.statements)].flatMap((statement) =>
    valuesOf(statement).flatMap(({ value }) => (touches(value.span, span) ? [{ statement, value }] : [])),
  );
  if (!meant || another) return [];
  const quantities = quantitiesIn(meant.value).filter(({ quantity }) => quantity.unit !== undefined);
  const [first] = quantities;
  if (!first?.quantity.unit || isNumber(first.quantity.dimension)) return [];
  if (quantitiesIn(meant.value).some(({ quantity }) => !sameDimension(quantity.dimension, first.quantity.dimension))) {
    return [];
  }
  const now = first.quantity.unit;
  return unitsInOrder(now).flatMap((unit) => {
    // A step between two temperatures is no temperature.
    if (isStep(meant.statement, meant.value) && (now.offset !== undefined || unit.offset !== undefined)) return [];
    const written = quantities.map(({ quantity }) => writeExactly(quantity, unit));
    if (written.some((text) => text === undefined || !isWritable(text))) return [];
    return [
      {
        title:
          quantities.length === 1 ? say`Write ${written[0]!}` : say`Write in ${unit.symbol}: ${written.join(', ')}`,
        kind: 'rewrite' as const,
        edits: quantities.map((quantity, i) => replace(definition, quantity.span, written[i]!)),
      },
    ];
  });
}

/** As a maker would write it: nobody notes 0.9523969726 oz, or 27000 mg. */
function isWritable(text: string): boolean {
  return (text.match(/\d[\d.]*/g) ?? []).every((number) => {
    const figures = number.replace('.', '').replace(/^0+/, '');
    const decimals = number.split('.')[1]?.length ?? 0;
    return figures.length <= MOST_FIGURES && decimals <= MOST_FIGURES && !/^\d{5,}$/.test(number);
  });
}

const MOST_FIGURES = 5;

/** The unit of the other system first; not the one it is in. */
function unitsInOrder(now: Unit): readonly Unit[] {
  const other = otherUnit(now);
  const rest = unitsOf(now.dimension).filter((unit) => unit.symbol !== now.symbol && unit.symbol !== other?.symbol);
  return other ? [other, ...rest] : rest;
}

function isStep(statement: Statement, value: Value): boolean {
  return statement.kind === 'change' && statement.by === value;
}
