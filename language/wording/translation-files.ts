/** Tables of translations as files beside the program, one for each language: `de.json`. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Translations } from './wording.js';

/** A table that cannot be read leaves the language English; that is better than no server. */
export function translationsIn(folder: string): (language: string) => Promise<Translations> {
  return async (language) => {
    try {
      return JSON.parse(await readFile(join(folder, `${language}.json`), 'utf8')) as Translations;
    } catch {
      return {};
    }
  };
}
