/** Recipe files on disk, as the command line asks for them. */
import { type FSWatcher, watch } from 'node:fs';
import { stat } from 'node:fs/promises';
import { writeNewFile } from '../disk/new-file.js';
import { readRecipeFile, type StoredText } from '../disk/read-file.js';
import { ENDING, type FoundFiles, recipeFilesIn } from '../disk/recipe-files.js';
import { replaceFile } from '../disk/replace-file.js';
import type { Trouble } from '../disk/troubles.js';
import { BYTE_ORDER_MARK } from '../recipes/shelf/file-text.js';

export { ENDING };

export interface Files {
  kindOf(path: string): Promise<'folder' | 'file' | 'nothing'>;
  /** Every recipe file in a folder and below, and what is named like one and cannot be. */
  find(folder: string): Promise<FoundFiles>;
  /** The text of a file, or one plain clause saying why it cannot be read. */
  read(path: string): Promise<StoredText | Trouble>;
  /** Puts a text in place of what was read; answers one plain clause when it could not, and nothing is touched then. */
  replace(path: string, read: StoredText, text: string): Promise<string | undefined>;
  /** Writes a file that is not there yet; answers one plain clause when it could not, and nothing is there then. */
  create(path: string, bytes: Uint8Array): Promise<string | undefined>;
  /**
   * Calls back after recipe files have changed, from now on until `until` or until the process is asked to stop. Rejects when the
   * system will not watch them.
   */
  watch(folders: readonly string[], changed: () => void, until?: AbortSignal): Promise<void>;
}

export const DISK: Files = {
  async kindOf(path) {
    const found = await stat(path).catch(() => undefined);
    if (!found) return 'nothing';
    return found.isDirectory() ? 'folder' : 'file';
  },

  find: recipeFilesIn,

  read: readRecipeFile,

  replace(path, { bytes, mark }, text) {
    return replaceFile(path, bytes, Buffer.from(mark ? BYTE_ORDER_MARK + text : text));
  },

  create: (path, bytes) => writeNewFile(path, bytes),

  watch(folders, changed, until) {
    return new Promise((resolve, reject) => {
      let waiting: NodeJS.Timeout | undefined;
      const soon = (_: string, name: string | null) => {
        if (name !== null && !name.endsWith(ENDING)) return;
        clearTimeout(waiting);
        // An editor saves in several steps; one look after the last of them is enough.
        waiting = setTimeout(changed, 150);
      };
      const watchers: FSWatcher[] = [];
      const end = (error?: Error) => {
        for (const watcher of watchers) watcher.close();
        clearTimeout(waiting);
        if (error) reject(error);
        else resolve();
      };
      try {
        for (const folder of folders) {
          const watcher = watch(folder, { recursive: true }, soon);
          watchers.push(watcher.on('error', end));
        }
      } catch (error) {
        end(error as Error);
      }
      until?.addEventListener('abort', () => {
        end();
      });
      process.once('SIGINT', () => {
        end();
      });
      // Whoever read along is gone (`… | head`).
      process.stdout.once('error', () => {
        end();
      });
    });
  },
};
