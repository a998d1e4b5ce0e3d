/** Requests that say something about the text without changing it: hover, inlay hints, lenses, links. */
import type {
  CodeLensParams,
  DocumentLinkParams,
  HoverParams,
  InlayHintParams,
  ResponseError,
} from 'vscode-languageserver';
import {
  type CodeLens,
  type DocumentLink,
  type InlayHint,
  MarkupKind,
  type Hover as ProtocolHover,
} from 'vscode-languageserver-types';
import { hoverAt } from '../../editing/hover/hover.js';
import { inlayHints } from '../../editing/hints/inlay-hints.js';
import { type Lens, lensesByDefinition } from '../../editing/hints/lenses.js';
import { linksIn } from '../../editing/navigation/links.js';
import { COMMANDS, inLabel } from '../protocol.js';
import type { Serving } from '../serving.js';
import { withdrawn } from '../answering.js';
import { inSlices } from '../slices.js';

export function serveHover({ connection, session, answer, shown }: Serving): void {
  const { desk } = session;

  connection.onHover(
    answer<HoverParams, ProtocolHover | null>(null, ({ textDocument, position }) => {
      const hover = hoverAt(desk, textDocument.uri, position);
      return hover ? { contents: { kind: MarkupKind.Markdown, value: hover.markdown }, range: hover.range } : null;
    }),
  );

  connection.languages.inlayHint.on(
    answer<InlayHintParams, InlayHint[]>([], ({ textDocument, range }) =>
      (shown.hints ? inlayHints(desk, textDocument.uri, range) : []).map(({ position, text, tooltip }) => ({
        position,
        label: text,
        paddingLeft: true,
        ...(tooltip === undefined ? {} : { tooltip }),
      })),
    ),
  );

  connection.onCodeLens(
    answer<CodeLensParams, CodeLens[] | Promise<CodeLens[] | ResponseError>>([], async ({ textDocument }, token) => {
      if (!shown.lenses) return [];
      const made = await inSlices(
        () => lensesByDefinition(desk, textDocument.uri),
        () => session.edits,
        () => token?.isCancellationRequested === true,
      );
      return made?.flat().map(toCodeLens) ?? withdrawn();
    }),
  );

  connection.onDocumentLinks(
    answer<DocumentLinkParams, DocumentLink[]>([], ({ textDocument }) =>
      linksIn(desk, textDocument.uri).map(({ range, target }) => ({ range, target })),
    ),
  );
}

/** A lens without a command is shown as plain text. */
function toCodeLens({ range, text, compare, effects, sheets }: Lens): CodeLens {
  const title = inLabel(text);
  if (compare) return { range, command: { title, command: COMMANDS.showSideBySide, arguments: [...compare] } };
  if (effects) return { range, command: { title, command: COMMANDS.showEffects, arguments: [effects] } };
  if (sheets) return { range, command: { title, command: COMMANDS.printSheet, arguments: [sheets] } };
  return { range, command: { title, command: '' } };
}
