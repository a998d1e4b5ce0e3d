/** Questions about what was really made, and what it says about the recipes. */
import { nameOf } from './name-of.js';
import { type BuildRecord, recordOf } from '../builds/builds.js';
import { type Evidence, evidenceOf } from '../builds/evidence.js';
import { type OddReading, oddReadings } from '../builds/odd-readings.js';
import { evidenceContext } from '../builds/evidence-context.js';
import type { Questions } from '../questions.js';

export function buildQueries(workshop: Questions) {
  const { shelf, catalogue } = workshop;
  const { barrier } = workshop;

  const build = barrier.query(
    'build',
    (name: string): BuildRecord | undefined => {
      const definition = shelf.find('build', name);
      if (!definition) return undefined;
      const recipe = definition.relation && workshop.instrument(definition.relation.target.text);
      return recordOf(definition, recipe, {
        canonical: (path) => catalogue.canonical(path, 'build'),
        isOfInstrument: (path) => catalogue.property(path, 'recipe') !== undefined,
        evaluate: (values) => workshop.evaluate(values),
        rework: (start, made, statements) => workshop.reworked(start, made, statements),
      });
    },
    { otherwise: undefined, of: nameOf('build') },
  );

  /** By the first of the recipes that are built alike. */
  const alike = barrier.query(
    'replicates',
    (root: string): readonly BuildRecord[] => {
      const recipes = [root];
      for (const name of recipes) {
        const children = shelf.targeting('recipe', name).map((child) => child.name.text);
        recipes.push(
          ...children.filter((child) => workshop.parentOf(child) === name && workshop.count(child).total === 0),
        );
      }
      return recipes.flatMap((name) =>
        workshop.buildsOf(name).flatMap(({ name: { text } }) => workshop.build(text) ?? []),
      );
    },
    { otherwise: [], of: nameOf('recipe') },
  );

  const evidence = barrier.query(
    'evidence',
    (name: string): readonly Evidence[] => {
      const made = workshop.build(name);
      const recipe = made?.recipe?.name;
      const ancestor = recipe === undefined ? undefined : workshop.lastBuiltAncestor(recipe);
      if (!made || recipe === undefined || ancestor === undefined) return [];
      const root = rootOfReplicates(ancestor);
      // An instrument built like its ancestor is one more replicate, and shows no effect.
      if (rootOfReplicates(recipe) === root) return [];
      const roots = new Set(workshop.lineage(recipe).recipes.map((one) => rootOfReplicates(one.name.text)));
      const groups = [...roots].map((one) => alike.get(one));
      return evidenceOf(made, alike.get(root), evidenceContext(workshop, groups));
    },
    { otherwise: [], of: nameOf('build') },
  );

  const odd = barrier.query('odd-readings', (model: string) => oddReadings(workshop, model), {
    otherwise: new Map<string, readonly OddReading[]>(),
    of: nameOf('model'),
  });

  /** The first of the recipes that lead here without a counted change. */
  function rootOfReplicates(recipe: string): string {
    let root = recipe;
    for (let parent = workshop.parentOf(root); parent !== undefined && workshop.count(root).total === 0;) {
      root = parent;
      parent = workshop.parentOf(root);
    }
    return root;
  }

  return { build, evidence, odd, replicates: (recipe: string) => alike.get(rootOfReplicates(recipe)) };
}
