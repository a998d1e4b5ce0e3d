/** `bookmatch show`: everything about one recipe, build, model, wood set, string set or species. */
import { type Io, EXIT } from './io.js';
import { shownAsJson } from './json/show-json.js';
import { noSuchName } from './meant-instrument.js';
import { Opener } from './open-shop.js';
import { SHOWN_KINDS, shownOf } from './shown.js';
import { shownAsText } from './text/show-text.js';
import { styleFor } from './text/style.js';

export interface PlaceOptions {
  readonly format: 'text' | 'json';
  readonly in: string;
}

export async function show(name: string, options: PlaceOptions, io: Io): Promise<number> {
  const shop = await new Opener(io).open(options.in);
  const shown = io.busy(io.wording.text('Computing'), () => shownOf(shop, name));
  if (!shown) throw noSuchName(name, SHOWN_KINDS, shop, io);
  if (options.format === 'json') io.write(shownAsJson(shown));
  else io.print(shownAsText(shown, styleFor(io)));
  return EXIT.fine;
}
