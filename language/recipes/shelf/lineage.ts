/** Who descends from whom: the chain of recipes from the base to the one asked for, and the model they are built on. */
import type { Bookshelf } from './bookshelf.js';
import type { Definition, Word } from '../../facts/facts.js';

export interface Lineage {
  /** From the base recipe to the one asked for. Cut short where there is trouble. */
  readonly recipes: readonly Definition[];
  readonly model?: Definition;
  readonly trouble?: LineageTrouble;
}

export type LineageTrouble =
  /** `at` names a parent, model or recipe that is not on the shelf (perhaps another kind of thing has that name). */
  | { readonly kind: 'missing'; readonly wanted: 'recipe' | 'model'; readonly at: Definition; readonly target: Word }
  /** `at` says neither `for` a model nor `from` a recipe. */
  | { readonly kind: 'rootless'; readonly at: Definition }
  /** The recipes form a ring; `names` lists it once round. */
  | { readonly kind: 'ring'; readonly names: readonly string[] };

export function lineageOf(shelf: Bookshelf, name: string): Lineage {
  const recipes: Definition[] = [];
  const seen = new Set<string>();
  let next = name;
  for (;;) {
    if (seen.has(next)) {
      const names = [...seen];
      return { recipes, trouble: { kind: 'ring', names: names.slice(names.indexOf(next)) } };
    }
    seen.add(next);
    const recipe: Definition | undefined = shelf.find('recipe', next);
    if (!recipe) return { recipes };
    recipes.unshift(recipe);
    const relation = recipe.relation;
    if (!relation || relation.target.text === '') return { recipes, trouble: { kind: 'rootless', at: recipe } };
    if (relation.word === 'for') {
      const model = shelf.find('model', relation.target.text);
      if (model) return { recipes, model };
      return { recipes, trouble: { kind: 'missing', wanted: 'model', at: recipe, target: relation.target } };
    }
    if (!shelf.find('recipe', relation.target.text)) {
      return { recipes, trouble: { kind: 'missing', wanted: 'recipe', at: recipe, target: relation.target } };
    }
    next = relation.target.text;
  }
}

/** Names of recipes in the ring that `name` is part of, or undefined. */
export function ringOf(shelf: Bookshelf, name: string): readonly string[] | undefined {
  const { trouble } = lineageOf(shelf, name);
  return trouble?.kind === 'ring' && trouble.names.includes(name) ? trouble.names : undefined;
}
