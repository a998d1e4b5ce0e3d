/**
 * A build: what was really made, and what was measured and heard, with the conditions that make a reading a datum.
 *
 * What a build says of the instrument (a thickness, a brace height) stands in place of the recipe's value; what it
 * says of a derived quantity (a mass, a resonance) is a reading, kept beside the computed number and never mixed
 * with it.
 */
import type { Evaluation } from '../evaluation/evaluation.js';
import type { Definition, ReadingStatement, Span, Statement, Value } from '../../facts/facts.js';
import type { Held, Instrument } from '../instrument/instrument.js';
import { propertiesOf, sameValue } from '../instrument/values.js';

export interface BuildRecord {
  readonly definition: Definition;
  readonly recipe?: Instrument;
  /** The recipe's values with the ones that were measured on the wood in their place. */
  readonly values: ReadonlyMap<string, Held>;
  /** Computed from the values as built. */
  readonly evaluation: Evaluation;
  /** Values that the recipe states and the build measured otherwise. */
  readonly departures: readonly { readonly path: string; readonly meant: Held; readonly made: Held }[];
  readonly readings: readonly Reading[];
}

/** One occasion of measuring, and what was read. */
export interface Reading {
  /** Empty for what the build states outside any `reading`. */
  readonly name: string;
  readonly conditions: ReadonlyMap<Condition, Held>;
  readonly values: ReadonlyMap<string, Held>;
  readonly span: Span;
}

/** What must agree before two readings are compared in silence. */
export const CONDITIONS = [
  'date',
  'stage',
  'strings',
  'strings-damped',
  'days-strung',
  'humidity',
  'temperature',
  'moisture',
  'hygrometer',
  'rig',
  'method',
  'held',
] as const;
export type Condition = (typeof CONDITIONS)[number];

export interface BuildContext {
  readonly canonical: (path: string) => string;
  /** Whether a path is a value of an instrument (rather than a reading or the build's own data). */
  readonly isOfInstrument: (path: string) => boolean;
  readonly evaluate: (values: ReadonlyMap<string, Held>) => Evaluation;
}

export function recordOf(build: Definition, recipe: Instrument | undefined, context: BuildContext): BuildRecord {
  const values = new Map(recipe?.values);
  const departures: { path: string; meant: Held; made: Held }[] = [];
  const loose: Held[] = [];
  for (const held of heldIn(build, build.statements, context)) {
    if (!context.isOfInstrument(held.path)) {
      loose.push(held);
      continue;
    }
    const meant = values.get(held.path);
    if (meant && !sameValue(meant.value, held.value)) departures.push({ path: held.path, meant, made: held });
    values.set(held.path, { ...held, before: meant });
  }
  const occasions = build.statements.filter((statement) => statement.kind === 'reading');
  const own = readingOf('', loose, build.head);
  return {
    definition: build,
    recipe,
    values,
    evaluation: context.evaluate(values),
    departures,
    readings: [
      ...(own.values.size > 0 ? [own] : []),
      ...occasions.map((occasion) => occasionOf(build, occasion, own, context)),
    ],
  };
}

function occasionOf(build: Definition, statement: ReadingStatement, own: Reading, context: BuildContext): Reading {
  const reading = readingOf(
    statement.name?.text ?? '',
    [...heldIn(build, statement.statements, context)],
    statement.span,
  );
  // The build's own hygrometer, rig or climate hold for an occasion that does not say otherwise.
  return { ...reading, conditions: new Map([...own.conditions, ...reading.conditions]) };
}

function readingOf(name: string, all: readonly Held[], span: Span): Reading {
  const conditions = new Map<Condition, Held>();
  const values = new Map<string, Held>();
  for (const held of all) {
    const condition = CONDITIONS.find((candidate) => candidate === held.path);
    if (condition) conditions.set(condition, held);
    else if (isNumber(held.value)) values.set(held.path, held);
  }
  return { name, conditions, values, span };
}

function* heldIn(build: Definition, statements: readonly Statement[], context: BuildContext): Iterable<Held> {
  for (const { statement } of propertiesOf(statements)) {
    const path = context.canonical(statement.path.text);
    yield { path, value: statement.value, from: { definition: build, span: statement.span }, via: 'built' };
  }
}

function isNumber(value: Value): boolean {
  return value.kind === 'quantity';
}
