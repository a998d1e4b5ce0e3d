/**
 * Completion: what can be written here. Everything offered is spelled in full, with its unit and a value that makes
 * sense in this recipe, so that a recipe can be written by accepting alone.
 */
import type { Position, Span } from '../recipes/facts.js';
import { codesFor } from './completion-codes.js';
import { definitionHeads, relationWords, targetNames } from './completion-heads.js';
import { changedPaths, derivedPaths, droppablePaths, holdingPaths, packageNames } from './completion-paths.js';
import { statementsFor } from './completion-statements.js';
import { unitsFor, valuesFor } from './completion-values.js';
import type { Desk } from './desk.js';
import { type TypingPlace, typingPlace } from './typing-place.js';

export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  /** Beside the label: unit, kind, value in force. */
  readonly detail?: string;
  /** One plain sentence, Markdown. */
  readonly sentence?: string;
  /** What is inserted; with `snippet`, `${1:…}` marks places to fill in. */
  readonly insert: string;
  readonly snippet?: boolean;
  readonly range: Span;
  /** Lower comes first; the label decides among equals. */
  readonly rank: number;
  /** Other words that find it. */
  readonly synonyms?: readonly string[];
}

export type CompletionKind =
  'keyword' | 'part' | 'property' | 'derived' | 'unit' | 'value' | 'choice' | 'wood' | 'definition' | 'change' | 'code';

/** A completion before it is known what it replaces. */
export type Offer = Omit<Completion, 'range'>;

export function completionsAt(desk: Desk, uri: string, position: Position): readonly Completion[] {
  const place = typingPlace(desk, uri, position);
  if (!place) return [];
  return offers(desk, place).map((offer) => ({ ...offer, range: place.range }));
}

function offers(desk: Desk, place: TypingPlace): readonly Offer[] {
  const { at } = place;
  switch (at.kind) {
    case 'file':
      return definitionHeads(desk);
    case 'relation':
      return relationWords(at.of);
    case 'target':
      return targetNames(desk, at.of, at.relation);
    case 'statement':
      return statementsFor(desk, place);
    case 'after':
      return afterKeyword(desk, place, at.keyword);
    case 'hold-by':
      return holdingPaths(desk, place, at.quantity);
    case 'value':
      return valuesFor(desk, place, at.path, at.side);
    case 'unit':
      return unitsFor(desk, place, at.path);
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
      return statementsFor(desk, place).filter((offer) => offer.kind === 'part');
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
