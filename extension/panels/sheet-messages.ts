/** Between the panel that shows a sheet and its page. */
import type { PrintedSheet, PrintedKind } from '../../language/server/protocol.js';

export interface SheetSubject {
  readonly name: string;
  readonly sheet: PrintedKind;
}

export interface SheetContent {
  /** Null: there is no recipe, build or order of that name. */
  readonly printed: PrintedSheet | null;
  readonly opensPages: boolean;
}

export type SheetAction =
  /** Open it where it can be printed. */
  | { readonly kind: 'print' }
  /** Another sheet of the same. */
  | { readonly kind: 'choose'; readonly sheet: PrintedKind };

export interface SheetChoice {
  readonly sheet: PrintedKind;
  readonly label: string;
  readonly detail: string;
}

/** The sheets there are, in words. */
export function sheetChoices(l10n: { readonly t: (english: string) => string }): readonly SheetChoice[] {
  return [
    { sheet: 'bench', label: l10n.t('Bench sheet'), detail: l10n.t('Targets and what to read, stage by stage') },
    { sheet: 'client', label: l10n.t('Client sheet'), detail: l10n.t('Woods, options and setup') },
    { sheet: 'care', label: l10n.t('Setup and care card'), detail: l10n.t('How it left the shop, what to keep it at') },
    { sheet: 'papers', label: l10n.t('Species and papers'), detail: l10n.t('Woods by part, as borders ask for them') },
    { sheet: 'orders', label: l10n.t('Open orders'), detail: l10n.t('All of the shop, by stage') },
  ];
}
