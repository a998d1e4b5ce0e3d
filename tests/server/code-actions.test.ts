/** Fixes, acceptances and refactorings over the protocol: kinds, versions, reasons, snippets. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  type CodeAction,
  CodeActionRequest,
  type Range,
  type SnippetTextEdit,
  type TextDocumentEdit,
  type TextEdit,
} from 'vscode-languageserver/node';
import { type Editor, openEditor, placeOf } from './client.js';
import { LINE, LINE_URI, SHOP } from './shop.js';

const TWO = LINE.replace(
  'change bridge.mass: 27 g -> 22 g',
  'change bridge.mass: 27 g -> 22 g\n  top.thickness: 2.6 mm',
);

let editor: Editor;
async function start(can: { readonly snippets?: boolean; readonly disabled?: boolean } = {}, text = TWO) {
  ({ editor } = await openEditor(SHOP, {
    textDocument: { codeAction: { disabledSupport: can.disabled ?? false } },
    workspace: { workspaceEdit: { snippetEditSupport: can.snippets ?? false } },
  }));
  await editor.settled(() => editor.open(LINE_URI, text, 3));
}
afterEach(async () => {
  expect(editor.log).toEqual([]);
  await editor.quit();
});

async function actions(from: string, to = from, only?: string[]): Promise<readonly CodeAction[]> {
  const range: Range = { start: placeOf(TWO, from), end: placeOf(TWO, to, to === from ? 0 : to.length) };
  const params = { textDocument: { uri: LINE_URI }, range, context: { diagnostics: [], ...(only ? { only } : {}) } };
  return ((await editor.connection.sendRequest(CodeActionRequest.type, params)) ?? []) as readonly CodeAction[];
}

const editsOf = (action: CodeAction) => (action.edit!.documentChanges![0] as TextDocumentEdit).edits;

describe('refactorings', () => {
  beforeEach(() => start());

  it('come with their kind and the version they are for, beside the fixes', async () => {
    const all = await actions('top.thickness: 2.6');
    const change = all.find(({ kind }) => kind === 'refactor.rewrite')!;
    expect(change.title).toBe('Write as a change of what the parent has');
    const [file] = change.edit!.documentChanges as TextDocumentEdit[];
    expect(file!.textDocument).toEqual({ uri: LINE_URI, version: 3 });
    expect(all.some(({ kind }) => kind === 'quickfix')).toBe(true);
  });

  it('only of the kind that is asked for', async () => {
    const kinds = async (only: string[]) =>
      new Set((await actions('corrie-3 from', 'corrie-3 from', only)).map(({ kind }) => kind));
    expect(await kinds(['refactor'])).toEqual(new Set(['refactor.extract', 'refactor.inline', 'refactor.move']));
    expect(await kinds(['refactor.extract'])).toEqual(new Set(['refactor.extract']));
    expect(await kinds(['quickfix'])).toEqual(new Set(['quickfix']));
    expect(await kinds(['source.organizeImports'])).toEqual(new Set());
    expect(await kinds(['refactor.extracted'])).toEqual(new Set());
  });

  it('one that cannot be done is not offered to an editor that could not show why', async () => {
    const all = await actions('corrie-2 from', 'corrie-2 from', ['refactor']);
    expect(all.every(({ disabled, edit }) => disabled === undefined && edit !== undefined)).toBe(true);
  });
});

it('the reason of one that cannot be done is told to whoever asks for refactorings, and to nobody else', async () => {
  await start({ disabled: true });
  const asked = await actions('corrie-2 from', 'corrie-2 from', ['refactor']);
  const inline = asked.find(({ kind }) => kind === 'refactor.inline')!;
  expect(inline.edit).toBeUndefined();
  expect(inline.disabled!.reason).toContain('corrie-1 is the first of its line');
  const all = await actions('corrie-2 from');
  expect(all.every(({ disabled }) => disabled === undefined)).toBe(true);
});

describe('accepting a finding in place', () => {
  it('writes the line with the reason to be typed into a snippet', async () => {
    await start({ snippets: true });
    const all = await actions('corrie-3 from');
    const accept = all.find(({ title }) => title.startsWith('Accept too-many-changes'))!;
    const [edit] = editsOf(accept) as SnippetTextEdit[];
    expect(edit!.snippet.value).toBe('accept too-many-changes because "${1}"\n');
    expect(accept.diagnostics![0]!.code).toBe('too-many-changes');
    const group = all.find(({ title }) => title.startsWith('Group'))!;
    const snippet = (editsOf(group) as SnippetTextEdit[]).find((one) => 'snippet' in one)!;
    expect(snippet.snippet.value).toBe(
      'together "${1}" {\n  change bridge.mass: 27 g -> 22 g\n  top.thickness: 2.6 mm\n\\}',
    );
  });

  it('without snippets leaves the reason empty: the finding stays until it is filled in, then goes', async () => {
    await start();
    const accept = (await actions('corrie-3 from')).find(({ title }) => title.startsWith('Accept too-many-changes'))!;
    const [edit] = editsOf(accept) as TextEdit[];
    expect(edit!.newText).toBe('accept too-many-changes because ""\n  ');
    const accepted = (reason: string) =>
      TWO.replace('change bridge', `accept too-many-changes because "${reason}"\n  change bridge`);
    await editor.settled(() => editor.type(LINE_URI, 4, accepted('')));
    expect(editor.codes(LINE_URI)).toEqual(expect.arrayContaining(['too-many-changes', 'acceptance-without-reason']));
    await editor.settled(() => editor.type(LINE_URI, 5, accepted('A client asked.')));
    expect(editor.codes(LINE_URI)).not.toContain('too-many-changes');
    expect(editor.codes(LINE_URI)).not.toContain('acceptance-without-reason');
  });

  it('that is needed no more is reported, with a fix that takes it out', async () => {
    await start({}, LINE.replace('change bridge', 'accept too-many-changes because "x"\n  change bridge'));
    expect(editor.codes(LINE_URI)).toContain('stale-acceptance');
  });

  it('is not offered for an error', async () => {
    await start({}, TWO.replace('2.6 mm', '2.6 mmm'));
    const all = await actions('top.thickness: 2.6', '2.6 mm');
    expect(all.some(({ title }) => title.includes('Write'))).toBe(true);
    expect(all.some(({ title }) => title.startsWith('Accept unknown-unit'))).toBe(false);
  });
});
