/** Between the panel "Side by side" and its page. */
import type { ComparisonTable, Drawing } from '../../language/server/protocol.js';

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
