/** Between the panel "Side by side" and its page. */
import type { ComparedModes, ComparisonTable, Drawing } from '../../language/server/protocol.js';

export interface SideBySideSubject {
  readonly a: string;
  readonly b: string;
  readonly plate: 'top' | 'back';
  /** Whether mode shapes are wanted; working them out takes the solver a moment. */
  readonly modes: boolean;
}

export interface SideBySideContent {
  /** Null: one of the two is not in the open folders. */
  readonly table: ComparisonTable | null;
  readonly drawings: { readonly a: Drawing | null; readonly b: Drawing | null };
  /** Of the plate shown. While new ones are worked out, the last ones, marked `waiting`. */
  readonly modes: ComparedModes | null;
  /** The editor can open a page in the browser; otherwise the page is handed over as a file. */
  readonly opensPages: boolean;
}

export type SideBySideAction =
  | { readonly kind: 'swap' }
  /** Both written out in full in the editor's own diff. */
  | { readonly kind: 'texts' }
  /** Open this document, which needs nothing but itself, where it can be printed. */
  | { readonly kind: 'print'; readonly html: string }
  | { readonly kind: 'choose'; readonly choice: Partial<Pick<SideBySideSubject, 'plate' | 'modes'>> };
