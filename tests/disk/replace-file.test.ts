/** Writing a file that exists: what is kept, what is refused, and what is left when the disk fails at each step. */
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import * as disk from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { replaceFile, type WritingDisk } from '../../language/disk/replace-file.js';
import { aFolder, IS_ROOT } from './a-folder.js';

const shop = aFolder('replace');
const OLD = Buffer.from('old\r\ntext\n');
const NEW = Buffer.from('the new text\r\n');

describe('a file is replaced', () => {
  it('and keeps its permissions', async () => {
    for (const mode of [0o600, 0o644, 0o664, 0o755, 0o200 | 0o444]) {
      const file = shop.put('mode/a.bookmatch', OLD);
      chmodSync(file, mode);
      expect(await replaceFile(file, OLD, NEW)).toBeUndefined();
      expect(statSync(file).mode & 0o7777).toBe(mode);
      expect(readFileSync(file)).toEqual(NEW);
    }
    expect(shop.names('mode')).toEqual(['a.bookmatch']);
  });

  it.runIf(IS_ROOT)('and keeps its owner where that is allowed', async () => {
    const file = shop.put('owner/a.bookmatch', OLD);
    await disk.chown(file, 1234, 2345);
    expect(await replaceFile(file, OLD, NEW)).toBeUndefined();
    expect(statSync(file)).toMatchObject({ uid: 1234, gid: 2345 });
  });

  it('through links, which stay links', async () => {
    const file = shop.put('links/real/a.bookmatch', OLD);
    symlinkSync('real/a.bookmatch', join(shop.path, 'links/one.bookmatch'));
    symlinkSync(join(shop.path, 'links/one.bookmatch'), join(shop.path, 'links/two.bookmatch'));
    expect(await replaceFile(join(shop.path, 'links/two.bookmatch'), OLD, NEW)).toBeUndefined();
    expect(readFileSync(file)).toEqual(NEW);
    expect(lstatSync(join(shop.path, 'links/two.bookmatch')).isSymbolicLink()).toBe(true);
    expect([shop.names('links'), shop.names('links/real')]).toEqual([
      ['one.bookmatch', 'real', 'two.bookmatch'],
      ['a.bookmatch'],
    ]);
  });

  it('while another hard link keeps the old text, as a backup made of links wants it', async () => {
    const file = shop.put('hard/a.bookmatch', OLD);
    linkSync(file, join(shop.path, 'hard/backup'));
    expect(await replaceFile(file, OLD, NEW)).toBeUndefined();
    expect([readFileSync(file), readFileSync(join(shop.path, 'hard/backup'))]).toEqual([NEW, OLD]);
  });

  it('whose name is as long as a name can be', async () => {
    const file = shop.put(`long/${'n'.repeat(255 - '.bookmatch'.length)}.bookmatch`, OLD);
    expect(await replaceFile(file, OLD, NEW)).toBeUndefined();
  });

  it('and what a crash left there an hour ago is taken away, nothing else', async () => {
    const file = shop.put('swept/a.bookmatch', OLD);
    const hoursAgo = new Date(Date.now() - 2 * 3_600_000);
    const names = ['.bookmatch-0123456789abcdef.tmp', '.bookmatch-notes.tmp', '.bookmatch-0123456789abcdee.tmp'];
    for (const name of names) shop.put(`swept/${name}`, 'left');
    for (const name of names.slice(0, 2)) utimesSync(join(shop.path, 'swept', name), hoursAgo, hoursAgo);
    expect(await replaceFile(file, OLD, NEW)).toBeUndefined();
    expect(shop.names('swept')).toEqual([names[2], names[1], 'a.bookmatch']);
  });
});

describe('a file is left as it was', () => {
  it('when somebody else has changed it, removed it or put a link there since it was read', async () => {
    const file = shop.put('changed/a.bookmatch', OLD);
    const meanwhile = (what: () => void): WritingDisk => ({
      ...disk,
      open: async (...args: Parameters<typeof disk.open>) => {
        const handle = await disk.open(...args);
        if (args[1] === 'wx') what();
        return handle;
      },
    });
    const save = () => writeFileSync(file, 'theirs');
    expect(await replaceFile(file, OLD, NEW, meanwhile(save))).toBe('somebody else has changed it meanwhile');
    expect(readFileSync(file, 'utf8')).toBe('theirs');
    expect(await replaceFile(file, OLD, NEW)).toBe('somebody else has changed it meanwhile');

    writeFileSync(file, OLD);
    const remove = () => rmSync(file);
    expect(await replaceFile(file, OLD, NEW, meanwhile(remove))).toBe('somebody else has changed it meanwhile');
    expect(shop.names('changed')).toEqual([]);

    writeFileSync(file, OLD);
    const other = shop.put('changed-too/b.bookmatch', OLD);
    const link = () => {
      rmSync(file);
      symlinkSync(other, file);
    };
    expect(await replaceFile(file, OLD, NEW, meanwhile(link))).toBe('somebody else has changed it meanwhile');
    expect([readFileSync(other), shop.names('changed')]).toEqual([OLD, ['a.bookmatch']]);
  });

  it('when it is read-only, even for those who may do anything', async () => {
    const file = shop.put('locked/a.bookmatch', OLD);
    chmodSync(file, 0o444);
    expect(await replaceFile(file, OLD, NEW)).toBe('it is read-only');
    expect([readFileSync(file), shop.names('locked')]).toEqual([OLD, ['a.bookmatch']]);
  });

  it('when it is a folder, a pipe, a link to nothing, or gone', async () => {
    mkdirSync(join(shop.path, 'odd/folder.bookmatch'), { recursive: true });
    spawnSync('mkfifo', [join(shop.path, 'odd/pipe.bookmatch')]);
    symlinkSync('nowhere', join(shop.path, 'odd/link.bookmatch'));
    const told = await Promise.all(
      ['folder', 'pipe', 'link', 'gone'].map((name) =>
        replaceFile(join(shop.path, 'odd', `${name}.bookmatch`), OLD, NEW),
      ),
    );
    const gone = 'it is no longer there';
    expect(told).toEqual(['it is no ordinary file', 'it is no ordinary file', gone, gone]);
  });

  it.runIf(IS_ROOT)('when its folder is not to be written into', () => {
    const file = shop.put('closed/a.bookmatch', OLD);
    chmodSync(shop.path, 0o755);
    chmodSync(file, 0o666);
    chmodSync(join(shop.path, 'closed'), 0o555);
    const told = asNobody(file);
    expect(told).toBe('you are not allowed to write into its folder');
    expect([readFileSync(file), shop.names('closed')]).toEqual([OLD, ['a.bookmatch']]);
  });
});

describe('a disk that fails', () => {
  const CODES: readonly (readonly [code: string, clause: string])[] = [
    ['ENOSPC', 'the disk is full'],
    ['EDQUOT', 'there is no room left for you on the disk'],
    ['EROFS', 'the disk is read-only'],
    ['EIO', 'the disk cannot be read from or written to'],
    ['EWHATEVER', 'it cannot be written to'],
  ];
  const OF_THE_FILE = ['writeFile', 'chmod', 'sync', 'close', 'stat'] as const;
  const OF_THE_DISK = ['open', 'rename', 'realpath', 'stat'] as const;

  it.each(CODES)('with %s at any step leaves the old file, nothing beside it, and says why', async (code, clause) => {
    const file = shop.put(`failing-${code}/a.bookmatch`, OLD);
    const failure = () => Promise.reject(Object.assign(new Error(code), { code }));
    for (const step of OF_THE_DISK) {
      expect(await replaceFile(file, OLD, NEW, { ...disk, [step]: failure }), step).toBe(clause);
    }
    for (const step of OF_THE_FILE) {
      const open = async (...args: Parameters<typeof disk.open>) => {
        const handle = await disk.open(...args);
        if (args[1] !== 'wx') return handle;
        const close = handle.close.bind(handle);
        const failing = step === 'close' ? () => close().then(failure) : failure;
        return Object.assign(handle, { [step]: failing });
      };
      expect(await replaceFile(file, OLD, NEW, { ...disk, open }), step).toBe(clause);
    }
    expect([readFileSync(file), shop.names(`failing-${code}`)]).toEqual([OLD, ['a.bookmatch']]);
  });

  it.runIf(IS_ROOT)('as a small one that is full leaves the old file', async () => {
    const small = join(shop.path, 'small');
    mkdirSync(small);
    // Where mounting is not allowed even to root, the failures above have to do.
    if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', small]).status !== 0) return;
    try {
      const old = Buffer.alloc(600_000, 'o');
      const file = shop.put('small/a.bookmatch', old);
      expect(await replaceFile(file, old, Buffer.alloc(600_000, 'n'))).toBe('the disk is full');
      expect(readFileSync(file).equals(old)).toBe(true);
      expect(shop.names('small')).toEqual(['a.bookmatch']);
      expect(await replaceFile(file, old, Buffer.alloc(300_000, 'n'))).toBeUndefined();
    } finally {
      spawnSync('umount', [small]);
    }
  });
});

/** What a person without rights is told; in a process of its own, since rights are a process's. */
function asNobody(file: string): string {
  // Built by those who may, and run from where everybody may look.
  spawnSync(process.execPath, ['esbuild.config.mjs', 'run', 'tests/disk/replace-as-told.ts', '/nowhere']);
  const program = join(shop.path, 'replace-as-told.mjs');
  copyFileSync('.cache/run/disk-replace-as-told.mjs', program);
  // Node too: it may lie in a folder that only its owner may look into.
  const node = join(shop.path, 'node');
  copyFileSync(process.execPath, node);
  const run = spawnSync(node, [program, file], { uid: 65534, gid: 65534, encoding: 'utf8' });
  if (run.error) throw run.error;
  return run.stdout.trim() || run.stderr;
}
