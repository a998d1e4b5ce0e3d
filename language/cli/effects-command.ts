/** `bookmatch effects`: what each change did, as far as the builds can say. */
import { effectsOf } from '../reports/effects/effects-table.js';
import { writtenOut } from '../reports/effects/model-effects-table.js';
import { modelEffects } from '../recipes/builds/model-effects.js';
import { forJson } from './border.js';
import { effectsAsCsv } from './csv/effects-csv.js';
import { EXIT, type Io, WrongUse } from './io.js';
import { modelEffectsAsJson } from './json/model-effects-json.js';
import { noSuchName } from './meant-instrument.js';
import { Opener } from './open-shop.js';
import type { PlaceOptions } from './show-command.js';
import { effectsAsText } from './text/effects-text.js';
import { modelEffectsAsText } from './text/model-effects-text.js';
import { styleFor } from './text/style.js';

const ASKED = ['build', 'recipe', 'model'] as const;

export interface EffectsOptions extends Omit<PlaceOptions, 'format'> {
  readonly format: PlaceOptions['format'] | 'csv';
  /** Told of all its builds together instead of a build at a time. */
  readonly model?: string;
}

export async function effects(name: string | undefined, options: EffectsOptions, io: Io): Promise<number> {
  if (options.model !== undefined) return ofModel(options.model, name, options, io);
  if (options.format === 'csv')
    throw new WrongUse(io.wording.text('A table for a spreadsheet is made of a model: add --model.'));
  const shop = await new Opener(io).open(options.in);
  const found = io.busy(io.wording.text('Computing'), () => effectsOf(shop.workshop, name));
  if (!found) throw noSuchName(name ?? '', ASKED, shop, io);
  if (options.format === 'json') io.write(forJson({ effects: found }));
  else io.print(effectsAsText(found, io.wording, styleFor(io)));
  return EXIT.fine;
}

async function ofModel(model: string, name: string | undefined, options: EffectsOptions, io: Io): Promise<number> {
  if (name !== undefined) throw new WrongUse(io.wording.say`Give a name or --model, not both: ${name} and ${model}.`);
  const shop = await new Opener(io).open(options.in);
  const found = modelEffects(shop.workshop, model);
  if (!found) throw noSuchName(model, ['model'], shop, io);
  // The solver is asked for what the engine predicts while this is written.
  const busy = <T>(work: () => T) => io.busy(io.wording.text('Computing'), work);
  if (options.format === 'json') io.write(busy(() => modelEffectsAsJson(found)));
  else if (options.format === 'csv') io.write(busy(() => effectsAsCsv(writtenOut(shop.workshop, found))));
  else io.print(busy(() => modelEffectsAsText(writtenOut(shop.workshop, found), io.wording, styleFor(io))));
  return EXIT.fine;
}
