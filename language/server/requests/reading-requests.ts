/** Requests for setting down a reading: what can be read, and the line to write. */
import { readableOf, recordReading } from '../../editing/record-reading.js';
import { placed, toWorkspaceEdit } from '../convert.js';
import {
  GetRecordedReading,
  ListReadable,
  type Readable,
  type ReadingTaken,
  type RecordedReading,
} from '../protocol.js';
import type { Serving } from '../serving.js';

export function serveReadings({ connection, session, versionOf, answerOrSay }: Serving): void {
  const { desk } = session;
  connection.onRequest(
    ListReadable,
    answerOrSay<{ readonly build: string }, readonly Readable[] | null>(
      null,
      ({ build }) => readableOf(desk, build) ?? null,
    ),
  );
  connection.onRequest(
    GetRecordedReading,
    answerOrSay<ReadingTaken, RecordedReading | null>(null, (taken) => {
      const made = recordReading(desk, taken);
      if (!made || 'reason' in made) return made ?? null;
      return { edit: toWorkspaceEdit(placed(desk, made.edits), versionOf) };
    }),
  );
}
