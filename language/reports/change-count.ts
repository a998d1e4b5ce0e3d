/** How many changes one recipe makes, and how many it may: what the status bar shows. */
import { type LineageCount, countOf } from './lineage-overview.js';
import type { Desk } from '../checks/desk.js';

export interface ChangeCount extends LineageCount {
  readonly parent: string;
}

/** Undefined for what has no parent, and for what is no recipe. */
export function changeCount(desk: Desk, recipe: string): ChangeCount | undefined {
  const definition = desk.shelf.find('recipe', recipe);
  const parent = desk.workshop.parentOf(recipe);
  const count = definition && countOf(desk, definition);
  return count && parent !== undefined ? { parent, ...count } : undefined;
}
