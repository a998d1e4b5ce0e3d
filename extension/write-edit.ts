import { inMessage } from '../language/server/protocol.js';
import { l10n, window, workspace } from 'vscode';
import type { WorkspaceEdit } from 'vscode-languageserver-protocol';
import type { LanguageClient } from './language-client.js';

/**
 * Writes what the server worked out, as one step that can be undone; the one way in which a command of ours changes recipes. A
 * text that has changed since the server read it is left alone: the places of the edit would be others. Says so, or `refused`
 * when there is no edit or VS Code does not take it. Answers whether it is written.
 */
export async function writeEdit(
  client: Pick<LanguageClient, 'protocol2CodeConverter'>,
  edit: WorkspaceEdit | undefined,
  refused: string,
): Promise<boolean> {
  const stale = edit && changedSince(edit);
  if (stale !== undefined) {
    void window.showWarningMessage(
      inMessage(l10n.t('{0} has changed meanwhile: nothing was written. Ask once more.', stale)),
    );
    return false;
  }
  const converted = edit && (await client.protocol2CodeConverter.asWorkspaceEdit(edit));
  const isWritten = converted !== undefined && (await workspace.applyEdit(converted));
  if (!isWritten) void window.showWarningMessage(inMessage(refused));
  return isWritten;
}

/** The name of a text that is no longer the one an edit was made for. The library looks only at edits the server sends by itself. */
function changedSince({ documentChanges = [] }: WorkspaceEdit): string | undefined {
  for (const change of documentChanges) {
    if (!('textDocument' in change)) continue;
    const { uri, version } = change.textDocument;
    const open = workspace.textDocuments.find((each) => isSameAddress(each.uri.toString(), uri));
    // Without a version the server had it from the disk.
    const isOther = version === null ? open?.isDirty === true : open?.version !== version;
    if (isOther) return workspace.asRelativePath(open?.uri.path ?? decodeURIComponent(uri));
  }
  return undefined;
}

/** Two writers of addresses differ in what they escape. */
function isSameAddress(a: string, b: string): boolean {
  return decodeURIComponent(a) === decodeURIComponent(b);
}
