/** What a person has set in the editor: asked for at the start, and again whenever something was set anew. */
import { type ClientCapabilities, type Connection, DidChangeConfigurationNotification } from 'vscode-languageserver';
import { guarded } from './answering.js';
import { readSeverities, SEVERITY_SECTION, type Severities } from './severity-setting.js';

export interface Settings {
  /** To be awaited once the editor has been told that the server is there. */
  readonly read: () => Promise<void>;
}

/** `changed` is called with what is set, also when nothing is. An editor that has no settings is not asked. */
export function settingsOf(
  connection: Connection,
  client: ClientCapabilities,
  changed: (severities: Severities) => void,
): Settings {
  let asked = 0;
  const ask = async () => {
    if (client.workspace?.configuration !== true) return;
    const turn = ++asked;
    const setting: unknown = await connection.workspace.getConfiguration(SEVERITY_SECTION);
    // An answer overtaken by a later question is out of date.
    if (turn === asked) changed(readSeverities(setting));
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
