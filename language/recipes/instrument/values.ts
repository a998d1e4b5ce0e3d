/** Values: when two are the same, when a stated one agrees with a real one, and walking the statements that hold them. */
import type { PropertyStatement, QuantityValue, Statement, TogetherStatement, Value } from '../../facts/facts.js';

/** Equal in meaning, wherever and in whatever unit they were written. */
export function sameValue(a: Value | undefined, b: Value | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  switch (a.kind) {
    case 'quantity':
      return (
        b.kind === 'quantity' &&
        a.quantity.dimension.name === b.quantity.dimension.name &&
        close(a.quantity.si, b.quantity.si) &&
        close(a.quantity.tolerance ?? 0, b.quantity.tolerance ?? 0)
      );
    case 'range':
      return b.kind === 'range' && sameValue(a.low, b.low) && sameValue(a.high, b.high);
    case 'size':
      return b.kind === 'size' && sameList(a.parts, b.parts);
    case 'point':
      return b.kind === 'point' && sameValue(a.station, b.station) && sameValue(a.offset, b.offset);
    case 'list':
      return b.kind === 'list' && sameList(a.items, b.items);
    case 'text':
      // `bone` and "bone" say the same.
      return (b.kind === 'text' && a.text === b.text) || (b.kind === 'name' && a.text === b.name);
    case 'name':
      return (b.kind === 'name' && a.name === b.name) || (b.kind === 'text' && a.name === b.text);
    case 'date':
      return b.kind === 'date' && a.date === b.date;
    case 'unknown':
      return b.kind === 'unknown';
    case 'unreadable':
      return b.kind === 'unreadable' && a.written === b.written;
  }
}

/** `none`, `no`, `no-pickguard`, `without`: a maker's way to say that there is none of it. */
export function saysNone(value: Value | undefined): boolean {
  const said = value?.kind === 'name' ? value.name : value?.kind === 'text' ? value.text : '';
  return /^(?:none|no|without|no[- ].+)$/i.test(said.trim());
}

/**
 * Whether `stated`, as somebody wrote it, is a fair way of writing `actual`: a quantity agrees when it lies within half
 * a step of the last digit written, so that "2.66 mm" agrees with a solved 2.6612 mm.
 */
export function agrees(stated: Value, actual: Value): boolean {
  if (stated.kind !== 'quantity' || actual.kind !== 'quantity') return sameValue(stated, actual);
  if (stated.quantity.dimension.name !== actual.quantity.dimension.name) return false;
  const step = lastDigitStep(stated.written) * (stated.quantity.unit?.factor ?? 1);
  return Math.abs(stated.quantity.si - actual.quantity.si) <= step / 2 + 1e-9 * Math.abs(actual.quantity.si);
}

/** The value of one unit in the last written place: 0.01 for "2.66 mm", 1/64 for "7/64 in". */
export function lastDigitStep(written: string): number {
  const fraction = /\/\s*(\d+)/.exec(written);
  if (fraction) return 1 / Number(fraction[1]);
  const decimal = /\d*\.(\d+)/.exec(written);
  if (decimal) return 10 ** -decimal[1]!.length;
  return 1;
}

export interface PropertyInPlace {
  readonly statement: PropertyStatement;
  readonly group?: TogetherStatement;
}

/** Every `path: value` of a body, with blocks opened up; changes, adds and readings are left to their own readers. */
export function* propertiesOf(statements: readonly Statement[], group?: TogetherStatement): Iterable<PropertyInPlace> {
  for (const statement of statements) {
    if (statement.kind === 'property') yield { statement, group };
    else if (statement.kind === 'block') yield* propertiesOf(statement.statements, group);
  }
}

/** Every statement, blocks, groups, adds, readings and requests opened up; the enclosing one comes first. */
export function* allStatements(statements: readonly Statement[]): Iterable<Statement> {
  for (const statement of statements) {
    yield statement;
    if ('statements' in statement) yield* allStatements(statement.statements);
  }
}

function sameList(a: readonly Value[], b: readonly Value[]): boolean {
  return a.length === b.length && a.every((item, i) => sameValue(item, b[i]));
}

function close(a: number, b: number): boolean {
  return a === b || Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));
}

/** Every quantity a value is made of, in the order written. */
export function quantitiesIn(value: Value): readonly QuantityValue[] {
  switch (value.kind) {
    case 'quantity':
      return [value];
    case 'range':
      return [value.low, value.high].filter((end) => end !== undefined);
    case 'size':
      return value.parts;
    case 'point':
      return [value.station, value.offset];
    case 'list':
      return value.items.flatMap(quantitiesIn);
    default:
      return [];
  }
}
