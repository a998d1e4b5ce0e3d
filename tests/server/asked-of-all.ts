/** Every request the server offers, each asked where there is something to say. */
import {
  CodeActionRequest,
  CodeLensRequest,
  CompletionRequest,
  DefinitionRequest,
  DocumentFormattingRequest,
  DocumentHighlightRequest,
  DocumentLinkRequest,
  DocumentOnTypeFormattingRequest,
  DocumentRangeFormattingRequest,
  DocumentSymbolRequest,
  FoldingRangeRequest,
  HoverRequest,
  ImplementationRequest,
  InlayHintRequest,
  PrepareRenameRequest,
  ReferencesRequest,
  RequestType,
  RequestType0,
  RenameRequest,
  SelectionRangeRequest,
  SemanticTokensDeltaRequest,
  SemanticTokensRangeRequest,
  SemanticTokensRequest,
  SignatureHelpRequest,
  TypeHierarchyPrepareRequest,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver/node';
import * as protocol from '../../language/server/protocol.js';
import { at, placeOf } from './client.js';
import { LINE_URI, SHOP } from './shop.js';

export const TEXT = `${SHOP[LINE_URI]}
// Where the bridge came from: https://example.org/bridges
recipe corrie-4 from corrie-3 { because "Off."  change bridge.mass: 23 g ->   21 g }
`;
export const FILES = { ...SHOP, [LINE_URI]: TEXT };

/** Where each is asked so that there is something to say. */
export interface Asked {
  readonly method: string;
  readonly params: object;
}

const mass = at(LINE_URI, TEXT, 'bridge.mass: 27 g', 8);
const whole = { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } };
const file = { textDocument: { uri: LINE_URI } };
const options = { tabSize: 2, insertSpaces: true };
const off = { start: placeOf(TEXT, '23 g'), end: placeOf(TEXT, '23 g') };
const name = at(LINE_URI, TEXT, 'corrie-2 from');

/** By the name of the capability that offers it. */
export const REQUESTS: Readonly<Record<string, readonly Asked[]>> = {
  codeActionProvider: [
    { method: CodeActionRequest.method, params: { ...file, range: off, context: { diagnostics: [] } } },
  ],
  codeLensProvider: [{ method: CodeLensRequest.method, params: file }],
  completionProvider: [{ method: CompletionRequest.method, params: mass }],
  definitionProvider: [{ method: DefinitionRequest.method, params: mass }],
  documentFormattingProvider: [{ method: DocumentFormattingRequest.method, params: { ...file, options } }],
  documentRangeFormattingProvider: [
    { method: DocumentRangeFormattingRequest.method, params: { ...file, range: whole, options } },
  ],
  documentOnTypeFormattingProvider: [
    {
      method: DocumentOnTypeFormattingRequest.method,
      params: { ...file, position: placeOf(TEXT, '}\n\nrecipe corrie-3', 1), ch: '}', options },
    },
  ],
  signatureHelpProvider: [{ method: SignatureHelpRequest.method, params: mass }],
  documentHighlightProvider: [{ method: DocumentHighlightRequest.method, params: mass }],
  documentLinkProvider: [{ method: DocumentLinkRequest.method, params: file }],
  documentSymbolProvider: [{ method: DocumentSymbolRequest.method, params: file }],
  foldingRangeProvider: [{ method: FoldingRangeRequest.method, params: file }],
  hoverProvider: [{ method: HoverRequest.method, params: mass }],
  implementationProvider: [{ method: ImplementationRequest.method, params: mass }],
  inlayHintProvider: [{ method: InlayHintRequest.method, params: { ...file, range: whole } }],
  referencesProvider: [
    { method: ReferencesRequest.method, params: { ...name, context: { includeDeclaration: true } } },
  ],
  renameProvider: [
    { method: PrepareRenameRequest.method, params: { ...name } },
    { method: RenameRequest.method, params: { ...name, newName: 'corrie-two' } },
  ],
  selectionRangeProvider: [{ method: SelectionRangeRequest.method, params: { ...file, positions: [mass.position] } }],
  semanticTokensProvider: [
    { method: SemanticTokensRequest.method, params: file },
    { method: SemanticTokensDeltaRequest.method, params: { ...file, previousResultId: '' } },
    { method: SemanticTokensRangeRequest.method, params: { ...file, range: whole } },
  ],
  typeHierarchyProvider: [{ method: TypeHierarchyPrepareRequest.method, params: { ...name } }],
  workspaceSymbolProvider: [{ method: WorkspaceSymbolRequest.method, params: { query: 'corrie' } }],
};

/** These the server asks of the editor. */
const ASKED_OF_THE_EDITOR: readonly unknown[] = [protocol.ListFiles, protocol.ReadFile, protocol.GetSolverAddress];

/** Requests of our own. */
export const OWN = Object.values(protocol).filter(
  (one) => (one instanceof RequestType || one instanceof RequestType0) && !ASKED_OF_THE_EDITOR.includes(one),
) as { readonly method: string; readonly numberOfParams: number }[];
