/** What a recipe starts from, by name: its parent, or for a base recipe its model. */
import type { Definition } from '../facts/facts.js';
import type { Workshop } from '../recipes/workshop.js';

export function startOf(definition: Definition, workshop: Workshop): string {
  // What was reworked on a build starts from the build.
  if (definition.kind === 'build') return definition.name.text;
  return workshop.startOf(definition.name.text)?.name ?? workshop.wording.text('The parent');
}
