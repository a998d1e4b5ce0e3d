/** `bookmatch ways`: every single change that would get a recipe or a build to what is wished for. */
import { readWish } from '../reports/ways/read-wish.js';
import type { Held } from '../recipes/instrument/instrument.js';
import { createParser } from '../recipes/shelf/reader.js';
import { waysTo } from '../recipes/ways/ways.js';
import type { Wish } from '../recipes/ways/wish.js';
import { EXIT, type Io, WrongUse } from './io.js';
import { waysAsJson } from './json/ways-json.js';
import { noSuchName } from './meant-instrument.js';
import { Opener, type Shop } from './open-shop.js';
import type { PlaceOptions } from './show-command.js';
import { styleFor } from './text/style.js';
import { waysAsText } from './text/ways-text.js';

export async function ways(name: string, wished: string, options: PlaceOptions, io: Io): Promise<number> {
  const shop = await new Opener(io).open(options.in);
  const values = valuesOf(shop, name);
  if (!values) throw noSuchName(name, ['recipe', 'build'], shop, io);
  const found = io.busy(io.wording.text('Computing'), () => {
    const wish = wishFor(shop, values, wished, io);
    return waysTo(shop.workshop, values, wish, heldIn(shop, name));
  });
  if (found.now === undefined) {
    throw new WrongUse(io.wording.say`${found.wish.quantity} cannot be computed for ${name} with what is known of it.`);
  }
  if (options.format === 'json') io.write(waysAsJson(found));
  else io.print(waysAsText(name, found, io.wording, styleFor(io)));
  return EXIT.fine;
}

function valuesOf({ workshop, shelf }: Shop, name: string): ReadonlyMap<string, Held> | undefined {
  if (shelf.find('recipe', name)) return workshop.instrument(name)?.values;
  return workshop.build(name)?.values;
}

/** What a build holds has been made; only a recipe solves again. */
function heldIn({ workshop }: Shop, name: string): readonly string[] {
  return workshop.instrument(name)?.holds.map(({ quantity }) => quantity) ?? [];
}

function wishFor({ workshop }: Shop, values: ReadonlyMap<string, Held>, wished: string, io: Io): Wish {
  const wish = readWish(workshop, createParser({ wording: io.wording }), values, wished);
  if (wish) return wish;
  throw new WrongUse(
    io.wording
      .say`${wished} is no wish that can be read. Write a computed quantity and what it should be: \`resonance.top: 170 Hz\`, \`top.mass: below 160 g\` or \`top.sag: by 2 %\`.`,
  );
}
