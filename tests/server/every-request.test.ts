/** Every request the server offers: answered, withdrawn, and asked of places and files that make no sense. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CancellationTokenSource, DocumentOnTypeFormattingRequest, LSPErrorCodes } from 'vscode-languageserver/node';
import { type Asked, FILES, OWN, REQUESTS, TEXT } from './asked-of-all.js';
import { openEditor, type OpenEditor } from './client.js';
import { LINE_URI, MODEL_URI } from './shop.js';

let open: OpenEditor;
const ask = ({ method, params }: Asked, token?: CancellationTokenSource['token']): Promise<unknown> =>
  token
    ? open.editor.connection.sendRequest(method, params, token)
    : open.editor.connection.sendRequest(method, params);

beforeAll(async () => {
  open = await openEditor(FILES);
  await open.editor.settled(() => open.editor.open(LINE_URI, TEXT, 1));
});
afterAll(async () => {
  expect(open.editor.log).toEqual([]);
  await open.editor.quit();
});

const offered = () => Object.keys(open.initialized.capabilities).filter((key) => key.endsWith('Provider'));
const all = () => offered().flatMap((key) => REQUESTS[key] ?? []);

function saysNothing(answer: unknown): boolean {
  if (answer === null || answer === undefined) return true;
  if (Array.isArray(answer)) return answer.length === 0;
  const { data, items } = answer as { data?: unknown[]; items?: unknown[] };
  return data?.length === 0 || items?.length === 0;
}

it('each that is offered is asked here', () => {
  expect(offered().filter((key) => REQUESTS[key] === undefined)).toEqual([]);
});

it('each has something to say where there is something', async () => {
  for (const asked of all()) {
    // Nothing is to be laid out after a brace that stands well.
    if (asked.method === DocumentOnTypeFormattingRequest.method) continue;
    expect(saysNothing(await ask(asked)), asked.method).toBe(false);
  }
});

it('the source is a link, and who sets a value is told from who reads it', async () => {
  const [links, places] = await Promise.all([
    ask(REQUESTS['documentLinkProvider']![0]!),
    ask(REQUESTS['documentHighlightProvider']![0]!),
  ]);
  expect(links).toMatchObject([{ target: 'https://example.org/bridges' }]);
  expect(places).toMatchObject([{ kind: 3 }]);
});

it('each that is withdrawn while it waits is answered as withdrawn, and the next as ever', async () => {
  for (const asked of all()) {
    const source = new CancellationTokenSource();
    const before = ask(asked);
    const withdrawn = ask(asked, source.token);
    source.cancel();
    await expect(withdrawn, asked.method).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    await before;
    await expect(ask(asked), asked.method).resolves.toBeDefined();
  }
});

it('requests of our own are withdrawn like any other', async () => {
  const { connection } = open.editor;
  expect(OWN.length).toBeGreaterThan(5);
  for (const { method, numberOfParams } of OWN) {
    const source = new CancellationTokenSource();
    const before = ask(REQUESTS['hoverProvider']![0]!);
    const withdrawn =
      numberOfParams === 0
        ? connection.sendRequest(method, source.token)
        : connection.sendRequest(method, {}, source.token);
    source.cancel();
    await expect(withdrawn, method).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    await before;
  }
});

it('two clients’ worth of everything at once, while the text changes: nobody waits for ever, nobody is refused', async () => {
  const twice = [...all(), ...all()];
  let version = 2;
  const rounds = Array.from({ length: 4 }, () => {
    open.editor.type(LINE_URI, version, TEXT.replace('21 g', `2${version++} g`));
    return twice.map((asked) => ask(asked));
  });
  const answers = await Promise.all(rounds.flat());
  expect(answers).toHaveLength(twice.length * 4);
  await open.editor.settled(() => open.editor.type(LINE_URI, version, TEXT));
});

describe('places and files that make no sense', () => {
  const position = { line: 100_000, character: 100_000 };
  const beyond = { start: position, end: { line: 100_001, character: 0 } };
  const backwards = { start: { line: 5, character: 3 }, end: { line: 1, character: 0 } };

  it.each(['file:///shop/none.bookmatch', 'untitled:one', 'no uri at all', MODEL_URI])('%s', async (uri) => {
    for (const range of [beyond, backwards]) {
      for (const { method, params } of all()) {
        const strange = {
          ...params,
          ...('textDocument' in params ? { textDocument: { uri } } : {}),
          ...('position' in params ? { position } : {}),
          ...('positions' in params ? { positions: [position] } : {}),
          ...('range' in params ? { range } : {}),
        };
        const answer = await ask({ method, params: strange }).catch((refusal: unknown) => refusal);
        // A rename is refused in words; whatever else is asked is answered.
        const code = (answer as { code?: number } | null)?.code;
        expect([undefined, LSPErrorCodes.RequestFailed], `${method} ${uri}`).toContain(code);
      }
    }
  });
});
