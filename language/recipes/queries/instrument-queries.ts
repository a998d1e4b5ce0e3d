/** Questions about models and recipes: their line, their values with holds solved, their changes. */
import { type Count, countChanges } from '../instrument/counting.js';
import type { Evaluation } from '../evaluation/evaluation.js';
import { checkExpectations, type Expectation } from '../instrument/expectations.js';
import { solveHolds } from '../instrument/hold.js';
import { applyModel, applyRecipe, type Held, type Instrument, sameValues } from '../instrument/instrument.js';
import { lineageOf, ringOf } from '../shelf/lineage.js';
import { remembered } from '../shelf/remembered.js';
import type { Solved, Workshop } from '../workshop.js';

export function instrumentQueries(workshop: Workshop) {
  const { shelf, catalogue } = workshop;
  const { memo } = shelf;

  const context = {
    canonical: remembered((path: string) => catalogue.canonical(path)),
    appointments: (name: string) => shelf.find('appointments', name),
    model: (name: string) => workshop.model(name),
  };

  const lineage = memo.query('lineage', (recipe: string) => lineageOf(shelf, recipe));

  const ring = memo.query('ring', (recipe: string) => ringOf(shelf, recipe));

  const model = memo.query('model', (name: string): Instrument | undefined => {
    const definition = shelf.find('model', name);
    return definition && applyModel(definition, context);
  });

  const instrument = memo.query('instrument', (name: string): Solved | undefined => {
    const definition = shelf.find('recipe', name);
    if (!definition) return undefined;
    const start = workshop.startOf(name);
    const unsolved = applyRecipe(start, definition, context);
    const { values, holds } = solve(unsolved, start);
    return { ...unsolved, values, solvedHolds: holds };
  });

  const ordered = memo.query('ordered', (name: string): Instrument | undefined => {
    const order = shelf.find('order', name);
    const recipe = order?.relation && workshop.instrument(order.relation.target.text);
    return order && recipe && applyRecipe(recipe, order, context);
  });

  /** Apart from the instrument, so that an edit which leaves every value as it was ends here. */
  const values = memo.query('values', (recipe: string) => workshop.instrument(recipe)?.values ?? NO_VALUES, {
    equal: sameValues,
  });

  const evaluation = memo.query('evaluation', (recipe: string): Evaluation | undefined => {
    if (!shelf.find('recipe', recipe)) return undefined;
    return workshop.evaluate(values.get(recipe), workshop.analystFor(recipe));
  });

  const inFull = memo.query('inFull', (recipe: string): Evaluation | undefined =>
    shelf.find('recipe', recipe) ? workshop.evaluateInFull(values.get(recipe)) : undefined,
  );

  const modelValues = memo.query('modelValues', (name: string) => workshop.model(name)?.values ?? NO_VALUES, {
    equal: sameValues,
  });

  const modelEvaluation = memo.query('modelEvaluation', (name: string) => workshop.evaluate(modelValues.get(name)));

  const count = memo.query('count', (recipe: string): Count => {
    const child = workshop.instrument(recipe);
    const parentName = workshop.parentOf(recipe);
    const parent = parentName === undefined ? undefined : workshop.instrument(parentName);
    if (!child || !parent) return { variables: [], total: 0 };
    return countChanges(child, beside(recipe, parent), {
      classOf: workshop.classOf,
      speciesOf: (wood) => workshop.speciesOf(wood)?.name.text,
      evaluateWith: (changes) => workshop.evaluateWith(child, parent, changes),
    });
  });

  const expectations = memo.query('expectations', (recipe: string): readonly Expectation[] => {
    const definition = shelf.find('recipe', recipe);
    const evaluated = workshop.evaluation(recipe);
    return definition && evaluated ? checkExpectations(definition, evaluated, context.canonical) : [];
  });

  /** What a recipe starts from, known as fully as the recipe itself. */
  function beside(recipe: string, { definition: { kind, name } }: Instrument): Evaluation | undefined {
    if (kind === 'model') return modelEvaluation.get(name.text);
    return workshop.needsModes(recipe) ? workshop.inFull(name.text) : workshop.evaluation(name.text);
  }

  function solve(unsolved: Instrument, start: Instrument | undefined) {
    return solveHolds(unsolved, {
      parent: start && beside(unsolved.name, start),
      evaluate: (values) => workshop.evaluate(values, workshop.analystFor(unsolved.name)),
      range: (path) => catalogue.plausibleSpan(path),
    });
  }

  return { context, lineage, ring, model, instrument, ordered, evaluation, inFull, count, expectations, solve };
}

const NO_VALUES: ReadonlyMap<string, Held> = new Map();
