import { type ExtensionContext, UIKind, Uri, env, workspace } from 'vscode';

/** Whether a file written here can be opened in the person's browser: not from another machine, nor from within a browser. */
export function opensPages(): boolean {
  return env.uiKind === UIKind.Desktop && env.remoteName === undefined;
}

/** Write a document that needs nothing but itself where the editor keeps such things, and open it in the browser. */
export async function openPrintable({ globalStorageUri }: ExtensionContext, name: string, html: string): Promise<void> {
  const folder = Uri.joinPath(globalStorageUri, 'print');
  await workspace.fs.createDirectory(folder);
  const file = Uri.joinPath(folder, `${name.replace(/[^\p{L}\p{N}-]+/gu, '-')}.html`);
  await workspace.fs.writeFile(file, new TextEncoder().encode(html));
  await env.openExternal(file);
}
