/** What a person has set in the editor: asked for at the start, and again whenever something was set anew. */
import { type ClientCapabilities, type Connection, DidChangeConfigurationNotification } from 'vscode-languageserver';
import { guarded } from './answering.js';
import { type Grades, readSeverities, readTalk, SEVERITY_SECTION } from './severity-setting.js';

/** What a person has set: how findings are told, and what is shown beside the text. */
export interface Wishes {
  readonly grades: Grades;
  /** The line above each recipe. */
  readonly lenses: boolean;
  /** What a line comes to, behind it. */
  readonly hints: boolean;
}

const SECTIONS = [SEVERITY_SECTION, 'bookmatch.talk', 'bookmatch.lenses', 'bookmatch.hints'];

export interface Settings {
  /** To be awaited once the editor has been told that the server is there. */
  readonly read: () => Promise<void>;
}

/** `changed` is called with what is set, also when nothing is. An editor that has no settings is not asked. */
export function settingsOf(
  connection: Connection,
  client: ClientCapabilities,
  changed: (wishes: Wishes) => void,
): Settings {
  let asked = 0;
  const ask = async () => {
    if (client.workspace?.configuration !== true) return;
    const turn = ++asked;
    const set: readonly unknown[] = await connection.workspace.getConfiguration(
      SECTIONS.map((section) => ({ section })),
    );
    const [severity, talk, lenses, hints] = set;
    // An answer overtaken by a later question is out of date.
    if (turn !== asked) return;
    changed({
      grades: { severities: readSeverities(severity), talk: readTalk(talk) },
      lenses: lenses !== false,
      hints: hints !== false,
    });
  };
  const asking = guarded<undefined>(connection, ask);
  connection.onDidChangeConfiguration(() => void asking(undefined));
  return {
    read: async () => {
      if (client.workspace?.didChangeConfiguration?.dynamicRegistration === true) {
        await connection.client.register(DidChangeConfigurationNotification.type, { section: 'bookmatch' });
      }
      await asking(undefined);
    },
  };
}
