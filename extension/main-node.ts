/** The extension where VS Code has Node: the desktop, and the host of a remote folder. */
import type { ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { start } from './extension.js';
import { clientOptions } from './language-client.js';
import { SERVER_FLAGS } from './server-flags.js';

export function activate(context: ExtensionContext): void {
  const module = context.asAbsolutePath('dist/server.cjs');
  const server = {
    run: { module, transport: TransportKind.ipc, options: { execArgv: [...SERVER_FLAGS] } },
    debug: {
      module,
      transport: TransportKind.ipc,
      options: { execArgv: [...SERVER_FLAGS, '--nolazy', '--inspect=6009'] },
    },
  };
  start(context, new LanguageClient('bookmatch', 'Bookmatch', server, clientOptions(context)));
}
