/**
 * A file that is not there yet: written whole beside its place and flushed, then it gets its name. At every moment, and after
 * a crash, it is there whole or not at all. Never in place of another.
 */
import * as disk from 'node:fs/promises';
import { dirname } from 'node:path';
import { english } from '../wording/wording.js';
import { besideIn, flushFolder, sweep, writeWhole } from './beside.js';
import { finishingFirst } from './signals.js';
import { whyUnwritten } from './troubles.js';

/** What of the disk is used: handed in, so that a test can have it fail. */
export type NamingDisk = Pick<typeof disk, 'open' | 'unlink' | 'link' | 'lstat' | 'rename' | 'readdir' | 'stat'>;

/** Answers one plain clause when it could not. Never throws. */
export function writeNewFile(path: string, bytes: Uint8Array, on: NamingDisk = disk): Promise<string | undefined> {
  return finishingFirst(() => writing(path, bytes, on).catch(whyNotNew));
}

const TAKEN = english('there is a file of this name already');
const NO_FOLDER = english('the folder it is to be in is not there');

function whyNotNew(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return code === 'ENOENT' || code === 'ENOTDIR' ? NO_FOLDER : whyUnwritten(error);
}

async function writing(path: string, bytes: Uint8Array, on: NamingDisk): Promise<string | undefined> {
  const folder = dirname(path);
  if (await isTaken(path, on)) return TAKEN;
  await sweep(folder, on);
  const beside = besideIn(folder);
  try {
    await writeWhole(beside, bytes, undefined, on);
    const trouble = await name(beside, path, on);
    if (trouble !== undefined) return trouble;
  } finally {
    // By `rename` it is gone already.
    await on.unlink(beside).catch(() => undefined);
  }
  await flushFolder(folder, on);
  return undefined;
}

/** A second name never replaces what has it, while `rename` would: it is for disks that know no second names. */
async function name(beside: string, path: string, on: NamingDisk): Promise<string | undefined> {
  try {
    await on.link(beside, path);
    return undefined;
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? '';
    if (code === 'EEXIST') return TAKEN;
    if (!NO_LINKS.has(code)) throw error;
  }
  if (await isTaken(path, on)) return TAKEN;
  await on.rename(beside, path);
  return undefined;
}

/** Memory cards, shares of other machines, and some that refuse it to guard their users. */
const NO_LINKS = new Set([
  'EPERM',
  'ENOTSUP',
  'EOPNOTSUPP',
  'ENOSYS',
  'EMLINK',
  'EACCES',
  'UNKNOWN',
  'EISDIR',
  'EINVAL',
]);

/** A link to nothing has its name too. */
function isTaken(path: string, on: NamingDisk): Promise<boolean> {
  return on.lstat(path).then(
    () => true,
    () => false,
  );
}
