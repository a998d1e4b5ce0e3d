/** Who descends from whom: the chain of recipes from the base to the one asked for, and the model they are built on. */
import { LIMITS } from '../../facts/limits.js';
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
  | { readonly kind: 'ring'; readonly names: readonly string[] }
  /** More recipes than are followed. */
  | { readonly kind: 'long' };

export function lineageOf(shelf: Bookshelf, name: string): Lineage {
  const recipes: Definition[] = [];
  const end = endOf(shelf, name, recipes);
  return { recipes: recipes.reverse(), ...end };
}

/** Follows the parents, putting each recipe met behind the last, and says how that ended. */
function endOf(shelf: Bookshelf, name: string, met: Definition[]): Omit<Lineage, 'recipes'> {
  const seen = new Set<string>();
  let next = name;
  for (;;) {
    if (seen.has(next)) {
      const names = [...seen];
      return { trouble: { kind: 'ring', names: names.slice(names.indexOf(next)) } };
    }
    seen.add(next);
    const recipe: Definition | undefined = shelf.find('recipe', next);
    if (!recipe) return {};
    if (met.length === LIMITS.generations) return { trouble: { kind: 'long' } };
    met.push(recipe);
    const relation = recipe.relation;
    if (!relation || relation.target.text === '') return { trouble: { kind: 'rootless', at: recipe } };
    if (relation.word === 'for') {
      const model = shelf.find('model', relation.target.text);
      if (model) return { model };
      return { trouble: { kind: 'missing', wanted: 'model', at: recipe, target: relation.target } };
    }
    if (!shelf.find('recipe', relation.target.text)) {
      return { trouble: { kind: 'missing', wanted: 'recipe', at: recipe, target: relation.target } };
    }
    next = relation.target.text;
  }
}

/** Names of recipes in the ring that `name` is part of, or undefined. */
export function ringOf({ trouble }: Lineage, name: string): readonly string[] | undefined {
  return trouble?.kind === 'ring' && trouble.names.includes(name) ? trouble.names : undefined;
}
