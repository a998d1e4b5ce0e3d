/** Recipe files on disk, by URI. */
import { fileURLToPath } from 'node:url';
import { URI } from 'vscode-uri';
import { readRecipeFile } from '../disk/read-file.js';
import { recipeFilesIn } from '../disk/recipe-files.js';
import { GONE } from '../disk/troubles.js';
import type { FolderReader } from './recipe-folder.js';

export const diskFolder: FolderReader = {
  async list(folders, leftOut) {
    const paths = folders.flatMap((uri) => pathOf(uri) ?? []);
    const found = await Promise.all(paths.map(recipeFilesIn));
    for (const { path, trouble } of found.flatMap((each) => each.leftOut)) leftOut(URI.file(path).toString(), trouble);
    // Written as VS Code writes them: by another spelling a file with a bracket in its name would be there twice.
    return found.flatMap(({ files }) => files).map((path) => URI.file(path).toString());
  },

  async read(uri, leftOut) {
    const path = pathOf(uri);
    const read = path === undefined ? undefined : await readRecipeFile(path);
    if (read === undefined || 'text' in read) return read?.text;
    if (read.trouble !== GONE) leftOut(uri, read.trouble);
    return undefined;
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
