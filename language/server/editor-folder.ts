/** Recipe files as the editor sees them, on a disk or not: it is asked for each by a request. */
import type { Connection } from 'vscode-languageserver';
import { MOST_BYTES, TOO_LARGE, UNREADABLE } from '../disk/troubles.js';
import type { FolderReader } from './recipe-folder.js';
import { ListFiles, ReadFile } from './protocol.js';

/** An editor that does not answer such requests has no files to give. */
export function editorFolder(connection: Pick<Connection, 'sendRequest'>): FolderReader {
  return {
    async list(folders) {
      if (folders.length === 0) return [];
      return connection.sendRequest(ListFiles, { folders }).catch(() => []);
    },

    async read(uri, leftOut) {
      const found = await connection.sendRequest(ReadFile, { uri, atMost: MOST_BYTES }).catch(() => null);
      if (!found || 'text' in found) return found?.text;
      leftOut(uri, found.unread === 'too-large' ? TOO_LARGE : UNREADABLE);
      return undefined;
    },
  };
}

/** What is on the disk is read from there, without a detour; the rest by way of the editor. */
export function eitherFolder(disk: FolderReader, editor: FolderReader): FolderReader {
  const isOnDisk = (uri: string) => uri.startsWith('file:');
  return {
    async list(folders, leftOut) {
      const [here, elsewhere] = await Promise.all([
        disk.list(folders.filter(isOnDisk), leftOut),
        editor.list(
          folders.filter((uri) => !isOnDisk(uri)),
          leftOut,
        ),
      ]);
      return [...here, ...elsewhere];
    },
    read: (uri, leftOut) => (isOnDisk(uri) ? disk : editor).read(uri, leftOut),
  };
}
