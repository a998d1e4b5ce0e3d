/** Edits, withdrawals and files coming and going: the server stays with the newest text and answers for it. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  CancellationTokenSource,
  CodeLensRequest,
  CompletionRequest,
  DocumentSymbolRequest,
  HoverRequest,
  InlayHintRequest,
  LSPErrorCodes,
  type MarkupContent,
  ReferencesRequest,
  ResponseError,
  SemanticTokensRequest,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver/node';
import { answering, guarded } from '../../language/server/answering.js';
import { ENGLISH } from '../../language/wording/wording.js';
import { at, type Editor, openEditor, placeOf } from './client.js';
import { BUILD_URI, LINE, LINE_URI, MODEL, MODEL_URI, SHOP } from './shop.js';

let editor: Editor;
beforeEach(async () => {
  editor = (await openEditor(SHOP)).editor;
});
afterEach(async () => {
  expect(editor.log).toEqual([]);
  await editor.quit();
});

async function hovered(word: string, text: string, uri = LINE_URI): Promise<string> {
  const hover = await editor.connection.sendRequest(HoverRequest.type, at(uri, text, word));
  return hover ? (hover.contents as MarkupContent).value : '';
}

describe('findings follow the text', () => {
  it('an edit of a grandparent refreshes the grandchild’s findings, in a file that is not open', async () => {
    expect(editor.codes(LINE_URI)).not.toContain('stale-change');
    await editor.settled(() => editor.open(MODEL_URI));
    await editor.settled(() => editor.type(MODEL_URI, 2, MODEL.replace('mass: 27 g', 'mass: 25 g')));
    expect(editor.codes(LINE_URI)).toContain('stale-change');
    expect(editor.messages(LINE_URI)).toContain('25 g');
    await editor.settled(() => editor.type(MODEL_URI, 3, MODEL));
    expect(editor.codes(LINE_URI)).not.toContain('stale-change');
  });

  it('carry the version they were worked out for', async () => {
    const broken = LINE.replace('27 g ->', '26 g ->');
    await editor.settled(() => editor.open(LINE_URI, broken, 41));
    expect(editor.published.get(LINE_URI)!.version).toBe(41);
    await editor.settled(() => editor.type(LINE_URI, 42, LINE));
    expect(editor.published.get(LINE_URI)!.version).toBe(42);
  });

  it('an edit in the middle of a text is worked in where it is', async () => {
    await editor.settled(() => editor.open(LINE_URI));
    const start = placeOf(LINE, '27 g');
    const range = { start, end: { line: start.line, character: start.character + 2 } };
    await editor.settled(() => editor.type(LINE_URI, 2, '26', range));
    expect(editor.codes(LINE_URI)).toContain('stale-change');
  });
});

describe('versions and files', () => {
  it('a change that comes after a newer one is left out', async () => {
    await editor.settled(() => editor.open(LINE_URI));
    await editor.settled(() => editor.type(LINE_URI, 5, LINE.replace('2.80 mm', '2.60 mm')));
    editor.type(LINE_URI, 4, 'recipe nonsense {');
    expect(await hovered('thickness: 2.80', LINE)).toContain('2.60 mm');
    await editor.settled(() => editor.type(LINE_URI, 6, LINE.replace('2.80 mm', '2.50 mm')));
    expect(await hovered('thickness: 2.80', LINE)).toContain('2.50 mm');
  });

  it('closing without saving returns to what is on disk', async () => {
    await editor.settled(() => editor.open(LINE_URI));
    await editor.settled(() => editor.type(LINE_URI, 2, LINE.replace('27 g ->', '26 g ->')));
    expect(editor.codes(LINE_URI)).toContain('stale-change');
    await editor.settled(() => editor.close(LINE_URI));
    expect(editor.codes(LINE_URI)).not.toContain('stale-change');
  });

  it('closing a text that was never saved takes it away', async () => {
    const uri = 'file:///shop/new.bookmatch';
    await editor.settled(() => editor.open(uri, 'recipe corrie-4 from corrie-9 { }'));
    expect(editor.codes(uri)).not.toEqual([]);
    await editor.settled(() => editor.close(uri));
    expect(editor.codes(uri)).toEqual([]);
    expect(await editor.connection.sendRequest(WorkspaceSymbolRequest.type, { query: 'corrie-4' })).toEqual([]);
  });

  it('a change on disk counts, but not over a text that is open', async () => {
    editor.disk.set(MODEL_URI, MODEL.replace('mass: 27 g', 'mass: 25 g'));
    await editor.settled(() => editor.changedOnDisk(MODEL_URI));
    expect(editor.codes(LINE_URI)).toContain('stale-change');
    await editor.settled(() => editor.open(MODEL_URI, MODEL));
    expect(editor.codes(LINE_URI)).not.toContain('stale-change');
    await editor.settled(() => editor.changedOnDisk(MODEL_URI));
    expect(editor.codes(LINE_URI)).not.toContain('stale-change');
    await editor.settled(() => editor.close(MODEL_URI));
    expect(editor.codes(LINE_URI)).toContain('stale-change');
  });

  it('a file deleted on disk takes its definitions and findings with it', async () => {
    editor.disk.delete(LINE_URI);
    await editor.settled(() => editor.changedOnDisk(LINE_URI));
    expect(editor.codes(LINE_URI)).toEqual([]);
    expect(editor.messages(BUILD_URI)).toContain('corrie-1');
    expect(await editor.connection.sendRequest(WorkspaceSymbolRequest.type, { query: 'corrie-2' })).toEqual([]);
    editor.disk.set(LINE_URI, LINE);
    await editor.settled(() => editor.changedOnDisk(LINE_URI));
    expect(editor.messages(BUILD_URI)).not.toContain('corrie-1');
  });
});

/** An answer that is a list, or holds one. */
function listIn(answer: unknown): readonly unknown[] {
  const list = (answer as { items?: unknown } | null)?.items ?? answer;
  return Array.isArray(list) ? (list as unknown[]) : [];
}

describe('many requests at once', () => {
  it('two clients’ worth, mixed with edits: each is answered, and for the text as it stood when asked', async () => {
    const { connection } = editor;
    await editor.settled(() => editor.open(LINE_URI));
    const answers: Promise<unknown>[] = [];
    const thicknesses: Promise<string>[] = [];
    for (let version = 2; version < 22; version++) {
      const thickness = `2.${40 + version} mm`;
      editor.type(LINE_URI, version, LINE.replace('2.80 mm', thickness));
      thicknesses.push(hovered('thickness: 2.80', LINE).then((text) => (text.includes(thickness) ? '' : text)));
      for (let client = 0; client < 2; client++) {
        const textDocument = { uri: client === 0 ? LINE_URI : MODEL_URI };
        answers.push(
          connection.sendRequest(CodeLensRequest.type, { textDocument }),
          connection.sendRequest(DocumentSymbolRequest.type, { textDocument }),
          connection.sendRequest(CompletionRequest.type, at(LINE_URI, LINE, '22 g', 0)),
          connection.sendRequest(ReferencesRequest.type, {
            ...at(LINE_URI, LINE, 'spruce-1'),
            context: { includeDeclaration: true },
          }),
        );
      }
    }
    expect(await Promise.all(thicknesses)).toEqual(thicknesses.map(() => ''));
    expect((await Promise.all(answers)).map(listIn).every(({ length }) => length > 0)).toBe(true);
  });

  it('a request withdrawn while it waits is answered as withdrawn, the others as ever', async () => {
    const { connection } = editor;
    const range = { start: { line: 0, character: 0 }, end: { line: 100, character: 0 } };
    const params = { textDocument: { uri: LINE_URI }, range };
    const source = new CancellationTokenSource();
    const kept = connection.sendRequest(InlayHintRequest.type, params);
    const withdrawn = connection.sendRequest(InlayHintRequest.type, params, source.token);
    const after = connection.sendRequest(InlayHintRequest.type, params);
    source.cancel();
    await expect(withdrawn).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    expect(await kept).not.toEqual([]);
    expect(await after).toEqual(await kept);
  });
});

describe('places and names that make no sense', () => {
  it('are answered with nothing', async () => {
    const { connection } = editor;
    const position = { line: 10_000, character: 10_000 };
    for (const uri of [LINE_URI, 'file:///shop/none.bookmatch', 'untitled:one', 'no uri at all']) {
      const textDocument = { uri };
      expect(await connection.sendRequest(HoverRequest.type, { textDocument, position })).toBeNull();
      expect(listIn(await connection.sendRequest(CompletionRequest.type, { textDocument, position }))).toEqual([]);
    }
  });
});

it('in another language the same folder is answered for', async () => {
  const german = (await openEditor(SHOP, { locale: 'de-AT' })).editor;
  const { connection } = german;
  const hover = await connection.sendRequest(HoverRequest.type, at(LINE_URI, LINE, 'thickness: 2.80'));
  expect((hover!.contents as MarkupContent).value).toContain('2.80 mm');
  const tokens = await connection.sendRequest(SemanticTokensRequest.type, { textDocument: { uri: LINE_URI } });
  expect(tokens!.data.length).toBeGreaterThan(100);
  expect(german.log).toEqual([]);
  await german.quit();
});

describe('a handler', () => {
  const log: string[] = [];
  const told: unknown[] = [];
  const connection = {
    console: { error: (text: string) => void log.push(text) },
    sendNotification: (_: unknown, params: unknown) => void told.push(params),
  } as unknown as Parameters<typeof answering>[0];
  const { answer } = answering(connection, () => ENGLISH);
  const token = (isCancellationRequested: boolean) => ({
    isCancellationRequested,
    onCancellationRequested: () => ({ dispose: () => undefined }),
  });

  it('does not begin work that is no longer wanted', () => {
    let worked = false;
    const handler = answer<number, number[]>([], (n) => {
      worked = true;
      return [n];
    });
    expect(handler(1, token(true))).toBeInstanceOf(ResponseError);
    expect(worked).toBe(false);
    expect(handler(1, token(false))).toEqual([1]);
  });

  it('answers with nothing when it meets a fault, and says so in the log', async () => {
    const fault = () => {
      throw new Error('a fault of its own');
    };
    expect(answer<number, number[]>([], fault)(1, token(false))).toEqual([]);
    expect(told).toHaveLength(1);
    await guarded(connection, fault)(undefined);
    expect(log).toHaveLength(2);
    expect(log.every((text) => text.includes('a fault of its own'))).toBe(true);
  });
});
