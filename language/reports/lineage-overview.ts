/** The family tree of a folder: models, the recipes that descend from them with their changes counted, their builds. */
import type { Definition, Span } from '../facts/facts.js';
import { type Desk, locationOf } from '../checks/desk.js';

export interface LineageEntry {
  readonly kind: 'model' | 'recipe' | 'build';
  readonly name: string;
  readonly uri: string;
  /** The name itself, where a click leads. */
  readonly range: Span;
  /** What stands after `for`, `from` or `of`, whether or not it is there. */
  readonly parent?: string;
  /** For a recipe with a parent: what it changes, counted. */
  readonly count?: LineageCount;
  /** Recipes in the order written, then builds. */
  readonly children: readonly LineageEntry[];
}

export interface LineageCount {
  readonly changes: number;
  /** What the shop, or the recipe itself, allows. */
  readonly limit: number;
  /** Nothing counted because only another set of the same wood was taken. */
  readonly substitution: boolean;
}

/** Models first, each with its line; then whatever has no parent in the folder, or descends from itself. */
export function lineageOverview(desk: Desk): readonly LineageEntry[] {
  const definitions = desk.shelf
    .uris()
    .flatMap((uri) => desk.shelf.file(uri)?.definitions ?? [])
    .map(({ definition }) => definition)
    .filter((definition) => isInForce(desk, definition));
  const roots = definitions.filter(
    (definition) => definition.kind === 'model' || !parentOf(desk, definition) || isLost(desk, definition),
  );
  const shown = new Set<Definition>();
  const inOrder = [
    ...roots.filter(({ kind }) => kind === 'model'),
    ...roots.filter(({ kind }) => kind !== 'model'),
    // What no root leads to is part of a ring, and is entered at the first of it.
    ...definitions,
  ];
  return inOrder.flatMap((definition) => entriesFor(desk, definition, shown));
}

function entriesFor(desk: Desk, definition: Definition, shown: Set<Definition>): readonly LineageEntry[] {
  if (shown.has(definition)) return [];
  shown.add(definition);
  const location = locationOf(desk, definition, definition.name.span);
  if (!location) return [];
  const { name, relation } = definition;
  const count = definition.kind === 'recipe' ? countOf(desk, definition) : undefined;
  return [
    {
      kind: definition.kind as LineageEntry['kind'],
      name: name.text,
      ...location,
      ...(relation && relation.target.text !== '' ? { parent: relation.target.text } : {}),
      ...(count ? { count } : {}),
      children: childrenOf(desk, definition).flatMap((child) => entriesFor(desk, child, shown)),
    },
  ];
}

function childrenOf(desk: Desk, { kind, name }: Definition): readonly Definition[] {
  if (kind === 'build') return [];
  const recipes = desk.shelf
    .targeting('recipe', name.text)
    .filter(({ relation }) => (relation?.word === 'for') === (kind === 'model'));
  const builds = kind === 'recipe' ? desk.shelf.targeting('build', name.text) : [];
  return [...recipes, ...builds].filter((definition) => isInForce(desk, definition) && !isLost(desk, definition));
}

/** So far down its line that nobody follows: shown by itself. */
function isLost({ workshop }: Desk, { kind, name }: Definition): boolean {
  return kind === 'recipe' && workshop.lineage(name.text).trouble?.kind === 'long';
}

function parentOf(desk: Desk, { kind, relation }: Definition): Definition | undefined {
  if (!relation) return undefined;
  return desk.shelf.find(kind === 'recipe' && relation.word === 'for' ? 'model' : 'recipe', relation.target.text);
}

export function countOf({ workshop }: Desk, recipe: Definition): LineageCount | undefined {
  const name = recipe.name.text;
  if (workshop.parentOf(name) === undefined) return undefined;
  const { total, variables } = workshop.count(name);
  return {
    changes: total,
    limit: workshop.limit(recipe).count,
    substitution: total === 0 && variables.some(({ verdict }) => verdict === 'substitution'),
  };
}

/** Of two of the same name only the first is in force; what has no name cannot be asked for. */
function isInForce({ shelf }: Desk, definition: Definition): boolean {
  const { kind, name } = definition;
  if (kind !== 'model' && kind !== 'recipe' && kind !== 'build') return false;
  return name.text !== '' && shelf.find(kind, name.text) === definition;
}
