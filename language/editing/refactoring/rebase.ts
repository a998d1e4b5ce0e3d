/** A recipe set on another parent of its model, with the same differences: the same steps from that parent's own values. */
import { replace } from '../../checks/mending.js';
import type { Marked, Offer } from './offer.js';
import { isOnHead, readableRecipe } from './offer.js';
import { relativesOf } from './relatives.js';
import { onAnotherLine } from './on-another-line.js';

/** More than these would hide each other in a menu. */
const MOST = 4;

export function rebase(marked: Marked): readonly Offer[] {
  const { desk, definition } = marked;
  const { workshop } = desk;
  const { say } = workshop.wording;
  const { relation } = definition;
  if (definition.kind !== 'recipe' || relation?.word !== 'from' || !isOnHead(marked)) return [];
  const unfit = readableRecipe(marked);
  if (unfit !== undefined) return [{ title: say`Set on another parent`, kind: 'move', reason: unfit }];
  const candidates = relativesOf(workshop, definition)
    .filter((name) => name !== relation.target.text)
    .slice(0, MOST);
  return candidates.flatMap((name): readonly Offer[] => {
    const parent = workshop.instrument(name);
    if (!parent) return [];
    const title = say`Set on ${name}, with the same differences`;
    const moved = onAnotherLine(workshop, definition, parent);
    if ('reason' in moved) return [{ title, kind: 'move', reason: moved.reason }];
    return [{ title, kind: 'move', edits: [replace(definition, relation.target.span, name), ...moved.edits] }];
  });
}
