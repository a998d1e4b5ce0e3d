/** Between the panel "What each change did" and its page. */
import type { ModelEffectsTable } from '../../language/server/protocol.js';

export interface EffectsSubject {
  readonly model: string;
}

export interface EffectsContent {
  /** Null: the model is not in the open folders. */
  readonly table: ModelEffectsTable | null;
  /** The editor can open a page in the browser; otherwise the page is handed over as a file. */
  readonly opensPages: boolean;
}

/** Open this document, which needs nothing but itself, where it can be printed. */
export interface EffectsAction {
  readonly kind: 'print';
  readonly html: string;
}
