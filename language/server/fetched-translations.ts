/** Tables of translations fetched from beside the program, where there is no disk to read them from. */
import type { Translations } from '../wording/wording.js';
import type { InBrowserOptions } from './protocol.js';

/** A table that cannot be fetched leaves the language English; that is better than no server. */
export async function fetchedTranslations(language: string, options: unknown): Promise<Translations> {
  try {
    const { program } = options as InBrowserOptions;
    const answer = await fetch(`${program}/wording/${language}.json`);
    return answer.ok ? ((await answer.json()) as Translations) : {};
  } catch {
    return {};
  }
}
