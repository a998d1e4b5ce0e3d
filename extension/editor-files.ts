import { Disposable, FileSystemError, FileType, Uri, workspace } from 'vscode';
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
    client.onRequest(ReadFile, async ({ uri, atMost }) => {
      const file = Uri.parse(uri);
      try {
        if ((await workspace.fs.stat(file)).size > atMost) return { unread: 'too-large' };
        const bytes = await workspace.fs.readFile(file);
        // Not every file system knows a size before it has read.
        return bytes.length > atMost ? { unread: 'too-large' } : { text: new TextDecoder().decode(bytes) };
      } catch (error) {
        const isGone = error instanceof FileSystemError && error.code === 'FileNotFound';
        return isGone ? null : { unread: 'unreadable' };
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
