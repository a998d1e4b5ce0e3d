/** A page to print on the desktop: what is written, where, that it is opened, and that it does not lie about for ever. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { readdir, stat, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { ExtensionContext } from 'vscode';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { openPrintable, opensPages, removeOldPrintables } from '../../extension/panels/open-printable.js';

/** As much of the editor as printing meets, on real files. */
const editor = vi.hoisted(() => ({
  env: { uiKind: 1, remoteName: undefined as string | undefined, openExternal: vi.fn() },
  window: { showInformationMessage: vi.fn(), showErrorMessage: vi.fn(), showSaveDialog: vi.fn() },
}));

interface Place {
  readonly fsPath: string;
}

vi.mock('vscode', async () => {
  const { mkdir } = await import('node:fs/promises');
  return {
    ...editor,
    UIKind: { Desktop: 1, Web: 2 },
    FileType: { File: 1, Directory: 2 },
    Uri: { joinPath: ({ fsPath }: Place, ...parts: string[]) => ({ fsPath: join(fsPath, ...parts) }) },
    l10n: { t: (english: string) => english },
    workspace: {
      workspaceFolders: undefined,
      fs: {
        createDirectory: ({ fsPath }: Place) => mkdir(fsPath, { recursive: true }),
        writeFile: ({ fsPath }: Place, bytes: Uint8Array) => writeFile(fsPath, bytes),
        readDirectory: async ({ fsPath }: Place) =>
          (await readdir(fsPath, { withFileTypes: true })).map((each) => [each.name, each.isFile() ? 1 : 2]),
        stat: async ({ fsPath }: Place) => ({ mtime: (await stat(fsPath)).mtimeMs }),
        delete: ({ fsPath }: Place) => rm(fsPath),
      },
    },
  };
});

let storage: string;
let context: ExtensionContext;
const { env, window } = editor;
const DAY = 24 * 60 * 60 * 1000;
const PAGE = '<!DOCTYPE html>\n<title>Fichte – 2,66 mm</title>\n';
const printed = () => readdirSync(join(storage, 'print')).sort();

beforeEach(() => {
  storage = join(mkdtempSync(join(tmpdir(), 'printed-')), 'not there yet');
  context = { globalStorageUri: { fsPath: storage } } as unknown as ExtensionContext;
  env.openExternal.mockReset().mockResolvedValue(true);
  for (const ask of Object.values(window)) ask.mockReset().mockResolvedValue(undefined);
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(join(storage, '..'), { recursive: true });
});

it('is written as it is into the editor’s own folder, and opened from there', async () => {
  await openPrintable(context, 'vennick-38-bench', PAGE);
  const file = join(storage, 'print', 'vennick-38-bench.html');
  expect(readFileSync(file, 'utf8')).toBe(PAGE);
  expect(env.openExternal.mock.calls).toEqual([[{ fsPath: file }]]);
  expect(window.showInformationMessage).toHaveBeenCalledOnce();
  expect(window.showErrorMessage).not.toHaveBeenCalled();
});

it('stays in that folder, under a name that any system and any address takes', async () => {
  await openPrintable(context, '../../x y#1?ä/b', PAGE);
  expect(printed()).toEqual(['-x-y-1-ä-b.html']);
  const { href } = pathToFileURL(join(storage, 'print', printed()[0]!));
  expect(href).not.toMatch(/[#?]/);
});

it('takes the place of the one before, and pages of the day before are taken away', async () => {
  await openPrintable(context, 'old', PAGE);
  await openPrintable(context, 'today', PAGE);
  const long = new Date(Date.now() - DAY - 1000);
  utimesSync(join(storage, 'print', 'old.html'), long, long);
  writeFileSync(join(storage, 'print', 'notes.txt'), 'not ours');
  utimesSync(join(storage, 'print', 'notes.txt'), long, long);
  await openPrintable(context, 'today', 'new');
  expect(printed()).toEqual(['notes.txt', 'today.html']);
  expect(readFileSync(join(storage, 'print', 'today.html'), 'utf8')).toBe('new');
});

it('is taken away when the editor starts, too; where nothing was printed nothing is said', async () => {
  await removeOldPrintables(context);
  await openPrintable(context, 'one', PAGE);
  await removeOldPrintables(context, Date.now() + DAY - 5000);
  expect(printed()).toEqual(['one.html']);
  await removeOldPrintables(context, Date.now() + DAY + 5000);
  expect(printed()).toEqual([]);
});

it('can be saved elsewhere, where the browser may not read that folder', async () => {
  const copy = join(storage, '..', 'copy.html');
  window.showInformationMessage.mockImplementation((_, button: string) => Promise.resolve(button));
  window.showSaveDialog.mockResolvedValue({ fsPath: copy });
  await openPrintable(context, 'vennick-38-bench', PAGE);
  await vi.waitFor(() => expect(readFileSync(copy, 'utf8')).toBe(PAGE));
});

it('that nothing opens, or that cannot be written, is told, and a copy can still be saved', async () => {
  const copy = join(storage, '..', 'copy.html');
  window.showErrorMessage.mockImplementation((_, button: string) => Promise.resolve(button));
  window.showSaveDialog.mockResolvedValue({ fsPath: copy });
  env.openExternal.mockResolvedValue(false);
  vi.spyOn(console, 'error').mockImplementation(() => undefined);
  await openPrintable(context, 'one', PAGE);
  await vi.waitFor(() => expect(readFileSync(copy, 'utf8')).toBe(PAGE));
  rmSync(copy);
  rmSync(storage, { recursive: true });
  writeFileSync(storage, 'a file where the folder should be');
  await openPrintable(context, 'one', PAGE);
  await vi.waitFor(() => expect(readFileSync(copy, 'utf8')).toBe(PAGE));
  expect(window.showInformationMessage).not.toHaveBeenCalled();
  // The place chosen cannot be written either.
  mkdirSync(join(storage, '..', 'folder'));
  window.showErrorMessage.mockClear();
  window.showSaveDialog.mockResolvedValue({ fsPath: join(storage, '..', 'folder') });
  await openPrintable(context, 'one', PAGE);
  await vi.waitFor(() => expect(window.showErrorMessage).toHaveBeenCalledTimes(2));
});

it('is opened on the desktop alone; over a network or in a browser it is handed over as a file', () => {
  expect(opensPages()).toBe(true);
  env.remoteName = 'ssh-remote';
  expect(opensPages()).toBe(false);
  env.remoteName = undefined;
  env.uiKind = 2;
  expect(opensPages()).toBe(false);
  env.uiKind = 1;
});
