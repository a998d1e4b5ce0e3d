/** Requests that lay a text out: the whole of it, a part, or the line just finished. */
import type {
  DocumentFormattingParams,
  DocumentOnTypeFormattingParams,
  DocumentRangeFormattingParams,
} from 'vscode-languageserver';
import type { TextEdit } from 'vscode-languageserver-types';
import { formattingEditsWithin } from '../../editing/formatting/formatting.js';
import type { Serving } from '../serving.js';

/** After which signs the line just finished is laid out, in an editor that is set to format on type. */
export const FINISHES_LINE = { firstTriggerCharacter: '}', moreTriggerCharacter: ['\n'] };

export function serveFormatting({ connection, session, answer }: Serving): void {
  const { desk, parser } = session;

  connection.onDocumentFormatting(
    answer<DocumentFormattingParams, TextEdit[]>([], ({ textDocument: { uri } }) => edits(uri, 0, Infinity)),
  );
  connection.onDocumentRangeFormatting(
    answer<DocumentRangeFormattingParams, TextEdit[]>([], ({ textDocument: { uri }, range: { start, end } }) =>
      // A selection that ends before the first letter of a line does not mean that line.
      edits(uri, start.line, end.character === 0 && end.line > start.line ? end.line - 1 : end.line),
    ),
  );
  connection.onDocumentOnTypeFormatting(
    answer<DocumentOnTypeFormattingParams, TextEdit[]>([], ({ textDocument: { uri }, position: { line }, ch }) => {
      const finished = ch === '\n' ? line - 1 : line;
      return edits(uri, finished, finished);
    }),
  );

  function edits(uri: string, first: number, last: number): TextEdit[] {
    const text = desk.text(uri);
    if (text === undefined) return [];
    return formattingEditsWithin({ first, last }, text, parser, desk.shelf.file(uri)).map(
      ({ range, text: newText }) => ({ range, newText }),
    );
  }
}
