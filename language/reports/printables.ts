/** Everything in the folder that a sheet can be made of: recipes, builds, and orders for one of them. */
import type { Definition, Span } from '../facts/facts.js';
import { type Desk, locationOf } from '../checks/desk.js';

export interface PrintableEntry {
  readonly name: string;
  readonly kind: 'recipe' | 'build' | 'order';
  /** What it is from, for or of. */
  readonly parent?: string;
  readonly uri: string;
  /** The whole definition, for finding the one at the cursor. */
  readonly range: Span;
}

export function printablesOf(desk: Desk): readonly PrintableEntry[] {
  const definitions = desk.shelf.uris().flatMap((uri) => desk.shelf.file(uri)!.definitions);
  return definitions.flatMap(({ definition }): readonly PrintableEntry[] => {
    const { kind, name, relation } = definition;
    const location = locationOf(desk, definition, definition.span);
    if (!location || !isPrintable(desk, definition)) return [];
    const parent = relation?.target.text;
    return [{ name: name.text, kind: kind as PrintableEntry['kind'], ...location, ...(parent ? { parent } : {}) }];
  });
}

/** Of two of the same name only the first can be asked for; an order, only under a name that no instrument has. */
export function isPrintable({ shelf }: Desk, definition: Definition): boolean {
  const { kind, name, relation } = definition;
  const isInstrument = (of: string) => shelf.find('recipe', of) ?? shelf.find('build', of);
  if (name.text === '' || shelf.find(kind, name.text) !== definition) return false;
  if (kind === 'recipe' || kind === 'build') return true;
  return kind === 'order' && !isInstrument(name.text) && !!relation && !!isInstrument(relation.target.text);
}
