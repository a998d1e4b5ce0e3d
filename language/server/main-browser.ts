/** The server as a worker in a browser: every file comes through the editor. */
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  ProposedFeatures,
  createConnection,
} from 'vscode-languageserver/browser';
import { editorFolder } from './editor-folder.js';
import { fetchedTranslations } from './fetched-translations.js';
import { NestedWorker } from './nested-worker.js';
import { GetSolverAddress } from './protocol.js';
import { serve } from './serve.js';

// Seen as a window by the types of a page; a worker receives and sends messages the same way.
const port = self as unknown as Worker;
const connection = createConnection(
  ProposedFeatures.all,
  new BrowserMessageReader(port),
  new BrowserMessageWriter(port),
);
const solver = new NestedWorker(() => connection.sendRequest(GetSolverAddress));
serve(connection, editorFolder(connection), solver, fetchedTranslations);
