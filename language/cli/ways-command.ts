/** `bookmatch ways`: every single change that would get a recipe or a build to what is wished for. */
import type { Held } from '../recipes/instrument/instrument.js';
import { createParser, readFile } from '../recipes/shelf/reader.js';
import { waysTo } from '../recipes/ways/ways.js';
import { type Wish, wishIn } from '../recipes/ways/wish.js';
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
    const wish = readWish(shop, values, wished, io);
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

/** As an expectation is written, or as a step: `resonance.top: 170 Hz`, `top.sag: by 2 %`. */
function readWish({ workshop }: Shop, values: ReadonlyMap<string, Held>, wished: string, io: Io): Wish {
  const { say } = io.wording;
  const parser = createParser({ wording: io.wording });
  const evaluation = workshop.evaluateInFull(values);
  for (const word of ['expect', 'change']) {
    const facts = readFile('wish:', `recipe wish for wish { ${word} ${wished} }`, parser);
    const [entry] = facts.definitions;
    const problems = [...facts.problems, ...(entry?.definition.problems ?? [])];
    if (!entry || problems.length > 0) continue;
    const wish = wishIn(entry.definition, evaluation, (path) => workshop.catalogue.canonical(path));
    if (wish) return wish;
  }
  throw new WrongUse(
    say`${wished} is no wish that can be read. Write a computed quantity and what it should be: \`resonance.top: 170 Hz\`, \`top.mass: below 160 g\` or \`top.sag: by 2 %\`.`,
  );
}
