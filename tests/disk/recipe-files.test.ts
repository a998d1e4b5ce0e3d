/** What is found in a folder and read: odd names, pipes, giants, rings of links, what is not to be read. */
import { spawnSync } from 'node:child_process';
import { createServer } from 'node:net';
import { mkdirSync, renameSync, symlinkSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, it } from 'vitest';
import { readRecipeFile } from '../../language/disk/read-file.js';
import { MOST_BYTES } from '../../language/disk/troubles.js';
import { recipeFilesIn } from '../../language/disk/recipe-files.js';
import { diskFolder } from '../../language/server/disk-folder.js';
import { aFolder } from './a-folder.js';

const NOBODY = () => undefined;
const shop = aFolder('walk');
const at = (path: string) => join(shop.path, path);

it('looks into folders, but not into hidden ones, installed packages and links', async () => {
  const files = [shop.put('plain/a.bookmatch', ''), shop.put('plain/deep/down/b.bookmatch', '')];
  shop.put('plain/.hidden/c.bookmatch', '');
  shop.put('plain/node_modules/x/d.bookmatch', '');
  shop.put('plain/notes.txt', '');
  symlinkSync('.', at('plain/ring'));
  symlinkSync('/', at('plain/everything'));
  symlinkSync('../deep', at('plain/deep/up'));
  expect(await recipeFilesIn(at('plain'))).toEqual({ files, leftOut: [] });
  expect(await recipeFilesIn(at('plain/ring'))).toMatchObject({ leftOut: [] });
});

it('follows a link to a file, and tells a file once', async () => {
  const file = shop.put('links/z.bookmatch', '');
  const elsewhere = shop.put('elsewhere/far.bookmatch', '');
  symlinkSync('z.bookmatch', at('links/a.bookmatch'));
  symlinkSync(elsewhere, at('links/b.bookmatch'));
  symlinkSync('b.bookmatch', at('links/c.bookmatch'));
  symlinkSync('nowhere', at('links/d.bookmatch'));
  symlinkSync('e.bookmatch', at('links/e.bookmatch'));
  expect(await recipeFilesIn(at('links'))).toEqual({
    files: [at('links/b.bookmatch'), file],
    leftOut: ['d', 'e'].map((name) => ({ path: at(`links/${name}.bookmatch`), trouble: 'it is a link to nothing' })),
  });
});

it('tells what cannot be read, and waits for none of it', { timeout: 5_000 }, async () => {
  mkdirSync(at('odd/folder.bookmatch'), { recursive: true });
  const file = shop.put('odd/a.bookmatch', 'shop a { }');
  spawnSync('mkfifo', [at('odd/pipe.bookmatch')]);
  symlinkSync('pipe.bookmatch', at('odd/link.bookmatch'));
  symlinkSync('/dev/zero', at('odd/device.bookmatch'));
  const socket = createServer().listen(at('odd/socket.bookmatch'));
  await new Promise((go) => socket.once('listening', go));
  const odd = ['device', 'link', 'pipe', 'socket'].map((name) => at(`odd/${name}.bookmatch`));
  const trouble = 'it is no ordinary file';
  expect(await recipeFilesIn(at('odd'))).toEqual({ files: [file], leftOut: odd.map((path) => ({ path, trouble })) });
  for (const path of odd) {
    expect(await readRecipeFile(path)).toEqual({ trouble });
    expect(await diskFolder.read(pathToFileURL(path).href, NOBODY)).toBeUndefined();
  }
  await new Promise((go) => socket.close(go));
});

it('names the most that is read of one file', async () => {
  const file = shop.put('large/a.bookmatch', '');
  truncateSync(file, MOST_BYTES);
  expect(await readRecipeFile(file)).toHaveProperty('text');
  truncateSync(file, MOST_BYTES + 1);
  expect(await readRecipeFile(file)).toEqual({
    trouble: `it is larger than ${MOST_BYTES / 1e6} MB, the most that is read of one file`,
  });
  truncateSync(file, 1e12);
  expect(await readRecipeFile(file)).toHaveProperty('trouble');
});

it('tells a name that is not UTF-8, of a file or of a folder above it', async () => {
  const file = shop.put('names/ok ☃ \n.bookmatch', '');
  const odd = shop.put('names/odd.bookmatch', '');
  renameSync(odd, Buffer.concat([Buffer.from(at('names/od')), Buffer.from([0xff]), Buffer.from('.bookmatch')]));
  shop.put('names/deep/x.bookmatch', '');
  renameSync(at('names/deep'), Buffer.concat([Buffer.from(at('names/d')), Buffer.from([0xfe])]));
  const trouble = 'its name is not written in UTF-8; rename it';
  expect(await recipeFilesIn(at('names'))).toEqual({
    files: [file],
    leftOut: [
      { path: at('names/d\uFFFD/x.bookmatch'), trouble },
      { path: at('names/od\uFFFD.bookmatch'), trouble },
    ],
  });
  expect(await diskFolder.list([pathToFileURL(at('names')).href], NOBODY)).toEqual([pathToFileURL(file).href]);
});

it('the server’s folder answers any address, without an error', async () => {
  expect(await diskFolder.list(['file://elsewhere/share', 'file:///a%2Fb', 'shelf:/x'], NOBODY)).toEqual([]);
  expect(await diskFolder.read('file://elsewhere/share/a.bookmatch', NOBODY)).toBeUndefined();
  expect(await diskFolder.read('file:///nul%00l.bookmatch', NOBODY)).toBeUndefined();
});
