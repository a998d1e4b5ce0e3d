/** The extension where VS Code runs in the browser alone: the server is a worker beside it. */
import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { GetSolverAddress, type InBrowserOptions } from '../language/server/protocol.js';
import { start } from './extension.js';
import { clientOptions } from './language-client.js';

export function activate(context: ExtensionContext): void {
  const program = Uri.joinPath(context.extensionUri, 'dist').toString(true);
  const worker = new Worker(`${program}/web/server.js`, { name: 'Bookmatch' });
  const initializationOptions = { program } satisfies InBrowserOptions;
  const options = { ...clientOptions(context), initializationOptions };
  const client = new LanguageClient('bookmatch', 'Bookmatch', worker, options);
  context.subscriptions.push(client.onRequest(GetSolverAddress, () => `${program}/web/solver.js`));
  start(context, client);
}
