/** On an expectation that is missed: every single change that would meet it, each written by one press. */
import { wayEdits } from '../../reports/ways/way-edits.js';
import { wayInWords } from '../../reports/ways/way-words.js';
import { waysTo } from '../../recipes/ways/ways.js';
import type { Desk } from '../../checks/desk.js';
import type { ExpectStatement } from '../../facts/facts.js';
import { type Marked, markedStatements, type Offer, readableRecipe } from './offered-refactoring.js';

/** More would be a list to read, not a choice. */
const MOST = 4;

export function waysToExpectation(marked: Marked): readonly Offer[] {
  const { desk, definition } = marked;
  if (definition.kind !== 'recipe') return [];
  const expected = markedStatements(marked).find(
    (statement): statement is ExpectStatement => statement.kind === 'expect',
  );
  if (!expected || readableRecipe(marked) !== undefined) return [];
  const { workshop } = desk;
  const name = definition.name.text;
  const missed = workshop
    .expectations(name)
    .find(({ statement, outcome }) => statement === expected && outcome === 'missed');
  return missed ? offers(desk, marked, missed) : [];
}

function offers(
  { workshop }: Desk,
  { definition }: Marked,
  { path, low, high }: { readonly path: string; readonly low?: number; readonly high?: number },
): readonly Offer[] {
  const { say } = workshop.wording;
  const recipe = workshop.instrument(definition.name.text);
  if (!recipe) return [];
  const found = waysTo(workshop, recipe.values, { quantity: path, low, high }, recipe.holds.map(({ quantity }) => quantity)); // prettier-ignore
  const title = say`Ways to meet ${path}`;
  if (found.pending && found.ways.length === 0) {
    return [{ title, kind: 'change', reason: say`${path} is still being worked out. Ask again in a moment.` }];
  }
  if (found.ways.length === 0) {
    return [
      {
        title,
        kind: 'change',
        reason: say`No single change within what can be built meets this. Two changes may, or another wish.`,
      },
    ];
  }
  const shop = {
    catalogue: workshop.catalogue,
    wording: workshop.wording,
    instrument: (name: string) => workshop.instrument(name),
  };
  return found.ways.slice(0, MOST).map((way): Offer => {
    const { change, result } = wayInWords(way, found, workshop.wording);
    return { title: say`${change} (${path} ${result})`, kind: 'change', edits: wayEdits(definition, way, shop) };
  });
}
