import type { ClientCapabilities, Connection } from 'vscode-languageserver';
import type { Answers } from './answering.js';
import type { Session } from './session.js';

/** What a group of handlers works with. */
export interface Serving extends Answers {
  readonly connection: Connection;
  readonly session: Session;
  /** The version of a text open in the editor; null for one that is not. */
  readonly versionOf: (uri: string) => number | null;
  /** What the editor can do. */
  readonly client: ClientCapabilities;
  /** What the person wants to see beside the text; may change at any time. */
  readonly shown: { readonly lenses: boolean; readonly hints: boolean };
  /** Calls back whenever a text open in the editor is closed. */
  readonly closed: (listener: (uri: string) => void) => void;
}
