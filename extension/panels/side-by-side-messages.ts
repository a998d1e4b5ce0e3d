/** Between the panel "Side by side" and its page. */
import type { ComparisonTable, Drawing } from '../../language/server/protocol.js';
import type { Words } from './messages.js';

export interface SideBySideSubject {
  readonly a: string;
  readonly b: string;
}

export interface SideBySideContent {
  /** Null: one of the two is not in the open folders. */
  readonly table: ComparisonTable | null;
  readonly drawings: { readonly a: Drawing | null; readonly b: Drawing | null };
  /** The editor can open a page in the browser; otherwise the page is handed over as a file. */
  readonly opensPages: boolean;
}

export type SideBySideAction =
  | { readonly kind: 'swap' }
  /** Both written out in full in the editor's own diff. */
  | { readonly kind: 'texts' }
  /** Open this document, which needs nothing but itself, where it can be printed. */
  | { readonly kind: 'print'; readonly html: string };

export type SideBySideWords = Words<
  | 'title'
  | 'gone'
  | 'print'
  | 'swap'
  | 'texts'
  | 'printHint'
  | 'fileName'
  | 'differs'
  | 'differsNone'
  | 'what'
  | 'difference'
  | 'share'
  | 'inWords'
  | 'standing'
  | 'does'
  | 'doesNone'
  | 'show'
  | 'showDistinct'
  | 'showAll'
  | 'hidden'
  | 'toldApart'
  | 'pending'
  | 'same'
  | 'notKnown'
  | 'contributions'
  | 'contributionsCaption'
  | 'change'
  | 'amount'
  | 'asBar'
  | 'allBy'
  | 'drawn'
  | 'drawnLabel'
  | 'drawnSame'
  | 'drawnNothing'
  | 'drawnMissing'
  | 'plate'
  | 'top'
  | 'back'
  | 'profiles'
  | 'profileLabel'
  | 'readings'
  | 'reading'
  | 'computed'
  | 'verdict'
  | 'evidence'
  | 'evidenceAgainst'
  | 'evidencePlot'
  | 'evidenceAxis'
  | 'floorLegend'
  | 'differenceLegend'
  | 'mean'
  | 'floor'
  | 'floorFrom'
  | 'predicted'
>;
