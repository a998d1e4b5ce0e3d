/** Requests for what is listed of one instrument: its values, the count of its changes. */
import { changeCount } from '../editing/change-count.js';
import { valuesOf } from '../editing/values-list.js';
import { type ChangeCount, GetChangeCount, GetValues, type ValuesList } from './protocol.js';
import type { Serving } from './serve.js';

export function serveOneInstrument({ connection, session, answer }: Serving): void {
  const { desk } = session;
  connection.onRequest(
    GetValues,
    answer<{ readonly name: string }, ValuesList | null>(null, ({ name }) => valuesOf(desk, name) ?? null),
  );
  connection.onRequest(
    GetChangeCount,
    answer<{ readonly recipe: string }, ChangeCount | null>(null, ({ recipe }) => changeCount(desk, recipe) ?? null),
  );
}
