/** A sheet as plain data: what is printed, before anybody decides how it looks. */
import type { Caution } from '../catalogue/cautions.js';

export const SHEET_KINDS = ['bench', 'client', 'care', 'papers'] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];

export interface Sheet {
  readonly kind: SheetKind;
  /** BCP 47. */
  readonly language: string;
  readonly title: string;
  /** The shop. */
  readonly shop: string;
  /** Sentences below the title. */
  readonly intro: readonly string[];
  /** To be filled in by hand: `Serial number`. */
  readonly boxes: readonly string[];
  readonly sections: readonly SheetSection[];
  /** Each once, with its source. */
  readonly cautions: readonly { readonly text: string; readonly source: string }[];
  /** Below the cautions: what the sheet is not. */
  readonly closing: string;
}

export interface SheetSection {
  readonly title: string;
  readonly text?: readonly string[];
  readonly columns?: readonly string[];
  /** An empty first cell: the one above heads this row too. */
  readonly rows?: readonly (readonly SheetCell[])[];
  /** To be filled in by hand at this point. */
  readonly boxes?: readonly string[];
}

/** Words or a figure; `write`: a box to write in. `strong`: other than in the parent. */
export type SheetCell = string | { readonly write: true } | { readonly strong: string };

export const WRITE: SheetCell = { write: true };

/** Cautions, the same one never twice. */
export function onceEach(cautions: readonly Caution[]): readonly Caution[] {
  return [...new Map(cautions.map((caution) => [caution.key, caution])).values()];
}
