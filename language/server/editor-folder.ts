/** Recipe files as the editor sees them, on a disk or not: it is asked for each by a request. */
import type { Connection } from 'vscode-languageserver';
import type { FolderReader } from './recipe-folder.js';
import { ListFiles, ReadFile } from './protocol.js';

/** An editor that does not answer such requests has no files to give. */
export function editorFolder(connection: Pick<Connection, 'sendRequest'>): FolderReader {
  return {
    async list(folders) {
      if (folders.length === 0) return [];
      return connection.sendRequest(ListFiles, { folders }).catch(() => []);
    },

    async read(uri) {
      const found = await connection.sendRequest(ReadFile, { uri }).catch(() => null);
      return found?.text;
    },
  };
}

/** What is on the disk is read from there, without a detour; the rest by way of the editor. */
export function eitherFolder(disk: FolderReader, editor: FolderReader): FolderReader {
  const isOnDisk = (uri: string) => uri.startsWith('file:');
  return {
    async list(folders) {
      const [here, elsewhere] = await Promise.all([
        disk.list(folders.filter(isOnDisk)),
        editor.list(folders.filter((uri) => !isOnDisk(uri))),
      ]);
      return [...here, ...elsewhere];
    },
    read: (uri) => (isOnDisk(uri) ? disk : editor).read(uri),
  };
}
