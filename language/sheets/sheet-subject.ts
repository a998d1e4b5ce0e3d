/** What a sheet is about: a recipe, a build of one, or an order for one. */
import type { Evaluation } from '../recipes/evaluation/evaluation.js';
import type { Definition } from '../facts/facts.js';
import type { Held } from '../recipes/instrument/instrument.js';
import type { Side } from '../recipes/instrument/comparison.js';
import { sideOf } from '../recipes/instrument/sides.js';
import type { Workshop } from '../recipes/workshop.js';
import { allStatements } from '../recipes/instrument/values.js';
import { partsInOrder, type PartBlock } from '../reports/parts-in-order.js';

export interface SheetSubject {
  readonly name: string;
  readonly definition: Definition;
  /** The order it is for, when the sheet was asked for by the order's name. */
  readonly order?: Definition;
  /** In the order of the catalogue. */
  readonly values: readonly Held[];
  readonly evaluation: Evaluation;
  readonly title: string;
  /** For the drawings: the same, as one side of a comparison has it. */
  readonly side: Side;
}

/** Undefined when nothing of that name can have a sheet. */
export function subjectOf(workshop: Workshop, name: string): SheetSubject | undefined {
  const order = workshop.shelf.find('order', name);
  const instrument = workshop.shelf.find('recipe', name) ?? workshop.shelf.find('build', name);
  const wanted = instrument ? name : order && filledBy(workshop, order);
  const side = wanted === undefined ? undefined : sideOf(workshop, wanted);
  const definition = side && workshop.shelf.find(side.kind, side.name);
  if (!side || !definition) return undefined;
  const asked = order && !instrument ? workshop.ordered(name) : undefined;
  const values = asked ? asOrdered(asked.values, side, workshop) : side.values;
  const title = values.get('title')?.value;
  const evaluation = asked ? workshop.evaluateInFull(values) : side.evaluation;
  return {
    name: side.name,
    definition,
    side: { ...side, values, evaluation },
    ...(order && !instrument ? { order } : {}),
    values: inOrder(partsInOrder(values, ['recipe', 'build'])),
    evaluation,
    title: title?.kind === 'text' ? title.text : side.name,
  };
}

/** The instrument that fills an order once there is one, until then the recipe it is to be made by. */
function filledBy(workshop: Workshop, order: Definition): string | undefined {
  const build = workshop.stated(order).get('build')?.value;
  const named = build?.kind === 'text' ? build.text : build?.kind === 'name' ? build.name : undefined;
  return named !== undefined && workshop.shelf.find('build', named) ? named : order.relation?.target.text;
}

/** Why the recipe was written, in the maker's own words. */
export function reasonOf({ definition }: SheetSubject): string | undefined {
  for (const statement of allStatements(definition.statements)) {
    if (statement.kind === 'because') return statement.text.text;
  }
  return undefined;
}

/** What was ordered, less what the order says of itself; of an instrument that fills it, what was really made. */
function asOrdered(ordered: ReadonlyMap<string, Held>, side: Side, { catalogue }: Workshop): ReadonlyMap<string, Held> {
  const values = new Map([...ordered].filter(([path]) => catalogue.property(path, 'recipe') !== undefined));
  for (const [path, held] of side.values) if (held.via === 'built') values.set(path, held);
  return values;
}

function inOrder(block: PartBlock<Held>): readonly Held[] {
  return block.entries.flatMap(({ value, block: inner }) => [
    ...(value ? [value] : []),
    ...(inner ? inOrder(inner) : []),
  ]);
}
