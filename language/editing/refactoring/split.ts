/** A recipe that changes several things, split into a chain of recipes that change one each; the last is what it was. */
import { areEntangled, bringsModel, MOST_STEPS, splitIntoChain } from '../../checks/changes/fewer-changes.js';
import type { Edit } from '../../checks/finding.js';
import { isCounted } from '../../recipes/instrument/counting.js';
import type { Instrument } from '../../recipes/instrument/instrument.js';
import { unsolvedHold } from './inlined-holds.js';
import { isOnHead, type Marked, markedStatements, type Offer, readableRecipe } from './offered-refactoring.js';
import { firstDifference, readAfter } from './proof.js';

export function splitRecipe(marked: Marked): readonly Offer[] {
  const { desk, definition } = marked;
  const { workshop } = desk;
  const { say } = workshop.wording;
  if (definition.kind !== 'recipe' || definition.relation?.word !== 'from') return [];
  const isOnChange = markedStatements(marked).some(({ kind }) => CHANGING.has(kind));
  if (!isOnHead(marked) && !isOnChange) return [];
  const title = say`Split into recipes of one change each`;
  const refuse = (reason: string): readonly Offer[] => [{ title, kind: 'extract', reason }];

  const name = definition.name.text;
  const unfit = readableRecipe(marked);
  if (unfit !== undefined) return refuse(unfit);
  const recipe = workshop.instrument(name);
  if (!recipe || workshop.parentOf(name) === undefined) return refuse(say`The parent of ${name} is not known.`);
  const { variables } = workshop.count(name);
  const counted = variables.filter(({ verdict }) => isCounted(verdict)).map(({ variable }) => variable);
  if (counted.length < 2) return refuse(say`${name} changes one thing at most: there is nothing to split.`);
  if (bringsModel(counted)) return refuse(say`A change of model brings all its differences with one line.`);
  if (counted.length > MOST_STEPS)
    return refuse(say`More than ${MOST_STEPS} steps would help nobody. Group some first.`);
  const open = unsolvedHold(recipe);
  if (open) return refuse(say`${open.by} could not be found from ${open.quantity}. Settle that hold first.`);
  if (areEntangled(recipe, counted)) {
    return refuse(say`Some changes work on what others bring or take away, so they cannot be made one by one.`);
  }
  const [fix] = splitIntoChain(definition, recipe, counted, workshop);
  if (!fix) return refuse(say`Some changes cannot be made by themselves.`);
  const lost = lostAtTheEnd(marked, fix.edits, recipe);
  if (lost !== undefined) return refuse(say`The last of the chain would differ from ${name} in ${lost}.`);
  return [{ title: fix.title, kind: 'extract', edits: fix.edits }];
}

const CHANGING: ReadonlySet<string> = new Set(['change', 'property', 'add', 'drop', 'together', 'with']);

/** The chain as it would read, link by link: the last must come to what the recipe comes to now. */
function lostAtTheEnd({ desk, parser, definition }: Marked, edits: readonly Edit[], recipe: Instrument) {
  const { workshop } = desk;
  const start = workshop.startOf(recipe.name);
  let link = start;
  for (const each of readAfter(definition, edits, parser)) link = workshop.wouldBe(each, link);
  return link && firstDifference(workshop.wouldBe(definition, start), link);
}
