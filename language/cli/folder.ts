/** Recipe files on disk, for the command line: the one place that reads them. */
import { type Dirent, watch } from 'node:fs';
import { readdir, readFile, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type FileText, textOf } from '../recipes/file-text.js';
import { english } from '../wording/wording.js';

export const ENDING = '.bookmatch';

export interface Files {
  kindOf(path: string): Promise<'folder' | 'file' | 'nothing'>;
  /** Paths of every recipe file in a folder and below, sorted. Hidden folders and installed packages are left out. */
  list(folder: string): Promise<readonly string[]>;
  /** The text of a file, or one plain clause saying why it cannot be read. */
  read(path: string): Promise<FileText | { readonly trouble: string }>;
  /** Puts a text in place of a file's; answers one plain clause when it could not. */
  write(path: string, text: string): Promise<string | undefined>;
  /** Calls back after recipe files have changed, until the process is asked to stop. */
  watch(folders: readonly string[], changed: () => void): Promise<void>;
}

export const DISK: Files = {
  async kindOf(path) {
    const found = await stat(path).catch(() => undefined);
    if (!found) return 'nothing';
    return found.isDirectory() ? 'folder' : 'file';
  },

  async list(folder) {
    const entries = await readdir(folder, { withFileTypes: true }).catch((): Dirent[] => []);
    const found = await Promise.all(entries.map((entry) => pathsOf(entry, join(folder, entry.name))));
    return found.flat().sort();
  },

  async read(path) {
    try {
      return textOf(await readFile(path));
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? String(error.code) : '';
      return { trouble: TROUBLES.get(code) ?? english('it cannot be read') };
    }
  },

  async write(path, text) {
    try {
      await writeFile(path, text);
      return undefined;
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? String(error.code) : '';
      return code === 'ENOSPC' ? english('the disk is full') : english('it cannot be written to');
    }
  },

  watch(folders, changed) {
    return new Promise((resolve) => {
      let waiting: NodeJS.Timeout | undefined;
      const soon = (_: string, name: string | null) => {
        if (name !== null && !name.endsWith(ENDING)) return;
        clearTimeout(waiting);
        // An editor saves in several steps; one look after the last of them is enough.
        waiting = setTimeout(changed, 150);
      };
      const watchers = folders.map((folder) => watch(folder, { recursive: true }, soon));
      process.once('SIGINT', () => {
        for (const watcher of watchers) watcher.close();
        clearTimeout(waiting);
        resolve();
      });
    });
  },
};

const TROUBLES: ReadonlyMap<string, string> = new Map(
  Object.entries<string>({
    EACCES: english('you are not allowed to read it'),
    EPERM: english('you are not allowed to read it'),
    ENOENT: english('it is no longer there'),
    EISDIR: english('it is a folder'),
    ERR_STRING_TOO_LONG: english('it is too large'),
    ERR_FS_FILE_TOO_LARGE: english('it is too large'),
  }),
);

async function pathsOf(entry: Dirent, path: string): Promise<readonly string[]> {
  const skipped = entry.name.startsWith('.') || entry.name === 'node_modules';
  if (entry.isDirectory()) return skipped ? [] : DISK.list(path);
  return entry.isFile() && entry.name.endsWith(ENDING) ? [path] : [];
}
