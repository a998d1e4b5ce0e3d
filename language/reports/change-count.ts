/** How many changes one recipe makes, and how many it may: what the status bar shows. */
import { type LineageCount, countOf } from './lineage-overview.js';
import { TOO_MANY_CHANGES } from '../checks/changes/counting-rules.js';
import type { Desk } from '../checks/desk.js';

export interface ChangeCount extends LineageCount {
  readonly parent: string;
  /** More changes than allowed, and the recipe says why. */
  readonly accepted?: true;
}

/** Undefined for what has no parent, and for what is no recipe. */
export function changeCount(desk: Desk, recipe: string): ChangeCount | undefined {
  const definition = desk.shelf.find('recipe', recipe);
  const parent = desk.workshop.parentOf(recipe);
  const count = definition && countOf(desk, definition);
  if (!count || parent === undefined) return undefined;
  const isAccepted = definition.statements.some(
    (statement) =>
      statement.kind === 'accept' &&
      statement.code.text === TOO_MANY_CHANGES.code &&
      (statement.reason?.text ?? '').trim() !== '',
  );
  return { parent, ...count, ...(isAccepted ? { accepted: true } : {}) };
}
