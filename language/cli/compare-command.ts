/** `bookmatch compare`: two recipes, builds or models side by side. */
import { sideOf } from '../recipes/instrument/sides.js';
import { EXIT, type Io } from './io.js';
import { comparisonAsJson } from './json/comparison-json.js';
import { noSuchName } from './meant-instrument.js';
import { Opener } from './open-shop.js';
import type { PlaceOptions } from './show-command.js';
import { comparisonAsText } from './text/comparison-text.js';
import { styleFor } from './text/style.js';

const COMPARED = ['recipe', 'build', 'model'] as const;

export interface CompareOptions extends PlaceOptions {
  /** What is too small to tell as well. */
  readonly all?: boolean;
}

export async function compare(a: string, b: string, options: CompareOptions, io: Io): Promise<number> {
  const shop = await new Opener(io).open(options.in);
  const comparison = io.busy(io.wording.text('Computing both'), () => shop.workshop.compare(a, b));
  if (!comparison) throw noSuchName(sideOf(shop.workshop, a) ? b : a, COMPARED, shop, io);
  if (options.format === 'json') io.write(comparisonAsJson(comparison));
  else io.print(comparisonAsText(comparison, styleFor(io), { all: options.all }));
  return EXIT.fine;
}
