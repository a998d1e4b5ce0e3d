/** `bookmatch plan`: the plan of an instrument, or templates of its parts, at full size. */
import { resolve } from 'node:path';
import { pdfWords } from '../reports/plan/write/pdf-words.js';
import { beside, type Picture } from '../reports/plan/write/picture.js';
import { svgOf } from '../reports/plan/write/svg.js';
import type { Paper } from '../reports/plan/write/tiles.js';
import { PLAN_PARTS, picturesOf } from '../reports/plan/pictures-of.js';
import { didYouMean } from '../quantities/suggest.js';
import { sentences } from '../wording/wording.js';
import { finished } from './border.js';
import { EXIT, type Io, WrongUse } from './io.js';
import { noSuchName } from './meant-instrument.js';
import { Opener, shown } from './open-shop.js';

export const PLAN_FORMATS = ['svg', 'dxf', 'pdf'] as const;

export interface PlanOptions {
  readonly part: string;
  readonly format: (typeof PLAN_FORMATS)[number];
  readonly paper: Paper;
  readonly output?: string;
  readonly in: string;
}

const DRAWN = ['recipe', 'build', 'model'] as const;

export async function plan(name: string, options: PlanOptions, io: Io): Promise<number> {
  const { say } = io.wording;
  const keys = partsIn(options.part, io);
  const shop = await new Opener(io).open(options.in);
  const made = io.busy(io.wording.text('Drawing'), () => picturesOf(shop.workshop, name, keys));
  if (!made) throw noSuchName(name, DRAWN, shop, io);
  for (const { part, paths, trouble } of made.missing) {
    const why = trouble ?? say`it needs ${paths.join(', ')}`;
    io.complain(`${say`${part} is not drawn: ${why}.`}\n`);
  }
  if (made.pictures.length === 0) throw new WrongUse(say`Nothing of ${name} is known well enough to be drawn.`);
  const settings = shop.workshop.settings();
  const bytes = await written(made.pictures, name, settings.title ?? '', options, io);
  // A PDF is no text for a terminal.
  const output = options.output ?? (options.format === 'pdf' ? `${name}-${keys.join('-')}.pdf` : undefined);
  if (output === undefined) io.write(finished(new TextDecoder().decode(bytes)));
  else await save(output, bytes, io);
  return EXIT.fine;
}

function partsIn(asked: string, io: Io): readonly string[] {
  const { say, or } = io.wording;
  const keys = asked.split(',').map((each) => each.trim());
  const stranger = keys.find((key) => !PLAN_PARTS.includes(key));
  if (stranger === undefined) return keys;
  const near = didYouMean(stranger, PLAN_PARTS);
  const hint = near.length > 0 ? say`Did you mean ${or(near)}?` : say`There are ${PLAN_PARTS.join(', ')}.`;
  throw new WrongUse(sentences(say`There is no part ${stranger} to draw.`, hint));
}

async function written(
  pictures: readonly Picture[],
  name: string,
  shop: string,
  { format, paper }: PlanOptions,
  { wording }: Io,
): Promise<Uint8Array> {
  // The libraries for these two formats are half of what the command line weighs: no other command begins with them.
  if (format === 'pdf') {
    const { pdfOf } = await import('../reports/plan/write/pdf.js');
    return pdfOf(pictures, paper, pdfWords(name, shop, wording), new Date());
  }
  const one = pictures.length === 1 ? pictures[0]! : beside(pictures, name, name);
  if (format === 'svg') return new TextEncoder().encode(svgOf(one, { language: wording.language }));
  const { dxfOf } = await import('../reports/plan/write/dxf.js');
  return new TextEncoder().encode(dxfOf(one));
}

async function save(output: string, bytes: Uint8Array, io: Io): Promise<void> {
  const { say, text } = io.wording;
  const path = resolve(io.cwd, output);
  const trouble = await io.files.create(path, bytes);
  if (trouble !== undefined) throw new WrongUse(say`${shown(path, io)} was not written: ${text(trouble)}.`);
  io.complain(`${say`Written: ${shown(path, io)}.`}\n`);
}
