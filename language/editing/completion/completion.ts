/**
 * Completion: what can be written here. Everything offered is spelled in full, with its unit and a value that makes
 * sense in this recipe, so that a recipe can be written by accepting alone.
 */
import type { Position } from '../../facts/facts.js';
import { codesFor } from './completion-codes.js';
import { definitionHeads, relationWords, targetNames } from './completion-heads.js';
import { changedPaths, derivedPaths, droppablePaths, holdingPaths, packageNames } from './completion-paths.js';
import { joints } from './completion-keywords.js';
import { addableParts, statementsFor } from './completion-statements.js';
import { unitsFor, valuesFor } from './completion-values.js';
import type { Desk } from '../../checks/desk.js';
import type { Completion, Offer } from './offer.js';
import { type TypingPlace, typingPlace } from './typing-place.js';

export interface CompletionList {
  readonly items: readonly Completion[];
  /** More letters bring more: the list is to be asked for again as they are typed. */
  readonly incomplete: boolean;
}

export function completionsAt(desk: Desk, uri: string, position: Position): CompletionList {
  const place = typingPlace(desk, uri, position);
  if (!place) return { items: [], incomplete: false };
  const { text } = desk.workshop.wording;
  const items = offers(desk, place).map((offer) => ({
    ...offer,
    ...(offer.detail === undefined ? {} : { detail: text(offer.detail) }),
    ...(offer.sentence === undefined ? {} : { sentence: text(offer.sentence) }),
    range: place.range,
  }));
  return { items, incomplete: place.at.kind === 'statement' };
}

function offers(desk: Desk, place: TypingPlace): readonly Offer[] {
  const { at } = place;
  switch (at.kind) {
    case 'file':
      return definitionHeads(desk);
    case 'relation':
      return relationWords(at.of);
    case 'target':
      return targetNames(desk, at.of, at.relation, place.definition?.name.text ?? '');
    case 'statement':
      return statementsFor(desk, place, at.afterValue);
    case 'after':
      return afterKeyword(desk, place, at.keyword);
    case 'joint':
      return joints(at.words);
    case 'hold-by':
      return holdingPaths(desk, place, at.quantity);
    case 'value':
      return valuesFor(desk, place, at);
    case 'unit':
      return unitsFor(desk, place, at.path, at.step);
    case 'prose':
      return [];
  }
}

function afterKeyword(desk: Desk, place: TypingPlace, keyword: string): readonly Offer[] {
  switch (keyword) {
    case 'change':
      return changedPaths(desk, place);
    case 'drop':
      return droppablePaths(desk, place);
    case 'add':
      return addableParts(desk, place);
    case 'hold':
    case 'expect':
      return derivedPaths(desk, place, keyword);
    case 'with':
      return packageNames(desk);
    case 'accept':
      return codesFor(desk, place);
    default:
      return [];
  }
}
