/** What a command of the editor writes into recipes: nothing, when the text is no longer the one it was worked out for. */
import { beforeEach, expect, it, vi } from 'vitest';
import { writeEdit } from '../../extension/write-edit.js';

const editor = vi.hoisted(() => ({
  workspace: {
    textDocuments: [] as { uri: { path: string; toString(): string }; version: number; isDirty: boolean }[],
    applyEdit: vi.fn(),
    asRelativePath: (path: string) => path.split('/').at(-1),
  },
  window: { showWarningMessage: vi.fn() },
}));
vi.mock('vscode', () => ({ ...editor, l10n: { t: (text: string, name: string) => text.replace('{0}', name) } }));

const { workspace, window } = editor;
const client = {
  protocol2CodeConverter: { asWorkspaceEdit: (edit: unknown) => Promise.resolve(edit) },
} as unknown as Parameters<typeof writeEdit>[0];
const edit = (version: number | null, uri = 'file:///shop/a%20%5Bb%5D.bookmatch') => ({
  documentChanges: [{ textDocument: { uri, version }, edits: [] }],
});
const opened = (version: number, isDirty = true) => {
  const uri = { path: '/shop/a [b].bookmatch', toString: (): string => 'file:///shop/a%20[b].bookmatch' };
  workspace.textDocuments = [{ uri, version, isDirty }];
};

beforeEach(() => {
  workspace.textDocuments = [];
  workspace.applyEdit.mockReset().mockResolvedValue(true);
  window.showWarningMessage.mockReset();
});

it('is written into the text it was made for', async () => {
  opened(7);
  expect(await writeEdit(client, edit(7), 'refused')).toBe(true);
  opened(7, false);
  expect(await writeEdit(client, edit(null), 'refused')).toBe(true);
  workspace.textDocuments = [];
  expect(await writeEdit(client, edit(null), 'refused')).toBe(true);
  expect(workspace.applyEdit).toHaveBeenCalledTimes(3);
  expect(window.showWarningMessage).not.toHaveBeenCalled();
});

it.each([
  ['typed in since', 7, (): void => opened(8)],
  ['closed since', 7, (): void => undefined],
  ['opened and typed in since', null, (): void => opened(2)],
] as const)('is not written into a text %s, and that is said', async (_, version, arrange) => {
  arrange();
  expect(await writeEdit(client, edit(version), 'refused')).toBe(false);
  expect(workspace.applyEdit).not.toHaveBeenCalled();
  expect(window.showWarningMessage.mock.calls).toEqual([
    ['a [b].bookmatch has changed meanwhile: nothing was written. Ask once more.'],
  ]);
});

it('says so when there is nothing to write, or the editor refuses', async () => {
  expect(await writeEdit(client, undefined, 'refused')).toBe(false);
  workspace.applyEdit.mockResolvedValue(false);
  expect(await writeEdit(client, edit(null), 'refused')).toBe(false);
  expect(window.showWarningMessage.mock.calls).toEqual([['refused'], ['refused']]);
});
