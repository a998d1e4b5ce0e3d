/** `bookmatch format`: files laid out in place, or told about. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { DISK as REAL_DISK } from '../../language/cli/disk.js';
import { aFolder } from '../disk/a-folder.js';
import { bookmatch, bookmatchIn, filesOf, Trouble } from './terminal.js';

const MESSY = 'shop wick {title: "Wick Lane"  vary at most 1}\n';
const NEAT = 'shop wick { title: "Wick Lane"   vary at most 1 }\n';
const DISK = { 'shop.bookmatch': MESSY, 'more/neat.bookmatch': NEAT };

it('lays out every file of the folder, and writes only those that change', async () => {
  const written = new Map<string, string>();
  const { code, out, err } = await bookmatchIn({ files: filesOf(DISK, written) }, DISK, 'format');
  expect([code, out, err]).toEqual([0, 'shop.bookmatch\n1 file laid out.\n', '']);
  expect([...written]).toEqual([['shop.bookmatch', NEAT]]);
});

it('with --check changes nothing, and fails when something would change', async () => {
  const written = new Map<string, string>();
  const { code, out } = await bookmatchIn({ files: filesOf(DISK, written) }, DISK, 'format', '--check');
  expect([code, out]).toEqual([1, 'shop.bookmatch\n1 file to lay out; bookmatch format does it.\n']);
  expect(written.size).toBe(0);
  expect(await bookmatch(DISK, 'format', '--check', 'more')).toMatchObject({
    code: 0,
    out: 'The file is laid out already.\n',
  });
});

it('says in plain words what it cannot do', async () => {
  expect(await bookmatch(DISK, 'format', 'nowhere')).toMatchObject({
    code: 2,
    err: 'There is no file or folder nowhere.\n',
  });
  expect((await bookmatch({ 'a.txt': '' }, 'format', 'a.txt')).err).toContain('is not a recipe file');
  expect((await bookmatch({ 'a.txt': '' }, 'format')).err).toContain('There are no recipe files');
  const locked = { 'shop.bookmatch': new Trouble('you are not allowed to read it') };
  expect(await bookmatch(locked, 'format')).toMatchObject({
    code: 2,
    err: 'shop.bookmatch was left out: you are not allowed to read it.\n',
  });
  const full = { ...filesOf(DISK), replace: () => Promise.resolve('the disk is full') };
  expect(await bookmatchIn({ files: full }, DISK, 'format')).toMatchObject({
    code: 2,
    err: 'shop.bookmatch is as it was: the disk is full.\n',
  });
});

it('leaves alone what is not saved as UTF-8, or is no text', async () => {
  const written = new Map<string, string>();
  const files = filesOf({ 'a.bookmatch': MESSY, 'b.bookmatch': 'w\u0000o\u0000o\u0000d\u0000\n\n\n' }, written);
  const foreign = {
    ...files,
    read: async (path: string) => ({
      ...(await files.read(path)),
      ...(path.endsWith('a.bookmatch') && { foreign: true as const }),
    }),
  };
  expect(await bookmatchIn({ files: foreign }, {}, 'format')).toMatchObject({
    code: 2,
    err: 'a.bookmatch is as it was: it is not saved as UTF-8. Open it in an editor and save it with that encoding.\n',
  });
  expect(written.size).toBe(0);
});

const disk = aFolder('format');

it('keeps the mark before a text and the ends of its lines', async () => {
  for (const [name, mark, end] of [
    ['marked', '\uFEFF', '\n'],
    ['crlf', '', '\r\n'],
    ['both', '\uFEFF', '\r\n'],
    ['cr', '', '\r'],
  ] as const) {
    const file = disk.put(`${name}.bookmatch`, `${mark}${MESSY.replace('\n', end)}// as it was${end}`);
    const { code, err } = await bookmatchIn({ files: REAL_DISK, cwd: disk.path }, {}, 'format', `${name}.bookmatch`);
    expect([code, err], name).toEqual([0, '']);
    expect(readFileSync(file, 'utf8'), name).toBe(`${mark}${NEAT.replace('\n', end)}// as it was${end}`);
  }
});
