/** `bookmatch sheet`: a sheet of a recipe, a build or an order, to print. */
import { sheetAsHtml } from '../sheets/html.js';
import type { PrintedKind } from '../sheets/sheet.js';
import { ordersSheet } from '../sheets/orders.js';
import { sheetOf } from '../sheets/sheets.js';
import { finished, forJson } from './border.js';
import { EXIT, type Io, WrongUse } from './io.js';
import { noSuchName } from './meant-instrument.js';
import { Opener } from './open-shop.js';

export const SHEET_FORMATS = ['html', 'json'] as const;

export interface SheetOptions {
  readonly kind: PrintedKind;
  readonly format: (typeof SHEET_FORMATS)[number];
  readonly in: string;
}

const PRINTED = ['recipe', 'build', 'order'] as const;

export async function sheet(name: string | undefined, options: SheetOptions, io: Io): Promise<number> {
  const { kind } = options;
  if (kind !== 'orders' && name === undefined)
    throw new WrongUse(io.wording.text('Say of which recipe, build or order.'));
  const shop = await new Opener(io).open(options.in);
  const made = io.busy(io.wording.text('Computing'), () =>
    kind === 'orders' ? ordersSheet(shop.workshop) : sheetOf(shop.workshop, name!, kind),
  );
  if (!made) throw noSuchName(name!, PRINTED, shop, io);
  io.write(options.format === 'json' ? forJson({ sheet: made }) : finished(sheetAsHtml(made)));
  return EXIT.fine;
}
