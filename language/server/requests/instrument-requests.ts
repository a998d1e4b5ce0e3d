/** Requests of our own: the instruments of the folder, one of them in full, two of them side by side, the library. */
import { comparisonTable } from '../../reports/comparison/comparison-table.js';
import { instrumentsOf } from '../../reports/instrument-list.js';
import { resolvedText } from '../../reports/resolved-text.js';
import {
  type ComparisonTable,
  GetComparison,
  GetLibraryText,
  GetResolvedText,
  type InstrumentEntry,
  ListInstruments,
  type ResolvedText,
} from '../protocol.js';
import { libraryText } from '../library-pages.js';
import type { Serving } from '../serving.js';

export function serveInstruments({ connection, session, answerOrSay }: Serving): void {
  const { desk } = session;
  const { workshop } = desk;

  const list = answerOrSay<undefined, readonly InstrumentEntry[]>([], () => instrumentsOf(desk));
  connection.onRequest(ListInstruments, (token) => list(undefined, token));
  connection.onRequest(
    GetResolvedText,
    answerOrSay<{ readonly name: string }, ResolvedText | null>(
      null,
      ({ name }) => resolvedText(workshop, name) ?? null,
    ),
  );
  connection.onRequest(
    GetComparison,
    answerOrSay<{ readonly a: string; readonly b: string }, ComparisonTable | null>(
      null,
      ({ a, b }) => comparisonTable(workshop, a, b) ?? null,
    ),
  );
  connection.onRequest(
    GetLibraryText,
    answerOrSay<{ readonly uri: string }, { readonly text: string } | null>(null, ({ uri }) => {
      const text = libraryText(uri, workshop.wording);
      return text === undefined ? null : { text };
    }),
  );
}
