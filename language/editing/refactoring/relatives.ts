/** Recipes of the same model that could be a recipe's parent, the nearest in the family first. */
import type { Definition } from '../../recipes/facts.js';
import type { Workshop } from '../../recipes/workshop.js';

/** Not the recipe itself, and none that descends from it. */
export function relativesOf(workshop: Workshop, recipe: Definition): readonly string[] {
  const { recipes: own, model } = workshop.lineage(recipe.name.text);
  const line = own.map(({ name }) => name.text);
  const found: { readonly name: string; readonly steps: number }[] = [];
  for (const name of workshop.shelf.names('recipe')) {
    const other = workshop.lineage(name);
    if (other.model !== model || other.trouble) continue;
    const names = other.recipes.map((each) => each.name.text);
    if (names.includes(recipe.name.text)) continue;
    const shared = names.filter((each) => line.includes(each)).length;
    found.push({ name, steps: line.length - shared + (names.length - shared) });
  }
  return found.sort((a, b) => a.steps - b.steps).map(({ name }) => name);
}

/** The last recipes of other lines: those nobody descends from. Lines of the same model first, then the other models'. */
export function lastOfOtherLines(workshop: Workshop, recipe: Definition): readonly string[] {
  const { model } = workshop.lineage(recipe.name.text);
  const leaves = workshop.shelf.names('recipe').filter((name) => {
    if (name === recipe.name.text || workshop.lineage(name).trouble) return false;
    const isAbove = workshop.lineage(recipe.name.text).recipes.some((each) => each.name.text === name);
    const children = workshop.shelf.targeting('recipe', name).filter((child) => child.relation?.word === 'from');
    return !isAbove && children.length === 0;
  });
  const isAkin = (name: string) => workshop.lineage(name).model === model;
  return [...leaves.filter(isAkin), ...leaves.filter((name) => !isAkin(name))];
}
