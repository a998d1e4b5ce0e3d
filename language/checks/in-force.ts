/** The recipe a definition stands for. Of two of the same name only the first is one; the other has its own finding. */
import type { Definition } from '../facts/facts.js';
import type { Change, Instrument } from '../recipes/instrument/instrument.js';
import type { Solved, Workshop } from '../recipes/workshop.js';

export function isInForce(definition: Definition, workshop: Workshop): boolean {
  return definition.name.text !== '' && workshop.shelf.find(definition.kind, definition.name.text) === definition;
}

export function recipeOf(definition: Definition, workshop: Workshop): Solved | undefined {
  return isInForce(definition, workshop) ? workshop.instrument(definition.name.text) : undefined;
}

/** What a recipe changes in its parent, or what was reworked on a build. */
export function changesIn(definition: Definition, workshop: Workshop): readonly Change[] {
  if (definition.kind !== 'build') return recipeOf(definition, workshop)?.changes ?? [];
  const build = isInForce(definition, workshop) ? workshop.build(definition.name.text) : undefined;
  return build?.states.flatMap(({ changes }) => changes) ?? [];
}

/** The recipe and the parent it is a diff of; undefined for a base recipe. */
export function diffOf(
  definition: Definition,
  workshop: Workshop,
): { readonly recipe: Solved; readonly parent: Solved; readonly parentName: string } | undefined {
  const recipe = recipeOf(definition, workshop);
  const parentName = recipe && workshop.parentOf(recipe.name);
  const parent = parentName === undefined ? undefined : workshop.instrument(parentName);
  return recipe && parent && parentName !== undefined ? { recipe, parent, parentName } : undefined;
}

/** The words that choose plausible ranges: kind and form of the instrument, and the species of the part's wood. */
export function tagsFor(
  path: string,
  instrument: Pick<Instrument, 'values'> | undefined,
  workshop: Workshop,
): readonly string[] {
  const tags: string[] = [];
  const word = (at: string) => {
    const value = instrument?.values.get(at)?.value;
    return value?.kind === 'name' ? value.name : undefined;
  };
  for (const at of ['kind', 'form']) {
    const found = word(at);
    if (found !== undefined) tags.push(found);
  }
  const part = path.slice(0, Math.max(path.lastIndexOf('.'), 0));
  const wood = word(`${part}.wood`);
  const species = wood === undefined ? undefined : workshop.speciesOf(wood)?.name.text;
  if (species !== undefined) tags.push(species);
  return tags;
}
