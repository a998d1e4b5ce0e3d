import { type ExtensionContext, FileType, UIKind, Uri, env, l10n, window, workspace } from 'vscode';
import { saveWhereChosen } from '../save-where-chosen.js';

/** Whether a file written here can be opened in the person's browser: not from another machine, nor from within a browser. */
export function opensPages(): boolean {
  return env.uiKind === UIKind.Desktop && env.remoteName === undefined;
}

/**
 * Write a document that needs nothing but itself where the editor keeps such things, and open it in the browser. Whatever
 * comes in the way is told, and a copy can be kept elsewhere: not every browser may read the editor's own folder, and none
 * says so to us.
 */
export async function openPrintable(context: ExtensionContext, name: string, html: string): Promise<void> {
  const folder = folderIn(context);
  const page = { file: `${name.replace(/[^\p{L}\p{N}-]+/gu, '-')}.html`, bytes: new TextEncoder().encode(html) };
  await removeOldPrintables(context);
  try {
    const file = Uri.joinPath(folder, page.file);
    await workspace.fs.createDirectory(folder);
    await workspace.fs.writeFile(file, page.bytes);
    if (!(await env.openExternal(file))) throw new Error('Nothing opens it.');
    tell(
      window.showInformationMessage,
      l10n.t('The page opens in your browser, to be printed there. If it does not, save a copy and open that.'),
      page,
    );
  } catch (error) {
    console.error(error);
    tell(
      window.showErrorMessage,
      l10n.t('The page cannot be opened in your browser. Save a copy, and open that to print it.'),
      page,
    );
  }
}

/** ms: long enough to load a page again that is still open in the browser. */
const KEPT = 24 * 60 * 60 * 1000;

/** What was agreed with a client is not to lie about: pages of the day before are taken away. */
export async function removeOldPrintables(context: ExtensionContext, now: number = Date.now()): Promise<void> {
  const folder = folderIn(context);
  try {
    for (const [name, type] of await workspace.fs.readDirectory(folder)) {
      const file = Uri.joinPath(folder, name);
      if (type !== FileType.File || !name.endsWith('.html')) continue;
      const { mtime } = await workspace.fs.stat(file);
      if (now - mtime > KEPT) await workspace.fs.delete(file);
    }
  } catch {
    // Nothing was printed yet, or another window is taking them away.
  }
}

function folderIn({ globalStorageUri }: ExtensionContext): Uri {
  return Uri.joinPath(globalStorageUri, 'print');
}

interface Page {
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** Nobody waits for the answer. */
function tell(show: (message: string, button: string) => Thenable<string | undefined>, message: string, page: Page) {
  const save = l10n.t('Save a Copy …');
  show(message, save).then(
    (answer) => (answer === save ? saveWhereChosen(page.file, { HTML: ['html'] }, page.bytes) : undefined),
    () => undefined,
  );
}
