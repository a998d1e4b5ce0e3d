/** `bookmatch show`: everything about one recipe, build, model, wood set, string set or species. */
import { type Io, EXIT, WrongUse } from './io.js';
import { shownAsJson } from './json/show-json.js';
import { noSuchName } from './meant-instrument.js';
import { Opener } from './open-shop.js';
import { type Shown, SHOWN_KINDS, shownOf } from './shown.js';
import { shownAsText } from './text/show-text.js';
import { shownInShort } from './text/show-short.js';
import { styleFor } from './text/style.js';

export interface PlaceOptions {
  readonly format: 'text' | 'json';
  readonly in: string;
}

export interface ShowOptions extends PlaceOptions {
  readonly all?: boolean;
}

export async function show(name: string, part: string | undefined, options: ShowOptions, io: Io): Promise<number> {
  const shop = await new Opener(io).open(options.in);
  const whole = io.busy(io.wording.text('Computing'), () => shownOf(shop, name));
  if (!whole) throw noSuchName(name, SHOWN_KINDS, shop, io);
  const shown = part === undefined ? whole : partOfShown(whole, part, io);
  if (options.format === 'json') io.write(shownAsJson(shown));
  else if (options.all || part !== undefined) io.print(shownAsText(shown, styleFor(io)));
  else io.print(shownInShort(shown, styleFor(io)));
  return EXIT.fine;
}

/** Only what stands under one part; a part that is not there is answered with those that are. */
function partOfShown(shown: Shown, part: string, { wording: { say, or } }: Io): Shown {
  const isIn = ({ path }: { readonly path: string }) => path === part || path.startsWith(`${part}.`);
  const [values, derived] = [shown.values.filter(isIn), shown.derived.filter(isIn)];
  if (values.length > 0 || derived.length > 0) return { ...shown, values, derived };
  const parts = [...new Set([...shown.values, ...shown.derived].map(({ path }) => path.split('.')[0] ?? path))];
  const { name } = shown.definition;
  throw new WrongUse(say`${name.text} has nothing under ${part}. It has ${or(parts)}.`);
}
