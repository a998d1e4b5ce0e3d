/** Recipe files on disk. Hidden folders and installed packages are not looked into. */
import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { textOf } from '../recipes/file-text.js';
import type { FolderReader } from './folder.js';

const ENDING = '.bookmatch';

export const diskFolder: FolderReader = {
  async list(folders) {
    const found = await Promise.all(
      folders.filter((uri) => uri.startsWith('file:')).map((uri) => filesIn(fileURLToPath(uri))),
    );
    return found.flat().map((path) => pathToFileURL(path).href);
  },

  async read(uri) {
    try {
      return textOf(await readFile(fileURLToPath(uri))).text;
    } catch {
      return undefined; // gone, or not to be read: the caller says what follows
    }
  },
};

async function filesIn(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  const found = await Promise.all(
    entries.map(async (entry) => {
      const path = join(folder, entry.name);
      if (entry.isFile()) return entry.name.endsWith(ENDING) ? [path] : [];
      const skipped = entry.name.startsWith('.') || entry.name === 'node_modules';
      return entry.isDirectory() && !skipped ? filesIn(path) : [];
    }),
  );
  return found.flat();
}
