/** A fault of our own, on purpose, in everything an editor and our own panels ask for, and in reading. */
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { LSPErrorCodes } from 'vscode-languageserver/node';
import type { Desk } from '../../language/checks/desk.js';
import { createParser, readFile } from '../../language/recipes/shelf/reader.js';
import { Session } from '../../language/server/session.js';
import { FILES, OWN, REQUESTS, TEXT } from './asked-of-all.js';
import { openEditor, type OpenEditor } from './client.js';
import { LINE_URI, MODEL_URI } from './shop.js';

let armed = false;
let thrown = 0;

/** The same thing; while it is armed, whatever is asked of it throws. */
function trapped<T extends object>(of: T): T {
  return new Proxy(of, {
    get(target, key) {
      if (armed) {
        thrown++;
        throw new TypeError('thrown on purpose');
      }
      const value: unknown = Reflect.get(target, key, target);
      if (typeof value === 'function') return (value as (this: T) => unknown).bind(target);
      return key === 'workshop' || key === 'shelf' || key === 'checks' ? trapped(value as object) : value;
    },
  });
}

function getter(key: 'desk' | 'parser'): (session: Session) => object {
  const descriptor = Object.getOwnPropertyDescriptor(Session.prototype, key)!;
  return (session) => descriptor.get!.call(session) as object;
}

let open: OpenEditor;

beforeAll(async () => {
  for (const key of ['desk', 'parser'] as const) {
    const get = getter(key);
    vi.spyOn(Session.prototype, key, 'get').mockImplementation(function (this: Session) {
      return trapped(get(this)) as Desk & Session['parser'];
    });
  }
  open = await openEditor(FILES);
  await open.editor.settled(() => open.editor.open(LINE_URI, TEXT, 1));
});
afterEach(() => {
  armed = false;
});
afterAll(async () => {
  await open.editor.quit();
  vi.restoreAllMocks();
});

/** All that any of our own requests may want to know. */
const PARAMS = {
  ...{
    name: 'corrie-2',
    recipe: 'corrie-2',
    model: 'corrie',
    a: 'corrie-1',
    b: 'corrie-2',
    build: 'no-1',
    uri: LINE_URI,
  },
  ...{
    plate: 'top',
    kind: 'setup',
    parent: 'corrie-1',
    wood: 'spruce-2',
    wish: '',
    readings: [],
    parts: [],
    format: 'svg',
  },
};

const FAULT = /^Bookmatch met a fault of its own and left this answer out; .* thrown on purpose\.$/;

it('in what an editor asks for: no answer is an error, the person is told once, and it is in the log', async () => {
  const { capabilities } = open.initialized;
  const offered = Object.entries(REQUESTS).flatMap(([key, asked]) => (key in capabilities ? asked : []));
  armed = true;
  const reached: string[] = [];
  for (const { method, params } of offered) {
    const before = thrown;
    await open.editor.connection.sendRequest(method, params);
    if (thrown > before) reached.push(method);
  }
  armed = false;
  // A folder's link or a fold may be told without asking the desk for anything.
  expect(reached.length).toBeGreaterThan(offered.length - 6);
  expect(open.editor.told).toEqual([expect.stringMatching(FAULT)]);
  expect(open.editor.log.length).toBeGreaterThanOrEqual(reached.length);
  expect(open.editor.log.join('\n')).toContain('TypeError: thrown on purpose');
});

describe('in what our own panels and commands ask for: the sentence comes in place of an answer', () => {
  it.each(OWN.map((one) => [one.method, one] as const))('%s', async (_, { method, numberOfParams }) => {
    const { connection } = open.editor;
    const ask = () => (numberOfParams === 0 ? connection.sendRequest(method) : connection.sendRequest(method, PARAMS));
    armed = true;
    const before = thrown;
    const answer: unknown = await ask().catch((refusal: unknown) => refusal);
    armed = false;
    if (thrown === before) {
      expect(NEED_NO_DESK).toContain(method);
      return;
    }
    const trouble = (answer as { trouble?: string } | null)?.trouble;
    if (trouble === undefined) {
      expect(answer).toMatchObject({
        code: LSPErrorCodes.RequestFailed,
        message: expect.stringMatching(FAULT) as string,
      });
    } else expect(trouble).toMatch(/\.$/);
    // And the next is answered as ever.
    const next: unknown = await ask().catch((refusal: unknown) => refusal);
    expect((next as { message?: unknown } | null)?.message ?? '').not.toMatch(FAULT);
  });
});

/** Answered from what the extension brings with it. */
const NEED_NO_DESK: readonly string[] = ['bookmatch/libraryText', 'bookmatch/starterShop'];

describe('in reading', () => {
  const parser = createParser();
  const text = FILES[MODEL_URI];

  it('a definition: it has the fault for its finding, is found by its name, and the others are read', () => {
    const log: string[] = [];
    const faulty: typeof parser = Object.create(parser, {
      read: {
        value: (...[file, cut]: Parameters<typeof parser.read>) => {
          if (cut.source.startsWith('wood spruce-1')) throw new RangeError('thrown on purpose');
          return parser.read(file, cut);
        },
      },
    }) as typeof parser;
    const sound = readFile(MODEL_URI, text, parser);
    const { definitions, problems } = readFile(MODEL_URI, text, faulty, undefined, ({ doing }) => log.push(doing));
    expect(problems).toEqual([]);
    expect(definitions.map(({ definition: { kind, name } }) => `${kind} ${name.text}`)).toEqual(
      sound.definitions.map(({ definition: { kind, name } }) => `${kind} ${name.text}`),
    );
    for (const [i, { definition, line }] of definitions.entries()) {
      expect(line).toBe(sound.definitions[i]!.line);
      if (definition.name.text === 'spruce-1') {
        expect(definition.problems).toMatchObject([{ code: 'own-fault', span: definition.head }]);
        expect(definition.problems[0]!.message).toContain('RangeError: thrown on purpose');
      } else expect(definition).toEqual(sound.definitions[i]!.definition);
    }
    expect(log).toEqual(['reading']);
  });

  it('a file: it says so at its first line', () => {
    const faulty = Object.create(parser, {
      cut: {
        value: () => {
          throw new RangeError('thrown on purpose');
        },
      },
    }) as typeof parser;
    expect(readFile(MODEL_URI, text, faulty)).toMatchObject({ definitions: [], problems: [{ code: 'own-fault' }] });
  });
});
