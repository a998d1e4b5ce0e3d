/** Recipe files on disk, by URI. */
import { fileURLToPath, pathToFileURL } from 'node:url';
import { readRecipeFile } from '../disk/read-file.js';
import { recipeFilesIn } from '../disk/recipe-files.js';
import type { FolderReader } from './recipe-folder.js';

export const diskFolder: FolderReader = {
  async list(folders) {
    const paths = folders.flatMap((uri) => pathOf(uri) ?? []);
    const found = await Promise.all(paths.map(recipeFilesIn));
    return found.flatMap(({ files }) => files).map((path) => pathToFileURL(path).href);
  },

  async read(uri) {
    const path = pathOf(uri);
    const read = path === undefined ? undefined : await readRecipeFile(path);
    // Gone, or not to be read: the caller says what follows.
    return read && 'text' in read ? read.text : undefined;
  },
};

/** Not every address names a place on this machine: another host, a slash within a name. */
function pathOf(uri: string): string | undefined {
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}
