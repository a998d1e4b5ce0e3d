/** Definition, references and rename of what a maker names: woods, models, recipes, strings, rigs, appointments. */
import type { Definition, DefinitionKind, Position } from '../../facts/facts.js';
import { KINDS_OF_VALUE, kindsNamedBy } from '../../recipes/shelf/mentions.js';
import { type Desk, type Location, locationOf } from '../../checks/desk.js';
import { type Spot, spotAt } from './spot.js';

/** A thing with a name, as meant at some place. */
export interface Named {
  readonly kind: DefinitionKind;
  readonly name: string;
}

/** What is named at a place: the definition itself, or the one it mentions. */
export function namedAt(desk: Desk, spot: Spot): Named | undefined {
  const { what, definition } = spot;
  switch (what.kind) {
    case 'name':
      return { kind: definition.kind, name: what.word.text };
    case 'target':
      return firstOf(desk, what.wanted, what.word.text);
    case 'package':
      return { kind: 'appointments', name: what.word.text };
    case 'value':
      return what.value.kind === 'name'
        ? firstOf(desk, kindsNamedBy(what.path, definition, desk.workshop.catalogue), what.value.name)
        : undefined;
    default:
      return undefined;
  }
}

/**
 * Where what is at the place was defined. On a path: where the value in force before this recipe comes from, that is the
 * parent's line for a change, and for a path merely asked about the line that sets it.
 */
export function definitionAt(desk: Desk, uri: string, position: Position): readonly Location[] {
  const spot = spotAt(desk, uri, position);
  if (!spot) return [];
  const named = namedAt(desk, spot);
  if (named) {
    return desk.shelf
      .named(named.kind, named.name)
      .map((definition) => locationOf(desk, definition, definition.name.span))
      .filter((location) => location !== undefined);
  }
  return spot.what.kind === 'path' ? sourceOfPath(desk, spot, spot.what.whole) : [];
}

export function referencesAt(
  desk: Desk,
  uri: string,
  position: Position,
  options: { readonly declaration: boolean },
): readonly Location[] {
  const spot = spotAt(desk, uri, position);
  const named = spot && namedAt(desk, spot);
  return named ? placesOf(desk, named, options.declaration) : [];
}

/** The range of the word to be renamed, or why it cannot be. */
export function renameRange(desk: Desk, uri: string, position: Position): Location | string {
  const { say } = desk.workshop.wording;
  const spot = spotAt(desk, uri, position);
  const named = spot && namedAt(desk, spot);
  if (!spot || !named) return say`Only the name of a definition can be renamed here.`;
  const definitions = desk.shelf.named(named.kind, named.name);
  if (definitions.length === 0) return say`There is no ${named.kind} called ${named.name} to rename.`;
  if (definitions.every((definition) => isInLibrary(desk, definition))) {
    return say`${named.name} belongs to the species library, which is read-only.`;
  }
  return { uri, range: spot.range };
}

/** Every edit of a rename, or why it cannot be done. */
export function rename(desk: Desk, uri: string, position: Position, to: string): readonly Location[] | string {
  const { say } = desk.workshop.wording;
  const range = renameRange(desk, uri, position);
  if (typeof range === 'string') return range;
  const named = namedAt(desk, spotAt(desk, uri, position)!)!;
  if (!isName(to, named.kind)) return say`“${to}” is not a name: use letters, digits and hyphens.`;
  if (to === named.name) return placesToRename(desk, named);
  if (desk.shelf.named(named.kind, to).length > 0) return say`There already is a ${named.kind} called ${to}.`;
  const other = meantOtherwise(desk, named.kind, to);
  if (other !== undefined) {
    return say`${to} is the name of a ${other} that is used here: every place that says ${to} would mean the ${named.kind} instead.`;
  }
  return placesToRename(desk, named);
}

/** A word, perhaps with a number and a hyphen before it. What values name must not read as a number. */
function isName(text: string, kind: DefinitionKind): boolean {
  if (/^\d+$/.test(text)) return !NAMED_BY_VALUES.has(kind);
  return /^(?:\p{L}|\d+-(?=\p{L}))[\p{L}\p{N}_#]*(?:-[\p{L}\p{N}_#]+)*$/u.test(text) && text !== 'unknown';
}

const NAMED_BY_VALUES: ReadonlySet<DefinitionKind> = new Set(Object.values(KINDS_OF_VALUE).flat());

/** The kind of thing that places naming `to` mean now, if they would mean one of `kind` as soon as there is one. */
function meantOtherwise(desk: Desk, kind: DefinitionKind, to: string): DefinitionKind | undefined {
  for (const uri of desk.shelf.uris()) {
    for (const { definition } of desk.shelf.file(uri)!.definitions) {
      for (const { name, kinds } of desk.workshop.mentions(definition)) {
        if (name !== to || !kinds.includes(kind)) continue;
        const now = kinds.find((one) => desk.shelf.find(one, name));
        if (now !== undefined && kinds.indexOf(kind) < kinds.indexOf(now)) return now;
      }
    }
  }
  return undefined;
}

function placesToRename(desk: Desk, named: Named): readonly Location[] {
  return placesOf(desk, named, true).filter((place) => !desk.shelf.isLibrary(place.uri));
}

function placesOf(desk: Desk, named: Named, declaration: boolean): readonly Location[] {
  const places: (Location | undefined)[] = [];
  if (declaration) {
    for (const definition of desk.shelf.named(named.kind, named.name)) {
      places.push(locationOf(desk, definition, definition.name.span));
    }
  }
  for (const uri of desk.shelf.uris()) {
    for (const { definition } of desk.shelf.file(uri)!.definitions) {
      for (const mention of desk.workshop.mentions(definition)) {
        if (mention.name !== named.name || firstOf(desk, mention.kinds, mention.name)?.kind !== named.kind) continue;
        places.push(locationOf(desk, definition, mention.span));
      }
    }
  }
  return places.filter((place) => place !== undefined);
}

/** The first of some kinds under which a name is known; with none known, the first kind itself. */
function firstOf(desk: Desk, kinds: readonly DefinitionKind[], name: string): Named | undefined {
  const kind = kinds.find((candidate) => desk.shelf.find(candidate, name)) ?? kinds[0];
  return kind && { kind, name };
}

function isInLibrary(desk: Desk, definition: Definition): boolean {
  const place = desk.shelf.placement(definition);
  return place !== undefined && desk.shelf.isLibrary(place.uri);
}

function sourceOfPath(desk: Desk, spot: Spot, path: string): readonly Location[] {
  const recipe = recipeOf(spot.definition);
  if (recipe === undefined) return [];
  const isOwn = spot.statements.some((statement) => statement.kind === 'change' || statement.kind === 'property');
  const values = isOwn ? desk.workshop.startOf(recipe)?.values : desk.workshop.instrument(recipe)?.values;
  const held = values?.get(path);
  const location = held && locationOf(desk, held.from.definition, held.from.span);
  return location ? [location] : [];
}

/** The recipe whose values a definition speaks of. */
export function recipeOf(definition: Definition): string | undefined {
  if (definition.kind === 'recipe') return definition.name.text;
  return definition.kind === 'build' || definition.kind === 'order' ? definition.relation?.target.text : undefined;
}
