/** A sheet as plain data: what is printed, before anybody decides how it looks. */
import type { Caution } from '../catalogue/cautions.js';

export const SHEET_KINDS = ['bench', 'client', 'care', 'papers'] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];
/** Of one instrument, or of the shop. */
export type PrintedKind = SheetKind | 'orders';

export interface Sheet {
  /** `orders`: of the whole shop. */
  readonly kind: PrintedKind;
  /** BCP 47. */
  readonly language: string;
  readonly title: string;
  /** The shop. */
  readonly shop: string;
  /** Sentences below the title. */
  readonly intro: readonly string[];
  readonly boxes: readonly SheetBox[];
  readonly sections: readonly SheetSection[];
  /** Each once, with its source. */
  readonly cautions: readonly { readonly text: string; readonly source: string }[];
  /** Below the cautions: what the sheet is not. */
  readonly closing: string;
}

/** To be filled in by hand, or filled in already where it is known. */
export type SheetBox = string | { readonly label: string; readonly value: string };

export interface SheetSection {
  readonly title: string;
  readonly text?: readonly string[];
  /** A drawing as markup that this program made, every text in it escaped. */
  readonly figure?: string;
  readonly columns?: readonly string[];
  /** An empty first cell: the one above heads this row too. */
  readonly rows?: readonly (readonly SheetCell[])[];
  /** To be filled in at this point. */
  readonly boxes?: readonly SheetBox[];
  /** Begins a page of its own on paper. */
  readonly ownPage?: boolean;
  /** Room for a photograph: what it is of. */
  readonly photo?: string;
  /** Photographs there are: addresses relative to the sheet’s folder, with what they show. */
  readonly photos?: readonly { readonly address: string; readonly caption: string }[];
}

/** Words or a figure; `write`: a box to write in. `strong`: other than in the parent. */
export type SheetCell = string | { readonly write: true } | { readonly strong: string };

export const WRITE: SheetCell = { write: true };

/** A box with its value where that is known. */
export function boxFor(label: string, value: string | undefined): SheetBox {
  return value === undefined || value === '' ? label : { label, value };
}

/** Cautions, the same one never twice. */
export function onceEach(cautions: readonly Caution[]): readonly Caution[] {
  return [...new Map(cautions.map((caution) => [caution.key, caution])).values()];
}
