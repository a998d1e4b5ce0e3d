/** What the recipe being typed in knows: the paths it inherits, the property meant, the kind of instrument. */
import type { Definition } from '../../facts/facts.js';
import type { Property } from '../../catalogue/property.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import type { Desk } from '../../checks/desk.js';
import { recipeOf } from '../navigation/references.js';
import type { TypingPlace } from './typing-place.js';

/** A written path with the names of the enclosing blocks in front, in the catalogue's words. */
export function wholePath(desk: Desk, place: TypingPlace, path: string): string {
  const whole = place.block === '' ? path : `${place.block}.${path}`;
  return desk.workshop.catalogue.canonical(whole, place.definition?.kind);
}

export function propertyOf(desk: Desk, place: TypingPlace, whole: string): Property | undefined {
  return desk.workshop.catalogue.property(whole, place.definition?.kind) ?? desk.workshop.catalogue.property(whole);
}

/** What the recipe starts from; for a build or an order, the recipe itself. */
export function startValues(desk: Desk, place: TypingPlace): ReadonlyMap<string, Held> | undefined {
  const { definition } = place;
  if (!definition) return undefined;
  if (definition.kind === 'build' && place.inside === 'rework') return reworked(desk, place, definition);
  const recipe = recipeOf(definition);
  if (recipe === undefined) return undefined;
  return (definition.kind === 'recipe' ? desk.workshop.startOf(recipe) : desk.workshop.instrument(recipe))?.values;
}

/** What a rework starts from: the instrument as the reworks before it have left it. */
function reworked(desk: Desk, { range }: TypingPlace, definition: Definition): ReadonlyMap<string, Held> | undefined {
  const states = desk.workshop.build(definition.name.text)?.states;
  const line = range.start.line - (desk.shelf.placement(definition)?.line ?? 0);
  const here = states?.findIndex(({ rework }) => rework && rework.span.end.line >= line) ?? -1;
  return states?.[Math.max(0, here - 1)]?.values;
}

/** The words that say which plausible range fits: kind and form of the instrument, species of the wood. */
export function tagsOf(desk: Desk, place: TypingPlace): readonly string[] {
  const { definition } = place;
  if (definition?.kind === 'wood') {
    const species = desk.workshop.speciesOf(definition.name.text)?.name.text;
    return species === undefined ? [] : [species];
  }
  const values = startValues(desk, place);
  return ['kind', 'form']
    .map((path) => values?.get(path)?.value)
    .flatMap((value) => (value?.kind === 'name' ? [value.name] : []));
}
