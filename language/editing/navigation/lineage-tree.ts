/** Lineage as an editor shows it: who a recipe descends from, who descends from it, and who changes a path. */
import type { Definition, Position } from '../../facts/facts.js';
import { isWithin } from '../../recipes/instrument/instrument.js';
import { type Desk, type Location, locationOf } from '../../checks/desk.js';
import { namedAt } from './references.js';
import { spotAt } from './spot.js';

/** The recipe or model meant at a place, for a hierarchy to start from. */
export function lineageItemAt(desk: Desk, uri: string, position: Position): Definition | undefined {
  const spot = spotAt(desk, uri, position);
  if (!spot) return undefined;
  const named = namedAt(desk, spot);
  const meant = named && desk.shelf.find(named.kind, named.name);
  const definition = meant ?? spot.definition;
  return isOfLineage(definition) ? definition : undefined;
}

/** The parent recipe, or for a base recipe its model, or the recipe a build was made after. */
export function ancestorsOf(desk: Desk, definition: Definition): readonly Definition[] {
  const { relation, kind } = definition;
  if (!relation) return [];
  const wanted = kind === 'recipe' && relation.word === 'for' ? 'model' : 'recipe';
  const parent = desk.shelf.find(wanted, relation.target.text);
  return parent ? [parent] : [];
}

/** Recipes from this one (or for this model), then builds of it. */
export function descendantsOf(desk: Desk, definition: Definition): readonly Definition[] {
  const name = definition.name.text;
  const recipes = desk.shelf
    .targeting('recipe', name)
    .filter(({ relation }) => (relation?.word === 'for') === (definition.kind === 'model'));
  const builds = definition.kind === 'recipe' ? desk.shelf.targeting('build', name) : [];
  return definition.kind === 'build' ? [] : [...recipes, ...builds];
}

/**
 * Every place in the folder where a recipe changes the path at a place: "who changes this". Of a part, where anything in it
 * is changed; whoever adds or drops the part changes all in it.
 */
export function changesOfPathAt(desk: Desk, uri: string, position: Position): readonly Location[] {
  const spot = spotAt(desk, uri, position);
  if (spot?.what.kind !== 'path') return [];
  const { whole } = spot.what;
  return desk.shelf.names('recipe').flatMap((name) => {
    const changes = (desk.workshop.instrument(name)?.changes ?? []).filter(
      ({ kind, path }) => isWithin(path, whole) || (kind !== 'value' && isWithin(whole, path)),
    );
    // One line may change several values of a part: another model, a package.
    const lines = new Map(changes.map(({ statement, from }) => [statement, from]));
    return [...lines.values()]
      .map((from) => locationOf(desk, from.definition, from.span))
      .filter((location) => location !== undefined);
  });
}

function isOfLineage({ kind }: Definition): boolean {
  return kind === 'recipe' || kind === 'model' || kind === 'build';
}
