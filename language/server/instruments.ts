/** Requests of our own: the instruments of the folder, one of them in full, two of them side by side, the library. */
import { comparisonTable } from '../editing/comparison-table.js';
import { instrumentsOf } from '../editing/instruments.js';
import { SPECIES_TEXT, SPECIES_URI } from '../editing/open-workshop.js';
import { resolvedText } from '../editing/resolved-text.js';
import { GetComparison, GetLibraryText, GetResolvedText, ListInstruments } from './protocol.js';
import type { Serving } from './serve.js';

export function serveInstruments({ connection, session }: Serving): void {
  const { desk } = session;
  const { workshop } = desk;

  connection.onRequest(ListInstruments, () => instrumentsOf(desk));
  connection.onRequest(GetResolvedText, ({ name }) => resolvedText(workshop, name) ?? null);
  connection.onRequest(GetComparison, ({ a, b }) => comparisonTable(workshop, a, b) ?? null);
  connection.onRequest(GetLibraryText, ({ uri }) => (uri === SPECIES_URI ? { text: SPECIES_TEXT } : null));
}
