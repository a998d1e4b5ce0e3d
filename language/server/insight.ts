/** Requests that say something about the text without changing it: hover, inlay hints, lenses, links. */
import { type CodeLens, type DocumentLink, type InlayHint, MarkupKind } from 'vscode-languageserver-types';
import { hoverAt } from '../editing/hover.js';
import { inlayHints } from '../editing/inlay-hints.js';
import { type Lens, lensesOf } from '../editing/lenses.js';
import { linksIn } from '../editing/links.js';
import { COMMANDS } from './protocol.js';
import type { Serving } from './serve.js';

export function serveInsight({ connection, session }: Serving): void {
  const { desk } = session;

  connection.onHover(({ textDocument, position }) => {
    const hover = hoverAt(desk, textDocument.uri, position);
    return hover ? { contents: { kind: MarkupKind.Markdown, value: hover.markdown }, range: hover.range } : null;
  });

  connection.languages.inlayHint.on(({ textDocument, range }): InlayHint[] =>
    inlayHints(desk, textDocument.uri, range).map(({ position, text, tooltip }) => ({
      position,
      label: text,
      paddingLeft: true,
      ...(tooltip === undefined ? {} : { tooltip }),
    })),
  );

  connection.onCodeLens(({ textDocument }) => lensesOf(desk, textDocument.uri).map(toCodeLens));

  connection.onDocumentLinks(({ textDocument }): DocumentLink[] =>
    linksIn(desk, textDocument.uri).map(({ range, target }) => ({ range, target })),
  );
}

/** A lens without a command is shown as plain text. */
function toCodeLens({ range, text, compare }: Lens): CodeLens {
  return {
    range,
    command:
      compare === undefined
        ? { title: text, command: '' }
        : { title: text, command: COMMANDS.compareWithParent, arguments: [compare] },
  };
}
