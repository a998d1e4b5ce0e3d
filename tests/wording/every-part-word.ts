/** The words parts and values are told by on paper: what `reports/part-words.ts` really asks for, of the whole catalogue. */
import { catalogue } from '../../language/catalogue/catalogue.js';
import { BRACE_ROLES } from '../../language/catalogue/brace-roles.js';
import { nameInWords, partInWords, valueInWords } from '../../language/reports/part-words.js';
import { READ_AT } from '../../language/sheets/bench-readings.js';
import { Wording, type Translations } from '../../language/wording/wording.js';

/** Words asked for in a language whose table is given. A whole that is put together of its parts needs none of its own. */
export function partWords(table: Translations): readonly string[] {
  const asked = new Set<string>();
  class Listening extends Wording {
    override readonly text = (english: string): string => {
      asked.add(english);
      return table[english] ?? english;
    };
  }
  const wording = new Listening({}, 'de');
  const partOf = (path: string) => catalogue.partOf(path);
  const members = BRACE_ROLES.flatMap(({ root, names }) => names.map((name) => `${root}.${name}`));
  for (const member of members) partInWords(member, wording);
  for (const property of catalogue.all) {
    if (property.where.includes('order')) for (const word of property.choices ?? []) nameInWords(word, wording);
    if (!property.where.includes('recipe')) continue;
    const [first = ''] = members.filter((member) => member.startsWith(property.path.split('.*')[0]!));
    valueInWords(property.path.replace(/^(?:back-)?bracing\.\*/, first).replace('*', '1'), partOf, wording);
    for (const word of property.choices ?? []) nameInWords(word, wording);
  }
  for (const path of [...READ_AT.values()].flat()) valueInWords(path, partOf, wording);
  return [...asked].filter((word) => word in table || !(word.includes(' ') && /^[A-Z]/.test(word)));
}
