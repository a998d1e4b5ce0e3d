/** Paths behind a keyword: what a recipe may change, drop, hold or expect, and the packages it may take. */
import { BARE_KINDS } from '../../checks/names/name-rules.js';
import { writeValue } from '../../checks/phrases.js';
import { concretePaths } from '../../recipes/evaluation/effects.js';
import { startValues, wholePath } from './completion-context.js';
import type { Offer } from './offer.js';
import { newValue } from './completion-values.js';
import type { Desk } from '../../checks/desk.js';
import { snippetText } from './snippet.js';
import type { TypingPlace } from './typing-place.js';

/**
 * Whole changes: `top.thickness: 2.85 mm -> …`. What is counted comes before what is not, and of that what the line of
 * recipes has set since the model before what it has left alone.
 */
export function changedPaths(desk: Desk, place: TypingPlace): readonly Offer[] {
  const values = startValues(desk, place);
  const prefix = place.block === '' ? '' : `${wholePath(desk, { ...place, block: '' }, place.block)}.`;
  return [...(values?.values() ?? [])]
    .filter(({ path }) => path.startsWith(prefix))
    .map(({ path, value, from }) => {
      const written = writeValue(value);
      const property = desk.workshop.catalogue.property(path);
      const counted = property?.class === 'voicing' || property?.class === 'body';
      const words = path.slice(prefix.length);
      return {
        label: words,
        kind: 'change',
        detail: `${written} -> …`,
        sentence: property?.sentence,
        insert: `${words}: ${snippetText(written)} -> ${newValue(value, written)}`,
        snippet: true,
        rank: (counted ? 0 : 2) + (from.definition.kind === 'model' ? 1 : 0),
      };
    });
}

/** Members that can be dropped: braces, devices, whatever the maker named. */
export function droppablePaths(desk: Desk, place: TypingPlace): readonly Offer[] {
  const members = new Set<string>();
  for (const path of startValues(desk, place)?.keys() ?? []) {
    const words = path.split('.');
    for (let length = 2; length < words.length; length++) members.add(words.slice(0, length).join('.'));
  }
  return [...members].map((path) => ({
    label: path,
    kind: 'part',
    sentence: desk.workshop.catalogue.part(path)?.sentence,
    insert: path,
    rank: path.startsWith('bracing') ? 0 : 1,
  }));
}

export function derivedPaths(desk: Desk, place: TypingPlace, keyword: string): readonly Offer[] {
  const recipe = place.definition?.kind === 'recipe' ? place.definition.name.text : '';
  const evaluation = desk.workshop.evaluation(recipe);
  if (!evaluation) return [];
  return concretePaths(evaluation.derivations.all, evaluation).map((path) => {
    const derived = evaluation.derived(path)!;
    const quantity = derived.quantity!;
    return {
      label: path,
      kind: 'derived',
      detail: quantity.unit,
      sentence: quantity.sentence,
      insert: keyword === 'hold' ? `${path} by ` : `${path}: `,
      rank: (derived.known ? 0 : 2) + (quantity.voicing ? 0 : 1),
    };
  });
}

/** What can hold a quantity: the numbers of the recipe that move it, plates and braces before the rest. */
export function holdingPaths(desk: Desk, place: TypingPlace, quantity: string): readonly Offer[] {
  const recipe = place.definition?.kind === 'recipe' ? place.definition.name.text : '';
  const evaluation = desk.workshop.evaluation(recipe);
  const whole = wholePath(desk, { ...place, block: '' }, quantity);
  const values = desk.workshop.instrument(recipe)?.values;
  return [...(evaluation?.gradient(whole).keys() ?? [])]
    .filter((path) => values?.get(path)?.value.kind === 'quantity')
    .map((path) => ({
      label: path,
      kind: 'property',
      detail: writeValue(values!.get(path)!.value),
      sentence: desk.workshop.catalogue.property(path)?.sentence,
      insert: path,
      rank: /(thickness|height)$/.test(path) ? 0 : 1,
    }));
}

export function packageNames(desk: Desk): readonly Offer[] {
  return desk.shelf
    .names('appointments')
    .map((name, rank) => ({ label: name, kind: 'definition', detail: BARE_KINDS.appointments, insert: name, rank }));
}
