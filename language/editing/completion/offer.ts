/** What completion offers, before and after it is known what it replaces. */
import type { Span } from '../../facts/facts.js';

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
