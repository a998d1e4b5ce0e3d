import { type ExtensionContext, workspace } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { LIBRARY_SCHEME } from '../language/server/protocol.js';

/** Documents the server is told about. Resolved texts are not among them: they would define every recipe twice. */
export const DOCUMENTS = ['file', 'untitled', LIBRARY_SCHEME].map((scheme) => ({ scheme, language: 'bookmatch' }));

/** A client of the language server in `dist/server.cjs`, not yet started. */
export function languageClient(context: ExtensionContext): LanguageClient {
  const module = context.asAbsolutePath('dist/server.cjs');
  const files = workspace.createFileSystemWatcher('**/*.bookmatch');
  context.subscriptions.push(files);
  return new LanguageClient(
    'bookmatch',
    'Bookmatch',
    {
      run: { module, transport: TransportKind.ipc },
      debug: { module, transport: TransportKind.ipc, options: { execArgv: ['--nolazy', '--inspect=6009'] } },
    },
    { documentSelector: DOCUMENTS, synchronize: { fileEvents: files } },
  );
}
