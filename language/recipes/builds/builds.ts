/**
 * A build: what was really made, and what was measured and heard, with the conditions that make a reading a datum.
 *
 * What a build says of the instrument (a thickness, a brace height) stands in place of the recipe's value; what it
 * says of a derived quantity (a mass, a resonance) is a reading, kept beside the computed number and never mixed
 * with it.
 */
import type { Evaluation } from '../evaluation/evaluation.js';
import type { Definition, ReadingStatement, ReworkStatement, Span, Statement, Value } from '../../facts/facts.js';
import type { Change, Held, Instrument } from '../instrument/instrument.js';
import { propertiesOf, sameValue } from '../instrument/values.js';

export interface BuildRecord {
  readonly definition: Definition;
  readonly recipe?: Instrument;
  /** The recipe's values with the ones that were measured on the wood in their place, and what was reworked since. */
  readonly values: ReadonlyMap<string, Held>;
  /** As first made, and after each rework; at least one. */
  readonly states: readonly BuildState[];
  /** What is recorded in words: glues, billets, hygrometers. */
  readonly recorded: ReadonlyMap<string, Held>;
  /** Computed from the values as built. */
  readonly evaluation: Evaluation;
  /** Values that the recipe states and the build measured otherwise. */
  readonly departures: readonly { readonly path: string; readonly meant: Held; readonly made: Held }[];
  readonly readings: readonly Reading[];
}

/** What an instrument was from one rework to the next. */
export interface BuildState {
  readonly values: ReadonlyMap<string, Held>;
  /** What brought it about, and what that changed; absent for the instrument as first made. */
  readonly rework?: ReworkStatement;
  readonly changes: readonly Change[];
}

/** One occasion of measuring, and what was read. */
export interface Reading {
  /** Which of the build's states it was read in. */
  readonly state: number;
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
  'reader',
] as const;
export type Condition = (typeof CONDITIONS)[number];

export interface BuildContext {
  readonly canonical: (path: string) => string;
  /** Whether a path is a value of an instrument (rather than a reading or the build's own data). */
  readonly isOfInstrument: (path: string) => boolean;
  readonly evaluate: (values: ReadonlyMap<string, Held>) => Evaluation;
  /** What these statements make of an instrument. */
  readonly rework: (start: Instrument, build: Definition, statements: readonly Statement[]) => Instrument;
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
  const states = statesOf(build, recipe, values, context);
  const own = readingOf('', loose, build.head, 0);
  const now = states.at(-1)!.values;
  return {
    definition: build,
    recipe,
    values: now,
    states,
    recorded: new Map(loose.filter(({ value }) => !isNumber(value)).map((held) => [held.path, held])),
    evaluation: context.evaluate(now),
    departures,
    readings: [...(own.values.size > 0 ? [own] : []), ...occasionsOf(build, own, context)],
  };
}

/** What is said of the instrument outside a rework holds for it as first made, wherever it is written. */
function statesOf(
  build: Definition,
  recipe: Instrument | undefined,
  values: ReadonlyMap<string, Held>,
  context: BuildContext,
): readonly BuildState[] {
  const states: BuildState[] = [{ values, changes: [] }];
  for (const statement of build.statements) {
    if (statement.kind !== 'rework' || !recipe) continue;
    const before = { ...recipe, values: states.at(-1)!.values };
    const after = context.rework(before, build, statement.statements);
    states.push({ values: after.values, rework: statement, changes: after.changes });
  }
  return states;
}

/** In the order written: a reading is of the instrument as the reworks before it have left it. */
function occasionsOf(build: Definition, own: Reading, context: BuildContext): readonly Reading[] {
  const found: Reading[] = [];
  let state = 0;
  for (const statement of build.statements) {
    if (statement.kind === 'rework') state += 1;
    if (statement.kind === 'reading') found.push(occasionOf(build, statement, own, state, context));
  }
  return found;
}

function occasionOf(
  build: Definition,
  statement: ReadingStatement,
  own: Reading,
  state: number,
  context: BuildContext,
): Reading {
  const all = [...heldIn(build, statement.statements, context)];
  const reading = readingOf(statement.name?.text ?? '', all, statement.span, state);
  // The build's own hygrometer, rig or climate hold for an occasion that does not say otherwise.
  return { ...reading, conditions: new Map([...own.conditions, ...reading.conditions]) };
}

function readingOf(name: string, all: readonly Held[], span: Span, state: number): Reading {
  const conditions = new Map<Condition, Held>();
  const values = new Map<string, Held>();
  for (const held of all) {
    const condition = CONDITIONS.find((candidate) => candidate === held.path);
    if (condition) conditions.set(condition, held);
    else if (isNumber(held.value)) values.set(held.path, held);
  }
  return { name, state, conditions, values, span };
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
