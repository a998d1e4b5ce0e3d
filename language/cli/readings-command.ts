/** `bookmatch readings`: a table of old readings as builds, with questions for what is unclear. */
import { resolve } from 'node:path';
import { oldReadings } from './csv/old-readings.js';
import { EXIT, type Io, WrongUse } from './io.js';
import { Opener } from './open-shop.js';

export async function readings(file: string, options: { readonly in: string }, io: Io): Promise<number> {
  const shop = await new Opener(io).open(options.in);
  const read = await io.files.read(resolve(io.cwd, file));
  if ('trouble' in read) throw new WrongUse(io.wording.say`${file} cannot be read.`);
  const knows = (recipe: string) => shop.shelf.find('recipe', recipe) !== undefined;
  const { text, questions } = oldReadings(read.text, { catalogue: shop.workshop.catalogue, knows }, io.wording);
  for (const question of questions) io.complain(`${question}\n`);
  io.print(text);
  return questions.length > 0 ? EXIT.findings : EXIT.fine;
}
