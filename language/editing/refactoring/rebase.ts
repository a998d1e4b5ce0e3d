/** A recipe set on another parent, with the same differences: the same steps from that parent's own values. */
import type { Edit } from '../../checks/finding.js';
import { replace } from '../../checks/mending.js';
import type { Definition } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';
import type { Desk } from '../../checks/desk.js';
import type { Marked, Offer } from './offered-refactoring.js';
import { isOnHead, readableRecipe } from './offered-refactoring.js';
import { others, relativesOf } from './relatives.js';
import { onAnotherLine } from './on-another-line.js';

/** More than these would hide each other in a menu. */
const MOST = 4;

export function rebase(marked: Marked): readonly Offer[] {
  const { desk, definition } = marked;
  const { workshop } = desk;
  const { say } = workshop.wording;
  const { relation } = definition;
  if (definition.kind !== 'recipe' || relation?.word !== 'from' || !isOnHead(marked)) return [];
  const unfit = readableRecipe(marked);
  if (unfit !== undefined) return [{ title: say`Set on another parent`, kind: 'move', reason: unfit }];
  const candidates = relativesOf(workshop, definition)
    .filter((name) => name !== relation.target.text)
    .slice(0, MOST);
  return candidates.flatMap((name): readonly Offer[] => {
    const moved = setOn(workshop, definition, name);
    return moved ? [{ title: say`Set on ${name}, with the same differences`, kind: 'move', ...moved }] : [];
  });
}

/** A recipe another one could be set on. */
export interface PossibleParent {
  readonly name: string;
  readonly model: string;
  readonly isOfModel: boolean;
  /** Why it cannot be set on this one; only told of recipes of its own model. */
  readonly reason?: string;
}

/** Every recipe this one could be set on, the nearest of its model first; undefined for what has no parent to leave. */
export function possibleParents(desk: Desk, recipe: string): readonly PossibleParent[] | undefined {
  const { workshop } = desk;
  const definition = workshop.shelf.find('recipe', recipe);
  const { relation } = definition ?? {};
  if (!definition || relation?.word !== 'from') return undefined;
  return others(workshop, definition)
    .filter(({ name }) => name !== relation.target.text)
    .flatMap(({ name, model, isOfModel }): readonly PossibleParent[] => {
      const moved = setOn(workshop, definition, name);
      if (!moved) return [];
      if ('edits' in moved) return [{ name, model, isOfModel }];
      return isOfModel ? [{ name, model, isOfModel, reason: moved.reason }] : [];
    });
}

export type Rebased = { readonly edits: readonly Edit[] } | { readonly reason: string };

/** The recipe of this name set on a parent; undefined when either is not there, or the parent would descend from it. */
export function rebasedOn(marked: Marked, parent: string): Rebased | undefined {
  const { desk, definition } = marked;
  const unfit = readableRecipe(marked);
  if (unfit !== undefined) return { reason: unfit };
  const isPossible = others(desk.workshop, definition).some(({ name }) => name === parent);
  return isPossible ? setOn(desk.workshop, definition, parent) : undefined;
}

function setOn(workshop: Workshop, definition: Definition, name: string): Rebased | undefined {
  const parent = workshop.instrument(name);
  const { relation } = definition;
  if (!parent || !relation) return undefined;
  const moved = onAnotherLine(workshop, definition, parent);
  return 'reason' in moved ? moved : { edits: [replace(definition, relation.target.span, name), ...moved.edits] };
}
