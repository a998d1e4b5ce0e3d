/** Writing a file that is not there yet: whole or not at all, and never in place of another. */
import { readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import * as disk from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { type NamingDisk, writeNewFile } from '../../language/disk/new-file.js';
import { aFolder } from './a-folder.js';

const shop = aFolder('new');
const NEW = Buffer.from('%PDF-1.7 …');
const TAKEN = 'there is a file of this name already';

function failing(step: 'open' | 'link' | 'rename', code: string): NamingDisk {
  return { ...disk, [step]: () => Promise.reject(Object.assign(new Error(code), { code })) };
}

it('is there whole, with nothing beside it', async () => {
  shop.put('whole/other', '');
  expect(await writeNewFile(join(shop.path, 'whole/a.pdf'), NEW)).toBeUndefined();
  expect(readFileSync(join(shop.path, 'whole/a.pdf'))).toEqual(NEW);
  expect(shop.names('whole')).toEqual(['a.pdf', 'other']);
});

it('never takes the place of what has the name, a link to nothing too', async () => {
  const file = shop.put('taken/a.pdf', 'theirs');
  symlinkSync('nowhere', join(shop.path, 'taken/b.pdf'));
  expect(await writeNewFile(file, NEW)).toBe(TAKEN);
  expect(await writeNewFile(join(shop.path, 'taken/b.pdf'), NEW)).toBe(TAKEN);
  expect([readFileSync(file, 'utf8'), shop.names('taken')]).toEqual(['theirs', ['a.pdf', 'b.pdf']]);
});

it.each(['with', 'without'])('nor of what comes while it is written, on a disk %s second names', async (kind) => {
  const file = join(shop.path, `meanwhile-${kind}/a.pdf`);
  shop.put(`meanwhile-${kind}/other`, '');
  const on: NamingDisk = {
    ...(kind === 'with' ? disk : failing('link', 'EPERM')),
    open: async (...args: Parameters<typeof disk.open>) => {
      if (args[1] === 'wx') writeFileSync(file, 'theirs');
      return disk.open(...args);
    },
  };
  expect(await writeNewFile(file, NEW, on)).toBe(TAKEN);
  expect([readFileSync(file, 'utf8'), shop.names(`meanwhile-${kind}`)]).toEqual(['theirs', ['a.pdf', 'other']]);
});

it('is written on a disk that knows no second names', async () => {
  shop.put('card/other', '');
  expect(await writeNewFile(join(shop.path, 'card/a.pdf'), NEW, failing('link', 'ENOTSUP'))).toBeUndefined();
  expect([readFileSync(join(shop.path, 'card/a.pdf')), shop.names('card')]).toEqual([NEW, ['a.pdf', 'other']]);
});

it.each([
  ['open', 'ENOSPC', 'the disk is full'],
  ['open', 'EACCES', 'you are not allowed to write into its folder'],
  ['link', 'EIO', 'the disk cannot be read from or written to'],
] as const)('leaves nothing when %s fails with %s', async (step, code, clause) => {
  shop.put(`failing-${step}-${code}/other`, '');
  const file = join(shop.path, `failing-${step}-${code}/a.pdf`);
  expect(await writeNewFile(file, NEW, failing(step, code))).toBe(clause);
  expect(shop.names(`failing-${step}-${code}`)).toEqual(['other']);
});

it('says so where there is no such folder', async () => {
  expect(await writeNewFile(join(shop.path, 'no/such/a.pdf'), NEW)).toBe('the folder it is to be in is not there');
});
