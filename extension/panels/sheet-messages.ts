/** Between the panel that shows a sheet and its page. */
import type { PrintedSheet, SheetKind } from '../../language/server/protocol.js';

export interface SheetSubject {
  readonly name: string;
  readonly sheet: SheetKind;
}

export interface SheetContent {
  /** Null: there is no recipe, build or order of that name. */
  readonly printed: PrintedSheet | null;
  readonly opensPages: boolean;
}

/** Open it where it can be printed. */
export interface SheetAction {
  readonly kind: 'print';
}
