/** The extension where VS Code runs in the browser alone: the server is a worker beside it. */
import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { GetSolverAddress } from '../language/server/protocol.js';
import { start } from './extension.js';
import { clientOptions } from './language-client.js';

export function activate(context: ExtensionContext): void {
  const addressOf = (file: string) => Uri.joinPath(context.extensionUri, 'dist/web', file).toString(true);
  const worker = new Worker(addressOf('server.js'), { name: 'Bookmatch' });
  const client = new LanguageClient('bookmatch', 'Bookmatch', worker, clientOptions(context));
  context.subscriptions.push(client.onRequest(GetSolverAddress, () => addressOf('solver.js')));
  start(context, client);
}
