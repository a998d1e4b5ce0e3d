/** Every request the server offers, asked as an editor asks it. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  CodeActionRequest,
  CodeLensRequest,
  type CompletionList,
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
  InsertTextFormat,
  type Location,
  type MarkupContent,
  PrepareRenameRequest,
  ReferencesRequest,
  RenameRequest,
  SelectionRangeRequest,
  type TextDocumentEdit,
  TypeHierarchyPrepareRequest,
  TypeHierarchySubtypesRequest,
  TypeHierarchySupertypesRequest,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver/node';
import {
  GetComparison,
  GetDrawing,
  GetLibraryText,
  GetModeShapes,
  GetRebase,
  GetResolvedText,
  GetWays,
  LIBRARY_SCHEME,
  ListInstruments,
  ListParents,
} from '../../language/server/protocol.js';
import { at, type OpenEditor, openEditor, placeOf } from './client.js';
import { BUILD, BUILD_URI, LINE, LINE_URI, MODEL, MODEL_URI, SHOP } from './shop.js';

let open: OpenEditor;
const ask = () => open.editor.connection;
const whole = { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } };

beforeAll(async () => {
  open = await openEditor(SHOP);
  await open.editor.settled(() => open.editor.open(LINE_URI, LINE, 7));
});
afterAll(async () => {
  expect(open.editor.log).toEqual([]);
  await open.editor.quit();
});

/** The word a location covers, with its file. */
function wordAt({ uri, range }: Location): string {
  const line = (uri === LINE_URI ? LINE : uri === MODEL_URI ? MODEL : BUILD).split('\n')[range.start.line]!;
  return line.slice(range.start.character, range.start.line === range.end.line ? range.end.character : undefined);
}

describe('reading', () => {
  it('hover', async () => {
    const hover = await ask().sendRequest(HoverRequest.type, at(LINE_URI, LINE, 'thickness: 2.80'));
    expect((hover!.contents as MarkupContent).value).toContain('2.80 mm');
    expect(wordAt({ uri: LINE_URI, range: hover!.range! })).toBe('thickness');
    expect(await ask().sendRequest(HoverRequest.type, at('file:///shop/none', LINE, 'top'))).toBeNull();
  });

  it('inlay hints', async () => {
    const hints = await ask().sendRequest(InlayHintRequest.type, { textDocument: { uri: LINE_URI }, range: whole });
    const solved = hints!.find(({ position }) => position.line === placeOf(LINE, 'hold').line);
    expect(solved!.label).toMatch(/^= 2\.\d+ mm ± 0\.\d+ mm, was 2\.80 mm$/);
  });

  it('lenses', async () => {
    const lenses = await ask().sendRequest(CodeLensRequest.type, { textDocument: { uri: LINE_URI } });
    expect(lenses!.some(({ range }) => range.start.line === placeOf(LINE, 'recipe corrie-3').line)).toBe(true);
    expect(lenses!.every(({ command }) => command !== undefined && command.title !== '')).toBe(true);
  });

  it('links', async () => {
    const links = await ask().sendRequest(DocumentLinkRequest.type, { textDocument: { uri: LINE_URI } });
    expect(links).toEqual([]);
  });
});

describe('moving about', () => {
  it('definition', async () => {
    const found = await ask().sendRequest(DefinitionRequest.type, at(LINE_URI, LINE, 'spruce-1 -> spruce-2'));
    expect((found as Location[]).map(({ uri, range }) => [uri, range.start.line])).toEqual([[MODEL_URI, 1]]);
  });

  it('definition of a species leads into the library', async () => {
    const found = (await ask().sendRequest(DefinitionRequest.type, at(MODEL_URI, MODEL, 'sitka-spruce'))) as Location[];
    expect(found).toHaveLength(1);
    expect(found[0]!.uri.startsWith(`${LIBRARY_SCHEME}:`)).toBe(true);
    const text = await ask().sendRequest(GetLibraryText, { uri: found[0]!.uri });
    expect(text!.text.split('\n')[found[0]!.range.start.line]).toContain('species sitka-spruce');
    expect(await ask().sendRequest(GetLibraryText, { uri: 'file:///etc/passwd' })).toBeNull();
  });

  it('implementation: who changes this', async () => {
    const found = await ask().sendRequest(ImplementationRequest.type, at(MODEL_URI, MODEL, 'mass: 27'));
    expect((found as Location[]).map(wordAt)).toEqual(['change bridge.mass: 27 g -> 22 g']);
  });

  it('references', async () => {
    const params = at(MODEL_URI, MODEL, 'spruce-1 is');
    const all = await ask().sendRequest(ReferencesRequest.type, { ...params, context: { includeDeclaration: true } });
    const used = await ask().sendRequest(ReferencesRequest.type, { ...params, context: { includeDeclaration: false } });
    expect(all!.map(wordAt)).toEqual(['spruce-1', 'spruce-1', 'spruce-1']);
    expect(used).toHaveLength(2);
  });

  it('highlights', async () => {
    const marks = await ask().sendRequest(DocumentHighlightRequest.type, at(LINE_URI, LINE, 'spruce-1'));
    expect(marks!.map(({ range }) => wordAt({ uri: LINE_URI, range }))).toEqual(['spruce-1', 'spruce-1']);
  });

  it('symbols of a file and of the folder', async () => {
    const symbols = await ask().sendRequest(DocumentSymbolRequest.type, { textDocument: { uri: LINE_URI } });
    expect(symbols!.map(({ name }) => name)).toEqual(['corrie-1', 'corrie-2', 'corrie-3']);
    const found = await ask().sendRequest(WorkspaceSymbolRequest.type, { query: 'cri3' });
    expect(found!.map(({ name }) => name)).toEqual(['corrie-3']);
  });

  it('folding and selection', async () => {
    const folds = await ask().sendRequest(FoldingRangeRequest.type, { textDocument: { uri: MODEL_URI } });
    expect(folds!.map(({ startLine }) => startLine)).toEqual([3, 5]);
    const [selection] = (await ask().sendRequest(SelectionRangeRequest.type, {
      textDocument: { uri: LINE_URI },
      positions: [placeOf(LINE, '22 g')],
    }))!;
    const words: string[] = [];
    for (let next = selection; next; next = next.parent) words.push(wordAt({ uri: LINE_URI, range: next.range }));
    expect(words).toEqual(['22 g', 'change bridge.mass: 27 g -> 22 g', 'recipe corrie-3 from corrie-2 {']);
  });

  it('type hierarchy is the lineage', async () => {
    const [item] = (await ask().sendRequest(TypeHierarchyPrepareRequest.type, at(LINE_URI, LINE, 'corrie-2 from')))!;
    const above = await ask().sendRequest(TypeHierarchySupertypesRequest.type, { item: item! });
    const below = await ask().sendRequest(TypeHierarchySubtypesRequest.type, { item: item! });
    expect([item!.name, above!.map(({ name }) => name), below!.map(({ name }) => name)]).toEqual([
      'corrie-2',
      ['corrie-1'],
      ['corrie-3'],
    ]);
  });
});

describe('writing', () => {
  it('completion, as plain text for an editor that knows no snippets', async () => {
    const place = at(LINE_URI, LINE, '22 g', 0);
    const answer = (await ask().sendRequest(CompletionRequest.type, place)) as CompletionList;
    expect(answer.items.map(({ label }) => label)).toContain('27 g');
    expect(answer.items.every((item) => item.insertTextFormat === InsertTextFormat.PlainText)).toBe(true);
    expect(answer.items.map(({ textEdit }) => textEdit!.newText).join('\n')).not.toMatch(/\$\d|\$\{/);
  });

  it('completion, with blanks to fill in for one that does, asked for again at the beginning of a statement', async () => {
    const snippets = await openEditor(SHOP, {
      textDocument: { completion: { completionItem: { snippetSupport: true } } },
    });
    const { connection } = snippets.editor;
    const { position } = at(LINE_URI, LINE, 'change');
    const answer = (await connection.sendRequest(CompletionRequest.type, {
      textDocument: { uri: LINE_URI },
      position,
    })) as CompletionList;
    expect(answer.isIncomplete).toBe(true);
    const change = answer.items.find(({ label }) => label === 'change bridge.mass')!;
    expect(change.insertTextFormat).toBe(InsertTextFormat.Snippet);
    expect(change.textEdit!.newText).toBe('change bridge.mass: 27 g -> ${1:27} g');
    await snippets.editor.quit();
  });

  it('formatting', async () => {
    const edits = await ask().sendRequest(DocumentFormattingRequest.type, {
      textDocument: { uri: BUILD_URI },
      options: { tabSize: 8, insertSpaces: false },
    });
    expect(edits).toEqual([{ range: { start: placeOf(BUILD, 'mass'), end: placeOf(BUILD, 'mass') }, newText: ' ' }]);
  });

  it('formatting of a part, and of the line just finished', async () => {
    const connection = ask();
    const textDocument = { uri: BUILD_URI };
    const options = { tabSize: 2, insertSpaces: true };
    const place = placeOf(BUILD, 'mass');
    const edit = { range: { start: place, end: place }, newText: ' ' };
    const inRange = (first: number, last: number) =>
      connection.sendRequest(DocumentRangeFormattingRequest.type, {
        textDocument,
        options,
        range: { start: { line: first, character: 0 }, end: { line: last, character: 0 } },
      });
    expect(await inRange(0, place.line + 1)).toEqual([edit]);
    expect(await inRange(place.line + 1, place.line + 2)).toEqual([]);
    const typed = (ch: string, line: number) =>
      connection.sendRequest(DocumentOnTypeFormattingRequest.type, {
        textDocument,
        options,
        ch,
        position: { line, character: 0 },
      });
    expect(await typed('}', place.line)).toEqual([edit]);
    expect(await typed('\n', place.line + 1)).toEqual([edit]);
    expect(await typed('\n', place.line)).toEqual([]);
  });

  it('rename, in every file, with the version of the text it was worked out for', async () => {
    const params = at(LINE_URI, LINE, 'spruce-1 -> spruce-2');
    const range = await ask().sendRequest(PrepareRenameRequest.type, params);
    expect(range).toMatchObject({ start: placeOf(LINE, 'spruce-1 -> spruce-2') });
    const edit = await ask().sendRequest(RenameRequest.type, { ...params, newName: 'old-spruce' });
    const changes = edit!.documentChanges as TextDocumentEdit[];
    const told = changes.map(({ textDocument, edits }) => [textDocument.uri, textDocument.version, edits.length]);
    expect(told).toContainEqual([LINE_URI, 7, 2]);
    expect(told).toContainEqual([MODEL_URI, null, 1]);
    expect(told).toHaveLength(2);
  });

  it('rename refuses a name that is taken, one that is none, and a word that is no name, in plain words', async () => {
    const params = at(LINE_URI, LINE, 'spruce-1');
    const rename = (newName: string) => ask().sendRequest(RenameRequest.type, { ...params, newName });
    await expect(rename('spruce-2')).rejects.toThrow('There already is a wood called spruce-2.');
    await expect(rename('two words')).rejects.toThrow('is not a name');
    await expect(ask().sendRequest(PrepareRenameRequest.type, at(LINE_URI, LINE, 'because'))).rejects.toThrow(
      'Only the name of a definition can be renamed here.',
    );
  });

  it('fixes, with the finding they mend and the version they are for', async () => {
    const { editor } = open;
    const broken = LINE.replace('change bridge.mass: 27 g', 'change bridge.mass: 26 g');
    await editor.settled(() => editor.type(LINE_URI, 8, broken));
    const range = { start: placeOf(broken, '26 g'), end: placeOf(broken, '26 g') };
    const actions = (await ask().sendRequest(CodeActionRequest.type, {
      textDocument: { uri: LINE_URI },
      range,
      context: { diagnostics: [] },
    })) as { title: string; edit: { documentChanges: TextDocumentEdit[] }; diagnostics: { code: string }[] }[];
    const fix = actions.find(({ title }) => title.includes('27 g'))!;
    expect(fix.edit.documentChanges[0]!.textDocument).toEqual({ uri: LINE_URI, version: 8 });
    expect(fix.diagnostics[0]!.code).toBe('stale-change');
    const only = await ask().sendRequest(CodeActionRequest.type, {
      textDocument: { uri: LINE_URI },
      range,
      context: { diagnostics: [], only: ['source.organizeImports'] },
    });
    expect(only).toEqual([]);
    await editor.settled(() => editor.type(LINE_URI, 9, LINE));
  });
});

describe('requests of our own', () => {
  it('the drawing of an instrument, and its modes as far as there is anybody to work them out', async () => {
    const drawing = await ask().sendRequest(GetDrawing, { name: 'corrie-2' });
    expect(drawing!.parts.map(({ path }) => path)).toEqual(expect.arrayContaining(['top', 'soundhole']));
    expect(await ask().sendRequest(GetDrawing, { name: 'corrie-9' })).toBeNull();
    const modes = await ask().sendRequest(GetModeShapes, { name: 'corrie-2', plate: 'top' });
    expect(modes).toMatchObject({ name: 'corrie-2', plate: 'top', modes: [] });
    const back = await ask().sendRequest(GetModeShapes, { name: 'corrie-2', plate: 'back' });
    expect(back).toMatchObject({ state: 'unknown', missing: expect.arrayContaining(['back.thickness']) as string[] });
    expect(await ask().sendRequest(GetModeShapes, { name: 'corrie-9', plate: 'top' })).toBeNull();
  });

  it('the recipes one could be set on, and what to write for it', async () => {
    expect(await ask().sendRequest(ListParents, { recipe: 'corrie-3' })).toEqual([
      { name: 'corrie-1', model: 'corrie', isOfModel: true },
    ]);
    expect(await ask().sendRequest(ListParents, { recipe: 'corrie-1' })).toBeNull();
    const rebased = await ask().sendRequest(GetRebase, { recipe: 'corrie-3', parent: 'corrie-1' });
    const [change] = 'edit' in rebased! ? (rebased.edit.documentChanges as TextDocumentEdit[]) : [];
    expect(change).toMatchObject({
      textDocument: { uri: LINE_URI },
      edits: [{ range: { start: placeOf(LINE, 'corrie-2 {\n  because "A lighter') }, newText: 'corrie-1' }],
    });
    expect(await ask().sendRequest(GetRebase, { recipe: 'corrie-3', parent: 'corrie-9' })).toBeNull();
    expect(await ask().sendRequest(GetRebase, { recipe: 'corrie-9', parent: 'corrie-1' })).toBeNull();
  });

  it('the ways to a wish, each with what to write', async () => {
    const found = await ask().sendRequest(GetWays, { recipe: 'corrie-2', wish: 'bridge.moving-mass: by -1 g' });
    expect(found?.state).toBe('found');
    const way = found!.ways.find(({ change }) => change.startsWith('bridge.mass: '))!;
    expect(way.change).toMatch(/^bridge\.mass: \d+ g → \d+ g$/);
    expect(way.result).toContain('±');
    expect(JSON.stringify(way.edit)).toMatch(/change bridge\.mass: |\d+ g/);
    expect(await ask().sendRequest(GetWays, { recipe: 'corrie-2', wish: 'brighter' })).toEqual({
      state: 'unreadable',
      ways: [],
    });
    expect(await ask().sendRequest(GetWays, { recipe: 'corrie-9', wish: 'top.mass: 1 g' })).toBeNull();
  });

  it('the instruments of the folder', async () => {
    const all = await ask().sendRequest(ListInstruments);
    const names = all.map(({ name }) => name).sort();
    expect(names).toEqual(['corrie', 'corrie-1', 'corrie-2', 'corrie-3', 'no-1']);
    expect(all.find(({ name }) => name === 'no-1')).toMatchObject({
      kind: 'build',
      parent: 'corrie-1',
      uri: BUILD_URI,
    });
  });

  it('an instrument written out, two laid side by side, and null for names that are not there', async () => {
    const resolved = await ask().sendRequest(GetResolvedText, { name: 'corrie-3' });
    expect(resolved!.text).toContain('22 g');
    const compared = await ask().sendRequest(GetComparison, { a: 'corrie-2', b: 'corrie-3' });
    expect(compared!.changes.map(({ label }) => label)).toContain('bridge.mass');
    expect(await ask().sendRequest(GetResolvedText, { name: 'corrie-9' })).toBeNull();
    expect(await ask().sendRequest(GetComparison, { a: 'corrie-2', b: 'corrie-9' })).toBeNull();
  });
});

it('offers what it answers, and nothing it does not', () => {
  const offered = Object.keys(open.initialized.capabilities).filter((name) => name.endsWith('Provider'));
  expect(offered.sort()).toEqual([
    'codeActionProvider',
    'codeLensProvider',
    'completionProvider',
    'definitionProvider',
    'documentFormattingProvider',
    'documentHighlightProvider',
    'documentLinkProvider',
    'documentOnTypeFormattingProvider',
    'documentRangeFormattingProvider',
    'documentSymbolProvider',
    'foldingRangeProvider',
    'hoverProvider',
    'implementationProvider',
    'inlayHintProvider',
    'referencesProvider',
    'renameProvider',
    'selectionRangeProvider',
    'semanticTokensProvider',
    'typeHierarchyProvider',
    'workspaceSymbolProvider',
  ]);
});
