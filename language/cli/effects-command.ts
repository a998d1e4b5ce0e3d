/** `bookmatch effects`: what each change did, as far as the builds can say. */
import { effectsOf } from '../editing/effects-table.js';
import { EXIT, type Io } from './io.js';
import { asJson } from './json/findings.js';
import { noSuchName } from './names.js';
import { Opener } from './open-shop.js';
import type { PlaceOptions } from './show-command.js';
import { effectsAsText } from './text/effects.js';
import { styleFor } from './text/style.js';

const ASKED = ['build', 'recipe', 'model'] as const;

export async function effects(name: string | undefined, options: PlaceOptions, io: Io): Promise<number> {
  const shop = await new Opener(io).open(options.in);
  const found = io.busy(io.wording.text('Computing'), () => effectsOf(shop.workshop, name));
  if (!found) throw noSuchName(name ?? '', ASKED, shop, io);
  io.write(options.format === 'json' ? asJson({ effects: found }) : effectsAsText(found, io.wording, styleFor(io)));
  return EXIT.fine;
}
