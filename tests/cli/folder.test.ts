import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { DISK } from '../../language/cli/disk.js';

const root = realpathSync(mkdtempSync(join(tmpdir(), 'recipes-')));
afterAll(() => rmSync(root, { recursive: true }));

function put(path: string, text: string | Uint8Array): string {
  const full = join(root, path);
  mkdirSync(join(full, '..'), { recursive: true });
  writeFileSync(full, text);
  return full;
}

const b = put('b.bookmatch', '\uFEFFshop wick { }');
const a = put('deep/down/a.bookmatch', 'shop wick { }');
put('node_modules/x/c.bookmatch', '');
put('.hidden/d.bookmatch', '');
put('notes.txt', '');
mkdirSync(join(root, 'folder.bookmatch'));

it('lists recipe files in a folder and below, but not in hidden folders or installed packages', async () => {
  expect(await DISK.find(root)).toEqual({ files: [b, a], leftOut: [] });
});

it('finds nothing in a folder that is not there, and says so', async () => {
  const nowhere = join(root, 'nowhere');
  expect(await DISK.find(nowhere)).toEqual({
    files: [],
    leftOut: [{ path: nowhere, trouble: 'it is no longer there' }],
  });
});

it('tells a folder, a file and nothing apart, whatever their names end in', async () => {
  expect(await DISK.kindOf(join(root, 'folder.bookmatch'))).toBe('folder');
  expect(await DISK.kindOf(b)).toBe('file');
  expect(await DISK.kindOf(join(root, 'nowhere'))).toBe('nothing');
});

it('reads a text without the mark some editors put before it', async () => {
  expect(await DISK.read(b)).toMatchObject({ text: 'shop wick { }', mark: true });
});

it('reads a text another program saved its own way, and says that it did', async () => {
  const utf16 = put('utf16.txt', Buffer.from('\uFEFFnote "höher"', 'utf16le'));
  const latin = put('latin.txt', Buffer.from('note "höher"', 'latin1'));
  expect(await DISK.read(utf16)).toMatchObject({ text: 'note "höher"', foreign: true });
  expect(await DISK.read(latin)).toMatchObject({ text: 'note "höher"', foreign: true });
  const plain = await DISK.read(put('plain.txt', 'note "höher"'));
  expect(plain).toEqual({ text: 'note "höher"', bytes: Buffer.from('note "höher"') });
});

it('says why a file cannot be read', async () => {
  expect(await DISK.read(join(root, 'nowhere.bookmatch'))).toEqual({ trouble: 'it is no longer there' });
  expect(await DISK.read(join(root, 'folder.bookmatch'))).toEqual({ trouble: 'it is a folder' });
});
