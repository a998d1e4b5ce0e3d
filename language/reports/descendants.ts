/** How many recipes and builds descend from a model, by following names down; nothing else is looked at. */
import type { Definition } from '../facts/facts.js';
import type { Desk } from '../checks/desk.js';
import { type Wording } from '../wording/wording.js';

export interface Family {
  readonly recipes: number;
  readonly builds: number;
}

export function familyOf({ shelf }: Desk, model: Definition): Family {
  const name = model.name.text;
  const seen = new Set<string>();
  const waiting = shelf
    .targeting('recipe', name)
    .filter(({ relation }) => relation?.word === 'for')
    .map((recipe) => recipe.name.text);
  let builds = 0;
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (seen.has(next)) continue;
    seen.add(next);
    builds += shelf.targeting('build', next).length;
    for (const child of shelf.targeting('recipe', next)) {
      if (child.relation?.word === 'from') waiting.push(child.name.text);
    }
  }
  return { recipes: seen.size, builds };
}

export function recipesCounted(count: number, { say }: Wording): string {
  return count === 0 ? say`no recipes` : count === 1 ? say`1 recipe` : say`${count} recipes`;
}

export function buildsCounted(count: number, { say }: Wording): string {
  return count === 0 ? say`no builds` : count === 1 ? say`1 build` : say`${count} builds`;
}
