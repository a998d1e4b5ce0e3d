/** Questions about models and recipes: their line, their values with holds solved, their changes. */
import { nameOf } from './name-of.js';
import { type Count, countChanges } from '../instrument/counting.js';
import type { Evaluation } from '../evaluation/evaluation.js';
import { Kinship } from '../evaluation/kinship.js';
import { checkExpectations, type Expectation } from '../instrument/expectations.js';
import { solveHolds } from '../instrument/hold.js';
import { applyModel, applyRecipe, type Held, type Instrument, isWithin, sameValues } from '../instrument/instrument.js';
import { type Lineage, lineageOf, ringOf } from '../shelf/lineage.js';
import { remembered } from '../shelf/remembered.js';
import type { Value } from '../../facts/facts.js';
import { saysNone } from '../instrument/values.js';
import type { Questions, Solved } from '../questions.js';

export function instrumentQueries(workshop: Questions) {
  const { shelf, catalogue } = workshop;
  const { barrier } = workshop;

  const context = {
    canonical: remembered((path: string) => catalogue.canonical(path)),
    appointments: (name: string) => shelf.find('appointments', name),
    model: (name: string) => workshop.model(name),
    isPackaged: remembered((path: string) => catalogue.isPackaged(path)),
    partWithout: (path: string, value: Value) => (saysNone(value) ? catalogue.partWithout(path) : undefined),
  };

  const kinship = new Kinship();
  const kinshipInFull = new Kinship();

  const lineage = barrier.query('lineage', (recipe: string): Lineage => lineageOf(shelf, recipe), {
    otherwise: { recipes: [] },
    of: nameOf('recipe'),
  });

  const ring = barrier.query('ring', (recipe: string) => ringOf(workshop.lineage(recipe), recipe), {
    otherwise: undefined,
    of: nameOf('recipe'),
  });

  const model = barrier.query(
    'model',
    (name: string): Instrument | undefined => {
      const definition = shelf.find('model', name);
      return definition && applyModel(definition, context);
    },
    { otherwise: undefined, of: nameOf('model') },
  );

  const instrument = barrier.query(
    'instrument',
    (name: string): Solved | undefined => {
      const definition = shelf.find('recipe', name);
      if (!definition) return undefined;
      const start = workshop.startOf(name);
      // Parent or model is there but could not be worked out: nothing is to be made of this one either.
      if (!start && hasStart(name)) return undefined;
      const from = start && { kind: start.definition.kind, name: start.name };
      for (const each of [kinship, kinshipInFull]) each.startsFrom(name, from);
      const unsolved = applyRecipe(start, definition, context);
      const { values, holds } = solve(unsolved, start);
      return { ...unsolved, values, solvedHolds: holds };
    },
    { otherwise: undefined, of: nameOf('recipe') },
  );

  function hasStart(recipe: string): boolean {
    return workshop.parentOf(recipe) !== undefined || workshop.lineage(recipe).model !== undefined;
  }

  const ordered = barrier.query(
    'ordered',
    (name: string): Instrument | undefined => {
      const order = shelf.find('order', name);
      const recipe = order?.relation && workshop.instrument(order.relation.target.text);
      return order && recipe && applyRecipe(recipe, order, context);
    },
    { otherwise: undefined, of: nameOf('order') },
  );

  /** Apart from the instrument, so that an edit which leaves every value as it was ends here. */
  const values = barrier.query('values', (recipe: string) => workshop.instrument(recipe)?.values ?? NO_VALUES, {
    otherwise: NO_VALUES,
    of: nameOf('recipe'),
    equal: sameValues,
  });

  /** Apart for the same reason. */
  const isWorkedOut = barrier.query(
    'whether there is an instrument',
    (recipe: string) => workshop.instrument(recipe) !== undefined,
    {
      otherwise: false,
      of: nameOf('recipe'),
    },
  );

  const evaluation = barrier.query(
    'evaluation',
    (recipe: string): Evaluation | undefined => {
      if (!isWorkedOut.get(recipe)) return undefined;
      const start = kinship.startOf(recipe);
      // Only so that it is there to be like: no answer depends on it.
      if (start !== undefined) shelf.memo.aside(() => workshop.evaluation(start));
      const evaluation = workshop.evaluate(values.get(recipe), workshop.analystFor(recipe), kinship.of(recipe));
      kinship.note(recipe, evaluation);
      return evaluation;
    },
    { otherwise: undefined, of: nameOf('recipe') },
  );

  const inFull = barrier.query(
    'inFull',
    (recipe: string): Evaluation | undefined => {
      if (!isWorkedOut.get(recipe)) return undefined;
      const evaluation = workshop.evaluateInFull(values.get(recipe), kinshipInFull.of(recipe));
      kinshipInFull.note(recipe, evaluation);
      return evaluation;
    },
    { otherwise: undefined, of: nameOf('recipe') },
  );

  const modelValues = barrier.query(
    'values of the model',
    (name: string) => workshop.model(name)?.values ?? NO_VALUES,
    {
      otherwise: NO_VALUES,
      of: nameOf('model'),
      equal: sameValues,
    },
  );

  const modelEvaluation = barrier.query(
    'evaluation of the model',
    (name: string): Evaluation | undefined => workshop.evaluate(modelValues.get(name)),
    { otherwise: undefined, of: nameOf('model') },
  );

  const count = barrier.query(
    'count',
    (recipe: string): Count => {
      const child = workshop.instrument(recipe);
      const parentName = workshop.parentOf(recipe);
      const parent = parentName === undefined ? undefined : workshop.instrument(parentName);
      if (!child || !parent) return NOTHING_COUNTED;
      return countChanges(child, beside(recipe, parent), {
        classOf: workshop.classOf,
        partOf: remembered((path: string) => catalogue.partOf(path)),
        parentHas: (part) => [...parent.values.keys()].some((path) => isWithin(path, part)),
        speciesOf: (wood) => workshop.speciesOf(wood)?.name.text,
        evaluateWith: (changes) => workshop.evaluateWith(child, parent, changes),
      });
    },
    { otherwise: NOTHING_COUNTED, of: nameOf('recipe') },
  );

  const expectations = barrier.query(
    'expectations',
    (recipe: string): readonly Expectation[] => {
      const definition = shelf.find('recipe', recipe);
      const evaluated = workshop.evaluation(recipe);
      return definition && evaluated ? checkExpectations(definition, evaluated, context.canonical) : [];
    },
    { otherwise: [], of: nameOf('recipe') },
  );

  /** What a recipe starts from, known as fully as the recipe itself. */
  function beside(recipe: string, { definition: { kind, name } }: Instrument): Evaluation | undefined {
    if (kind === 'model') return modelEvaluation.get(name.text);
    return workshop.needsModes(recipe) ? workshop.inFull(name.text) : workshop.evaluation(name.text);
  }

  /** Likewise by its name; undefined for what starts from nothing. */
  function start(recipe: string): Evaluation | undefined {
    const from = workshop.startOf(recipe);
    return from && beside(recipe, from);
  }

  function solve(unsolved: Instrument, start: Instrument | undefined) {
    const parent = start && beside(unsolved.name, start);
    return solveHolds(unsolved, {
      parent,
      evaluate: (values) => workshop.evaluate(values, workshop.analystFor(unsolved.name), { like: parent }),
      range: (path) => catalogue.plausibleSpan(path),
    });
  }

  const latest = (recipe: string) => kinship.latest(recipe);
  const questions = { lineage, ring, model, instrument, ordered, evaluation, inFull, count, expectations };

  return { context, ...questions, solve, start, latest };
}

const NOTHING_COUNTED: Count = { variables: [], total: 0 };
const NO_VALUES: ReadonlyMap<string, Held> = new Map();
