/** Other recipes a recipe's changes could stand on, the nearest in the family first. */
import type { Definition } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';

export interface Relative {
  readonly name: string;
  /** The model it is built on. */
  readonly model: string;
  /** Steps up to the nearest recipe both descend from, and down again. */
  readonly steps: number;
  readonly isOfModel: boolean;
}

/** Recipes of the same model that could be its parent. */
export function relativesOf(workshop: Workshop, recipe: Definition): readonly string[] {
  return others(workshop, recipe).flatMap(({ name, isOfModel }) => (isOfModel ? [name] : []));
}

/** The last recipes of other lines, those nobody descends from. Lines of the same model first, then the other models'. */
export function lastOfOtherLines(workshop: Workshop, recipe: Definition): readonly string[] {
  return others(workshop, recipe).flatMap(({ name }) => {
    const children = workshop.shelf.targeting('recipe', name).filter(({ relation }) => relation?.word === 'from');
    return children.length === 0 ? [name] : [];
  });
}

/** Every recipe but itself and those that descend from it: its own model’s first, and of those the nearest. */
export function others(workshop: Workshop, recipe: Definition): readonly Relative[] {
  const { recipes, model } = workshop.lineage(recipe.name.text);
  const line = recipes.map(({ name }) => name.text);
  const found = workshop.shelf.names('recipe').flatMap((name): readonly Relative[] => {
    const other = workshop.lineage(name);
    const names = other.recipes.map((each) => each.name.text);
    if (other.trouble || names.includes(recipe.name.text)) return [];
    const shared = names.filter((each) => line.includes(each)).length;
    return [
      {
        name,
        model: other.model?.name.text ?? '',
        steps: line.length + names.length - 2 * shared,
        isOfModel: other.model === model,
      },
    ];
  });
  return found.sort((a, b) => Number(b.isOfModel) - Number(a.isOfModel) || a.steps - b.steps);
}
