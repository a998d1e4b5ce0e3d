/** Quantities from their written parts: `2.85 mm`, `5 ft 3 in`, `2.85 mm ± 0.05 mm`. */
import { isNumber } from '../../quantities/dimension.js';
import { isMismatch } from '../../quantities/mismatch.js';
import type { Quantity } from '../../quantities/quantity.js';
import { addQuantities, readQuantity } from '../../quantities/read.js';
import type { Problem, Span, Word } from '../../facts/facts.js';
import { type Wording } from '../../wording/wording.js';

/** A number and its unit as they stand in the text. */
export interface WrittenPart {
  readonly number: Word;
  readonly unit?: Word;
}

export interface WrittenQuantity {
  readonly parts: readonly WrittenPart[];
  readonly tolerance?: WrittenPart;
  readonly span: Span;
}

export type QuantityOrProblem = { readonly quantity: Quantity } | { readonly problem: Problem };

/** Reads a quantity; a number without a unit takes `unitBeyond`, the unit written at the other end of a range or size. */
export function quantityOf(
  written: WrittenQuantity,
  unitBeyond: string | undefined,
  wording: Wording,
): QuantityOrProblem {
  const { say } = wording;
  const { parts, tolerance } = written;
  const unitAfter = parts.length === 1 ? (tolerance?.unit?.text ?? unitBeyond) : undefined;
  const quantities: Quantity[] = [];
  let previous: WrittenPart | undefined;
  for (const part of parts) {
    const unitMissing = previous !== undefined && (previous.unit === undefined || part.unit === undefined);
    if (previous !== undefined && unitMissing) return { problem: sideBySide(previous, part, wording) };
    const reading = partOf(part, unitAfter, wording);
    if ('problem' in reading) return reading;
    const before = quantities[quantities.length - 1];
    if (previous !== undefined && !isSmaller(reading.quantity, before))
      return { problem: sideBySide(previous, part, wording) };
    quantities.push(reading.quantity);
    previous = part;
  }
  const [first, ...rest] = quantities;
  if (first === undefined) return { problem: problem('bad-number', say`A number is missing here.`, written.span) };
  const sum = addQuantities([first, ...rest]);
  if (isMismatch(sum)) {
    return {
      problem: problem('bad-number', say`The parts of one value must be of one kind, such as 5 ft 3 in.`, written.span),
    };
  }
  if (tolerance === undefined) return { quantity: sum };
  return withTolerance(sum, tolerance, parts[0]?.unit?.text ?? unitAfter, wording);
}

/** `3 in` may follow `5 ft`, and `3 mm` may not follow `5 mm`. */
function isSmaller(quantity: Quantity, before: Quantity | undefined): boolean {
  return (quantity.unit?.factor ?? 1) < (before?.unit?.factor ?? 1);
}

function partOf(part: WrittenPart, unitAfter: string | undefined, wording: Wording): QuantityOrProblem {
  const reading = readQuantity(part.number.text, part.unit?.text ?? unitAfter, undefined, wording);
  if (reading.ok) return { quantity: reading.quantity };
  const at = reading.code === 'unknown-unit' ? (part.unit ?? part.number) : part.number;
  return { problem: problem(reading.code, reading.message, at.span, reading.suggestions) };
}

/** `± 0.05 mm`, `± 0.05` in the unit of the value, `± 2 %` of the value. */
function withTolerance(
  value: Quantity,
  written: WrittenPart,
  unitBefore: string | undefined,
  wording: Wording,
): QuantityOrProblem {
  const reading = partOf(written, unitBefore, wording);
  if ('problem' in reading) return reading;
  const { quantity } = reading;
  // A tolerance of 2 °C is a difference: the zero of the scale does not enter.
  const size = Math.abs(quantity.si - (quantity.unit?.offset ?? 0));
  const ofValue = isNumber(quantity.dimension) && quantity.unit !== undefined && !isNumber(value.dimension);
  if (
    !ofValue &&
    isMismatch(
      addQuantities([
        { ...value, si: 1 },
        { ...quantity, si: 1 },
      ]),
    )
  ) {
    const span = written.unit?.span ?? written.number.span;
    const message = wording.say`A tolerance is of the same kind as its value, or in per cent.`;
    return { problem: problem('bad-number', message, span) };
  }
  return { quantity: { ...value, tolerance: ofValue ? size * Math.abs(value.si) : size } };
}

/** What is wrong with two parts that do not make one value. */
function sideBySide(left: WrittenPart, right: WrittenPart, { say }: Wording): Problem {
  const span = { start: left.number.span.start, end: right.number.span.end };
  const high = right.number.text;
  if (left.unit === undefined && /^[-\u2212\u2013]/.test(high)) {
    const range = `${left.number.text}..${high.slice(1)}`;
    return problem('bad-number', say`Two numbers side by side: a range is written ${range}.`, span, [range]);
  }
  if (left.unit !== undefined && right.unit === undefined) {
    return problem('bad-number', say`The last number has no unit.`, right.number.span);
  }
  const message = say`Two numbers side by side: between them a unit, a comma, \`x\` or \`..\` is missing.`;
  return problem('bad-number', message, span);
}

function problem(code: Problem['code'], message: string, span: Span, suggestions: readonly string[] = []): Problem {
  return { code, message, span, suggestions };
}
