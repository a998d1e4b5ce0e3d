/** Everything in the folder that can be written out in full and laid beside another, each after its parent. */
import type { Definition, DefinitionKind, Span } from '../facts/facts.js';
import { type Desk, locationOf } from '../checks/desk.js';

export interface InstrumentEntry {
  readonly name: string;
  readonly kind: 'model' | 'recipe' | 'build';
  readonly parent?: string;
  readonly uri: string;
  readonly range: Span;
}

export function instrumentsOf(desk: Desk): readonly InstrumentEntry[] {
  const placed = new Set<Definition>();
  const entries: InstrumentEntry[] = [];
  for (const uri of desk.shelf.uris()) {
    for (const { definition } of desk.shelf.file(uri)!.definitions) {
      for (const each of lineTo(desk, definition, placed)) {
        placed.add(each);
        const entry = entryOf(desk, each);
        if (entry) entries.push(entry);
      }
    }
  }
  return entries;
}

/** A definition with those of its ancestors that are not placed yet, the oldest first. */
function lineTo(desk: Desk, definition: Definition, placed: ReadonlySet<Definition>): readonly Definition[] {
  const line: Definition[] = [];
  for (let next: Definition | undefined = definition; next && !placed.has(next) && !line.includes(next);) {
    if (!isInstrument(next.kind)) break;
    line.push(next);
    next = parentOf(desk, next);
  }
  return line.reverse();
}

function parentOf(desk: Desk, { kind, relation }: Definition): Definition | undefined {
  if (!relation) return undefined;
  return desk.shelf.find(kind === 'recipe' && relation.word === 'for' ? 'model' : 'recipe', relation.target.text);
}

function entryOf(desk: Desk, definition: Definition): InstrumentEntry | undefined {
  const { kind, name, relation } = definition;
  const location = locationOf(desk, definition, definition.span);
  // Of two of the same name only the first can be asked for.
  if (!location || !isInstrument(kind) || name.text === '' || desk.shelf.find(kind, name.text) !== definition) {
    return undefined;
  }
  const parent = relation?.target.text;
  return { name: name.text, kind, ...location, ...(parent ? { parent } : {}) };
}

function isInstrument(kind: DefinitionKind): kind is InstrumentEntry['kind'] {
  return kind === 'model' || kind === 'recipe' || kind === 'build';
}
