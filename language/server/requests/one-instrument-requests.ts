/** Requests for what is listed of one instrument: its values, the count of its changes, its sheets, and what has one. */
import { changeCount } from '../../reports/change-count.js';
import { printablesOf } from '../../reports/printables.js';
import { modelEffectsTable } from '../../reports/effects/model-effects-table.js';
import { valuesOf } from '../../reports/values-list.js';
import { sheetAsHtml } from '../../sheets/html.js';
import { ordersSheet } from '../../sheets/orders.js';
import type { PrintedKind } from '../../sheets/sheet.js';
import { sheetOf } from '../../sheets/sheets.js';
import {
  type ChangeCount,
  GetChangeCount,
  GetModelEffects,
  type ModelEffectsTable,
  GetSheet,
  GetValues,
  ListPrintables,
  type PrintableEntry,
  type PrintedSheet,
  type ValuesList,
} from '../protocol.js';
import type { Serving } from '../serving.js';

export function serveOneInstrument({ connection, session, answerOrSay }: Serving): void {
  const { desk } = session;
  connection.onRequest(
    GetModelEffects,
    answerOrSay<{ readonly model: string }, ModelEffectsTable | null>(
      null,
      ({ model }) => modelEffectsTable(desk.workshop, model) ?? null,
    ),
  );
  connection.onRequest(
    GetValues,
    answerOrSay<{ readonly name: string }, ValuesList | null>(null, ({ name }) => valuesOf(desk, name) ?? null),
  );
  connection.onRequest(
    GetChangeCount,
    answerOrSay<{ readonly recipe: string }, ChangeCount | null>(
      null,
      ({ recipe }) => changeCount(desk, recipe) ?? null,
    ),
  );
  const printables = answerOrSay<undefined, readonly PrintableEntry[]>([], () => printablesOf(desk));
  connection.onRequest(ListPrintables, (token) => printables(undefined, token));
  connection.onRequest(
    GetSheet,
    answerOrSay<{ readonly name: string; readonly kind: PrintedKind }, PrintedSheet | null>(null, ({ name, kind }) => {
      const sheet = kind === 'orders' ? ordersSheet(desk.workshop) : sheetOf(desk.workshop, name, kind);
      return sheet ? { title: sheet.title, html: sheetAsHtml(sheet) } : null;
    }),
  );
}
