/** Requests that lay a text out. */
import type { DocumentFormattingParams } from 'vscode-languageserver';
import type { TextEdit } from 'vscode-languageserver-types';
import { formattingEdits } from '../editing/formatting.js';
import type { Serving } from './serve.js';

export function serveLayout({ connection, session, answer }: Serving): void {
  const { desk, parser } = session;

  connection.onDocumentFormatting(
    answer<DocumentFormattingParams, TextEdit[]>([], ({ textDocument: { uri } }) => {
      const text = desk.text(uri);
      if (text === undefined) return [];
      return formattingEdits(text, parser, desk.shelf.file(uri)).map(({ range, text: newText }) => ({
        range,
        newText,
      }));
    }),
  );
}
