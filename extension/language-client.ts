import { type ExtensionContext, workspace } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { LIBRARY_SCHEME } from '../language/server/protocol.js';
import { ServerRestarts } from './server-restarts.js';

/** The client, of whichever kind this VS Code can run. */
export type LanguageClient = BaseLanguageClient;

/**
 * Documents the server is told about: those of the disk and of whatever else a folder was opened from. Resolved texts are
 * not among them: they would define every recipe twice; nor are older versions shown by source control.
 */
export function documents() {
  const opened = (workspace.workspaceFolders ?? []).map(({ uri }) => uri.scheme);
  return [...new Set(['file', 'untitled', LIBRARY_SCHEME, ...opened])].map((scheme) => ({
    scheme,
    language: 'bookmatch',
  }));
}

export function clientOptions(context: ExtensionContext): LanguageClientOptions {
  const files = workspace.createFileSystemWatcher('**/*.bookmatch');
  context.subscriptions.push(files);
  return { documentSelector: documents(), synchronize: { fileEvents: files }, errorHandler: new ServerRestarts() };
}
