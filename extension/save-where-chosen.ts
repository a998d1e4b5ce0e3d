import { Uri, l10n, window, workspace } from 'vscode';

/** A file made here, kept where the person says; VS Code asks before one takes the place of another. Answers where, if anywhere. */
export async function saveWhereChosen(
  file: string,
  filters: Readonly<Record<string, string[]>>,
  bytes: Uint8Array,
): Promise<Uri | undefined> {
  const folder = workspace.workspaceFolders?.[0]?.uri;
  const target = await window.showSaveDialog({
    ...(folder ? { defaultUri: Uri.joinPath(folder, file) } : {}),
    filters,
  });
  if (!target) return undefined;
  try {
    await workspace.fs.writeFile(target, bytes);
    return target;
  } catch (error) {
    console.error(error);
    void window.showErrorMessage(l10n.t('{0} cannot be written there. Choose another place.', file));
    return undefined;
  }
}
