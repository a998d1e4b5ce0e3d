/** Semantic tokens over the protocol: whole files, parts, differences, many at once. */
import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  type SemanticTokens,
  type SemanticTokensDelta,
  SemanticTokensDeltaRequest,
  SemanticTokensRangeRequest,
  SemanticTokensRequest,
} from 'vscode-languageserver/node';
import { difference, LEGEND } from '../../language/server/requests/semantic-tokens-requests.js';
import { openEditor, type OpenEditor, placeOf } from './client.js';
import { LINE, LINE_URI, MODEL, MODEL_URI, SHOP } from './shop.js';

let open: OpenEditor;
const ask = () => open.editor.connection;
beforeEach(async () => {
  open = await openEditor(SHOP);
});
afterEach(async () => {
  expect(open.editor.log).toEqual([]);
  await open.editor.quit();
});

const whole = (uri: string) => ask().sendRequest(SemanticTokensRequest.type, { textDocument: { uri } });

/** `word=type+modifiers`, as a client would read the numbers. */
function decoded(text: string, data: readonly number[]): readonly string[] {
  const { tokenTypes, tokenModifiers } = open.initialized.capabilities.semanticTokensProvider!.legend;
  const lines = text.split('\n');
  const words: string[] = [];
  let [line, character] = [0, 0];
  for (let i = 0; i < data.length; i += 5) {
    const [down, along, length, type, bits] = data.slice(i, i + 5) as [number, number, number, number, number];
    if (down > 0) [line, character] = [line + down, 0];
    character += along;
    const modifiers = tokenModifiers.filter((_, bit) => bits & (1 << bit));
    words.push([`${lines[line]!.slice(character, character + length)}=${tokenTypes[type]}`, ...modifiers].join('+'));
  }
  return words;
}

it('say what each word is, in the protocol’s own words', async () => {
  const words = decoded(LINE, (await whole(LINE_URI))!.data);
  expect(words.slice(0, 4)).toEqual([
    'recipe=keyword+declaration',
    'corrie-1=class+declaration',
    'for=modifier',
    'corrie=interface',
  ]);
  expect(words).toContain('"A lighter bridge."=string+documentation');
  expect(words).toContain('along=function+readonly');
  expect((await whole('file:///shop/none.bookmatch'))!.data).toEqual([]);
});

it('of a part are those of the whole', async () => {
  const range = { start: placeOf(LINE, 'change bridge'), end: placeOf(LINE, '27 g -> 22 g', 12) };
  const part = await ask().sendRequest(SemanticTokensRangeRequest.type, { textDocument: { uri: LINE_URI }, range });
  expect(decoded(LINE, part!.data)).toEqual([
    'change=keyword',
    'bridge=parameter',
    'mass=property+modification',
    '27=number+readonly',
    'g=typeParameter+readonly',
    '->=operator',
    '22=number',
    'g=typeParameter',
  ]);
});

describe('what changed', () => {
  it('is told against what was sent, and gives the whole', async () => {
    open.editor.open(LINE_URI);
    const before = (await whole(LINE_URI))!;
    const text = LINE.replace('because "A lighter bridge."', 'because "A lighter bridge."\n  bridge.length: 150 mm');
    open.editor.type(LINE_URI, 2, text);
    const delta = (await ask().sendRequest(SemanticTokensDeltaRequest.type, {
      textDocument: { uri: LINE_URI },
      previousResultId: before.resultId!,
    })) as SemanticTokensDelta;
    expect(delta.edits).toHaveLength(1);
    expect(delta.edits[0]!.data!.length).toBeLessThan(50);
    const after = (await whole(LINE_URI))!;
    expect(applied(before, delta)).toEqual(after.data);
    expect(decoded(text, after.data)).toContain('length=property');
  });

  it('since an answer the server does not know is everything', async () => {
    const params = { textDocument: { uri: LINE_URI }, previousResultId: 'of yesterday' };
    const answer = (await ask().sendRequest(SemanticTokensDeltaRequest.type, params)) as SemanticTokens;
    expect(answer.data).toEqual((await whole(LINE_URI))!.data);
  });

  it('in two lists of numbers is what lies between what they share', () => {
    expect(difference([1, 2, 3], [1, 2, 3])).toEqual([]);
    expect(difference([1, 2, 3], [1, 9, 3])).toEqual([{ start: 1, deleteCount: 1, data: [9] }]);
    expect(difference([1, 1], [1, 1, 1])).toEqual([{ start: 2, deleteCount: 0, data: [1] }]);
    expect(difference([], [4])).toEqual([{ start: 0, deleteCount: 0, data: [4] }]);
    expect(difference([4, 4], [])).toEqual([{ start: 0, deleteCount: 2, data: [] }]);
  });
});

it('two files at once, between edits: each answer is of its own file, and of the text as it stood', async () => {
  open.editor.open(LINE_URI);
  const asked: Promise<void>[] = [];
  const model = (await whole(MODEL_URI))!.data;
  expect(decoded(MODEL, model)).toContain('spruce-2=struct+declaration');
  for (let version = 2; version < 30; version++) {
    const text = LINE.replace('corrie-3', `corrie-${version * 7}`);
    open.editor.type(LINE_URI, version, text);
    asked.push(
      whole(LINE_URI).then((answer) => {
        expect(decoded(text, answer!.data)).toContain(`corrie-${version * 7}=class+declaration`);
      }),
      whole(MODEL_URI).then((answer) => {
        expect(answer!.data).toEqual(model);
      }),
    );
  }
  const results = await Promise.all(asked);
  expect(results).toHaveLength(56);
});

it('every type has a colour of the grammar in the manifest, and no other has', () => {
  const manifest = JSON.parse(readFileSync('package.json', 'utf8')) as {
    contributes: { semanticTokenScopes: { language: string; scopes: Record<string, string[]> }[] };
  };
  const grammar = readFileSync('syntaxes/bookmatch.tmLanguage.json', 'utf8');
  const { scopes } = manifest.contributes.semanticTokenScopes[0]!;
  const types = Object.keys(scopes).filter((selector) => !selector.includes('.'));
  expect(types.sort()).toEqual([...LEGEND.tokenTypes].sort());
  // Names of definitions have one colour in the grammar, and may have one for each kind here.
  const painted = Object.values(scopes)
    .flat()
    .filter((scope) => grammar.includes(`"${scope}"`));
  expect(painted.length).toBeGreaterThanOrEqual(8);
});

function applied(before: SemanticTokens, { edits }: SemanticTokensDelta): readonly number[] {
  const data = [...before.data];
  for (const { start, deleteCount, data: inserted } of edits) data.splice(start, deleteCount, ...(inserted ?? []));
  return data;
}
