/** The words that parts, properties and choices are told in on paper and in panels, as `part-words` looks them up. */
import { BRACE_ROLES } from '../../language/catalogue/brace-roles.js';
import { catalogue } from '../../language/catalogue/catalogue.js';
import { INSTRUMENT_QUANTITIES } from '../../language/recipes/derived/instrument-quantities.js';
import { nameInWords, valueInWords } from '../../language/reports/part-words.js';
import { Wording } from '../../language/wording/wording.js';

/** Every text that is looked up, found or not: a whole name first, then its words where the whole is in no table. */
export function partNamesLookedUp(): ReadonlySet<string> {
  const looked = new Recording();
  tellAll(looked);
  return looked.up;
}

/** Each name with what is said for it. */
export function tellAll(wording: Wording): readonly (readonly [string, string])[] {
  const paths = catalogue.all.filter(({ where }) => where.includes('recipe')).flatMap(({ path }) => filled(path));
  const computed = INSTRUMENT_QUANTITIES.flatMap(({ path }) => filled(path)).filter((path) => path.startsWith('mass.'));
  const words = catalogue.all
    .filter(({ where }) => where.includes('recipe'))
    .flatMap(({ choices, words }) => [...(choices ?? []), ...(words ?? [])]);
  return [
    ...[...paths, ...catalogue.parts.flatMap(({ path }) => filled(path)), ...computed].map((path) =>
      pair(
        path,
        valueInWords(path, (each) => catalogue.partOf(each), wording),
      ),
    ),
    ...words.map((word) => pair(word, nameInWords(word, wording))),
  ];
}

/** The members there may be: braces by their usual names, strings and frets by number. */
function filled(path: string): readonly string[] {
  if (!path.includes('*')) return [path];
  const root = path.slice(0, path.indexOf('.'));
  const names = BRACE_ROLES.filter((role) => role.root === root).flatMap(({ names }) => names);
  return (names.length > 0 ? names : ['1']).map((name) => path.replace('*', name));
}

function pair(name: string, said: string): readonly [string, string] {
  return [name, said];
}

class Recording extends Wording {
  readonly up = new Set<string>();

  override readonly text = (english: string): string => {
    this.up.add(english);
    return english;
  };

  constructor() {
    super({}, 'de');
  }
}
