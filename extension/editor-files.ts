import { Disposable, FileType, Uri, workspace } from 'vscode';
import { ListFiles, ReadFile } from '../language/server/protocol.js';
import type { LanguageClient } from './language-client.js';

/**
 * Lets the server read recipes through VS Code, which knows folders that are on no disk: a repository opened in the
 * browser, an archive, a remote shelf.
 */
export function serveEditorFiles(client: LanguageClient): Disposable {
  return Disposable.from(
    client.onRequest(ListFiles, async ({ folders }) => {
      const found = await Promise.all(folders.map((folder) => recipesIn(Uri.parse(folder))));
      return found.flat().map((uri) => client.code2ProtocolConverter.asUri(uri));
    }),
    client.onRequest(ReadFile, async ({ uri }) => {
      try {
        return { text: new TextDecoder().decode(await workspace.fs.readFile(Uri.parse(uri))) };
      } catch {
        return null; // gone, or not to be read: the server says what follows
      }
    }),
  );
}

/** The recipe files in a folder. Hidden folders and installed packages are not looked into. */
export async function recipesIn(folder: Uri): Promise<readonly Uri[]> {
  const entries = await workspace.fs.readDirectory(folder).then(
    (found) => found,
    () => [],
  );
  const found = await Promise.all(
    entries.map(async ([name, type]) => {
      const uri = Uri.joinPath(folder, name);
      if (type & FileType.File) return name.endsWith('.bookmatch') ? [uri] : [];
      const skipped = name.startsWith('.') || name === 'node_modules' || type & FileType.SymbolicLink;
      return type & FileType.Directory && !skipped ? recipesIn(uri) : [];
    }),
  );
  return found.flat();
}
