/** Names laid side by side: which instrument a name means, and the comparison of two. */
import { compare, type Comparison, nearestCommon, type Side } from './comparison.js';
import type { Questions } from '../questions.js';

/** The instrument of this name: a recipe, or else a build, or else a model. */
export function sideOf(workshop: Questions, name: string): Side | undefined {
  const side = (kind: Side['kind'], { values }: Pick<Side, 'values'>): Side => ({
    name,
    kind,
    values,
    evaluation: workshop.evaluateInFull(values),
  });
  const recipe = workshop.instrument(name);
  if (recipe) return side('recipe', recipe);
  const build = workshop.build(name);
  if (build) return side('build', build);
  const model = workshop.model(name);
  return model && side('model', model);
}

export function compareByName(workshop: Questions, a: string, b: string): Comparison | undefined {
  const [x, y] = [sideOf(workshop, a), sideOf(workshop, b)];
  if (!x || !y) return undefined;
  return compare(x, y, {
    ancestor: nearestCommon(lineOf(workshop, x), lineOf(workshop, y)),
    classOf: workshop.classOf,
    evaluate: (values) => workshop.evaluateInFull(values),
  });
}

/** Names of the recipes an instrument descends from, itself last where it is one. */
function lineOf(workshop: Questions, { kind, name }: Side): readonly string[] {
  if (kind === 'model') return [];
  const recipe = kind === 'build' ? workshop.shelf.find('build', name)?.relation?.target.text : name;
  return recipe === undefined ? [] : workshop.lineage(recipe).recipes.map((each) => each.name.text);
}
