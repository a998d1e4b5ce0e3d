/** Requests that take a maker from one place to another. */
import {
  type DefinitionParams,
  type DocumentHighlightParams,
  type DocumentSymbolParams,
  type FoldingRangeParams,
  type ImplementationParams,
  LSPErrorCodes,
  type PrepareRenameParams,
  type ReferenceParams,
  type RenameParams,
  ResponseError,
  type SelectionRangeParams,
  type TypeHierarchyItem,
  type TypeHierarchyPrepareParams,
  type TypeHierarchySubtypesParams,
  type TypeHierarchySupertypesParams,
  type WorkspaceSymbolParams,
} from 'vscode-languageserver';
import {
  type DocumentHighlight,
  DocumentHighlightKind,
  type DocumentSymbol,
  type FoldingRange,
  type Location,
  type Range,
  type SelectionRange,
  type SymbolInformation,
  type WorkspaceEdit,
} from 'vscode-languageserver-types';
import { type Desk, locationOf } from '../../checks/desk.js';
import { ancestorsOf, changesOfPathAt, descendantsOf, lineageItemAt } from '../../editing/navigation/lineage-tree.js';
import { foldingRanges } from '../../editing/navigation/folding.js';
import { highlights } from '../../editing/navigation/highlights.js';
import { definitionAt, referencesAt, rename, renameRange } from '../../editing/navigation/references.js';
import { documentSymbols, selectionRanges, type Symbol, workspaceSymbols } from '../../editing/navigation/symbols.js';
import type { Definition, Span } from '../../facts/facts.js';
import { symbolKind, toProtocolLocation, toWorkspaceEdit } from '../convert.js';
import type { Serving } from '../serving.js';

export function serveNavigation({ connection, session, versionOf, answer }: Serving): void {
  const { desk, parser } = session;

  connection.onDefinition(
    answer<DefinitionParams, Location[]>([], ({ textDocument, position }) =>
      definitionAt(desk, textDocument.uri, position).map(toProtocolLocation),
    ),
  );
  connection.onImplementation(
    answer<ImplementationParams, Location[]>([], ({ textDocument, position }) =>
      changesOfPathAt(desk, textDocument.uri, position).map(toProtocolLocation),
    ),
  );
  connection.onReferences(
    answer<ReferenceParams, Location[]>([], ({ textDocument, position, context }) => {
      const options = { declaration: context.includeDeclaration };
      return referencesAt(desk, textDocument.uri, position, options).map(toProtocolLocation);
    }),
  );

  connection.onPrepareRename(
    answer<PrepareRenameParams, Range | null>(null, ({ textDocument, position }) => {
      const range = renameRange(desk, textDocument.uri, position);
      return typeof range === 'string' ? new ResponseError(LSPErrorCodes.RequestFailed, range) : range.range;
    }),
  );
  connection.onRenameRequest(
    answer<RenameParams, WorkspaceEdit | null>(null, ({ textDocument, position, newName }) => {
      const places = rename(desk, textDocument.uri, position, newName);
      if (typeof places === 'string') return new ResponseError(LSPErrorCodes.RequestFailed, places);
      return toWorkspaceEdit(
        places.map((place) => ({ ...place, text: newName })),
        versionOf,
      );
    }),
  );

  connection.onDocumentSymbol(
    answer<DocumentSymbolParams, DocumentSymbol[]>([], ({ textDocument }) =>
      documentSymbols(desk, textDocument.uri).map(toDocumentSymbol),
    ),
  );
  connection.onWorkspaceSymbol(
    answer<WorkspaceSymbolParams, SymbolInformation[]>([], ({ query }) =>
      workspaceSymbols(desk, query).map(({ uri, range, definition }) => ({
        name: definition.name.text,
        kind: symbolKind(definition.kind),
        location: { uri, range },
        containerName: definition.relation?.target.text ?? definition.kind,
      })),
    ),
  );
  connection.onDocumentHighlight(
    answer<DocumentHighlightParams, DocumentHighlight[]>([], ({ textDocument, position }) =>
      highlights(desk, textDocument.uri, position).map(({ range, sets }) => ({
        range,
        kind: sets ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
      })),
    ),
  );
  connection.onFoldingRanges(
    answer<FoldingRangeParams, FoldingRange[]>([], ({ textDocument }) =>
      foldingRanges(desk, parser, textDocument.uri).map((fold) => ({ ...fold })),
    ),
  );
  connection.onSelectionRanges(
    answer<SelectionRangeParams, SelectionRange[]>([], ({ textDocument, positions }) =>
      positions.map((position) => nested(selectionRanges(desk, textDocument.uri, position), position)),
    ),
  );

  const { typeHierarchy } = connection.languages;
  typeHierarchy.onPrepare(
    answer<TypeHierarchyPrepareParams, TypeHierarchyItem[] | null>(null, ({ textDocument, position }) => {
      const definition = lineageItemAt(desk, textDocument.uri, position);
      return definition ? itemsFor(desk, [definition]) : null;
    }),
  );
  typeHierarchy.onSupertypes(
    answer<TypeHierarchySupertypesParams, TypeHierarchyItem[]>([], ({ item }) => relatives(desk, item, ancestorsOf)),
  );
  typeHierarchy.onSubtypes(
    answer<TypeHierarchySubtypesParams, TypeHierarchyItem[]>([], ({ item }) => relatives(desk, item, descendantsOf)),
  );
}

function toDocumentSymbol(symbol: Symbol): DocumentSymbol {
  return {
    name: symbol.name,
    detail: symbol.detail,
    kind: symbolKind(symbol.kind),
    range: symbol.range,
    selectionRange: symbol.selection,
    children: symbol.children.map(toDocumentSymbol),
  };
}

function nested(spans: readonly Span[], position: Span['start']): SelectionRange {
  let outer: SelectionRange | undefined;
  for (const range of [...spans].reverse()) outer = outer ? { range, parent: outer } : { range };
  return outer ?? { range: { start: position, end: position } };
}

function relatives(
  desk: Desk,
  item: TypeHierarchyItem,
  find: (desk: Desk, definition: Definition) => readonly Definition[],
): TypeHierarchyItem[] {
  const definition = lineageItemAt(desk, item.uri, item.selectionRange.start);
  return definition ? itemsFor(desk, find(desk, definition)) : [];
}

function itemsFor(desk: Desk, definitions: readonly Definition[]): TypeHierarchyItem[] {
  return definitions.flatMap((definition) => {
    const whole = locationOf(desk, definition, definition.span);
    const name = locationOf(desk, definition, definition.name.span);
    if (!whole || !name) return [];
    return [
      {
        name: definition.name.text,
        detail: definition.kind,
        kind: symbolKind(definition.kind),
        uri: whole.uri,
        range: whole.range,
        selectionRange: name.range,
      },
    ];
  });
}
