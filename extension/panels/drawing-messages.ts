/** Between the drawing panel and its page. */
import type { Drawing } from '../../language/server/protocol.js';
import type { Words } from './messages.js';

export interface DrawingSubject {
  readonly name: string;
}

/** Null: no instrument of that name. */
export type DrawingContent = Drawing | null;

/** Go to the line where a part is written. */
export interface DrawingAction {
  readonly kind: 'go-to';
  readonly path: string;
}

export type DrawingWords = Words<'gone'>;
