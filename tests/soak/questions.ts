/** Every request the server answers about a place in a file, and about the whole folder. */
import {
  CodeActionRequest,
  CodeLensRequest,
  CompletionRequest,
  DefinitionRequest,
  DocumentFormattingRequest,
  DocumentHighlightRequest,
  DocumentLinkRequest,
  DocumentSymbolRequest,
  FoldingRangeRequest,
  HoverRequest,
  ImplementationRequest,
  InlayHintRequest,
  type Position,
  PrepareRenameRequest,
  ReferencesRequest,
  SelectionRangeRequest,
  SemanticTokensRangeRequest,
  SemanticTokensRequest,
  TypeHierarchyPrepareRequest,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver/node';
import * as protocol from '../../language/server/protocol.js';

export interface Question {
  readonly method: string;
  readonly params: unknown;
}

const WHOLE = { start: { line: 0, character: 0 }, end: { line: 1_000_000, character: 0 } };

/** What an editor asks of a file as soon as it is shown. */
export function ofFile(uri: string): readonly Question[] {
  const textDocument = { uri };
  const methods = [SemanticTokensRequest, DocumentSymbolRequest, FoldingRangeRequest, DocumentLinkRequest];
  return methods.map(({ method }) => ({ method, params: { textDocument } }));
}

/** What the solver has a part in. */
export function ofFileSolved(uri: string): readonly Question[] {
  const textDocument = { uri };
  return [
    { method: CodeLensRequest.method, params: { textDocument } },
    { method: InlayHintRequest.method, params: { textDocument, range: WHOLE } },
  ];
}

/** What it asks of a place when somebody points at it. */
export function ofPlace(uri: string, position: Position): readonly Question[] {
  const textDocument = { uri };
  const here = { textDocument, position };
  const range = { start: position, end: { line: position.line + 2, character: 0 } };
  return [
    ...[HoverRequest, CompletionRequest, DefinitionRequest, ImplementationRequest, DocumentHighlightRequest].map(
      ({ method }) => ({ method, params: here }),
    ),
    ...[PrepareRenameRequest, TypeHierarchyPrepareRequest].map(({ method }) => ({ method, params: here })),
    { method: ReferencesRequest.method, params: { ...here, context: { includeDeclaration: true } } },
    { method: SelectionRangeRequest.method, params: { textDocument, positions: [position] } },
    { method: SemanticTokensRangeRequest.method, params: { textDocument, range } },
    { method: CodeActionRequest.method, params: { textDocument, range, context: { diagnostics: [] } } },
    {
      method: DocumentFormattingRequest.method,
      params: { textDocument, options: { tabSize: 2, insertSpaces: true } },
    },
  ];
}

/** What views beside the text ask of the folder. */
export const OF_FOLDER: readonly Question[] = [
  { method: WorkspaceSymbolRequest.method, params: { query: '' } },
  ...[protocol.ListInstruments, protocol.ListLineage, protocol.ListExpectations, protocol.ListPrintables].map(
    ({ method }) => ({ method, params: undefined }),
  ),
];

/** What panels ask of an instrument. */
export function ofInstrument(name: string, other: string, model: string): readonly Question[] {
  return [
    { method: protocol.GetResolvedText.method, params: { name } },
    { method: protocol.GetDrawing.method, params: { name } },
    { method: protocol.GetChangeCount.method, params: { recipe: name } },
    { method: protocol.ListParents.method, params: { recipe: name } },
    { method: protocol.GetWoodChoice.method, params: { recipe: name } },
    { method: protocol.GetSheet.method, params: { name, kind: 'bench' } },
    { method: protocol.GetValues.method, params: { name } },
    { method: protocol.GetComparison.method, params: { a: other, b: name } },
    { method: protocol.GetModelEffects.method, params: { model } },
  ];
}
