/** The translations as the build puts them together, and by area as they are kept. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Translations } from '../../language/wording/wording.js';

const GERMAN = 'language/wording/german';

export function translationsOf(language: string): Translations {
  if (language !== 'de') return {};
  return Object.fromEntries(Object.values(germanByArea()).flatMap((area) => Object.entries(area)));
}

export function germanByArea(): Readonly<Record<string, Translations>> {
  const areas = readdirSync(GERMAN).sort();
  return Object.fromEntries(
    areas.map((file) => [
      file.replace('.json', ''),
      JSON.parse(readFileSync(join(GERMAN, file), 'utf8')) as Translations,
    ]),
  );
}
