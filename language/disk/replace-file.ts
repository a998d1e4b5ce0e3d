/**
 * The one way to write a file that exists: the new text is written beside it, flushed, and takes its place in one step.
 *
 * Invariants
 * - At every moment, and after a crash of the program, the file is whole: the old one or the new one.
 * - What somebody else saved since it was read is never overwritten, but for the moment between the last comparison and
 *   the rename, which no program can close.
 * - Nothing is left beside it after an error. After a crash something may be; the next writing there takes it away.
 *
 * A link leads to the file it names, which is replaced; the link stays. The file keeps its permissions and, where that is
 * allowed, its owner. Another hard link to it keeps the old text.
 */
import * as disk from 'node:fs/promises';
import { dirname } from 'node:path';
import { english } from '../wording/wording.js';
import { besideIn, flushFolder, sweep, writeWhole } from './beside.js';
import { readBytes } from './read-file.js';
import { finishingFirst } from './signals.js';
import { NO_FILE, whyUnwritten } from './troubles.js';

/** What of the disk is used: handed in, so that a test can have it fail. */
export type WritingDisk = Pick<typeof disk, 'open' | 'realpath' | 'stat' | 'access' | 'rename' | 'unlink' | 'readdir'>;

/**
 * Puts `bytes` in place of the file at `path`, which held `before` when it was read. Answers one plain clause when it could
 * not; the file is then as it was. Never throws.
 */
export function replaceFile(
  path: string,
  before: Uint8Array,
  bytes: Uint8Array,
  on: WritingDisk = disk,
): Promise<string | undefined> {
  return finishingFirst(() => replacing(path, before, bytes, on).catch(whyUnwritten));
}

async function replacing(
  path: string,
  before: Uint8Array,
  bytes: Uint8Array,
  on: WritingDisk,
): Promise<string | undefined> {
  const target = await on.realpath(path);
  const found = await on.stat(target);
  if (!found.isFile()) return NO_FILE;
  // To rename is a matter of the folder: a file that is not to be written to would not stop it.
  const isLocked = (found.mode & ANY_MAY_WRITE) === 0 || (await refuses(target, on));
  if (isLocked) return english('it is read-only');
  const folder = dirname(target);
  await sweep(folder, on);
  const beside = besideIn(folder);
  try {
    await writeWhole(beside, bytes, found, on);
    const now = await readBytes(target);
    const isSame = 'bytes' in now && Buffer.compare(now.bytes, before) === 0 && (await on.realpath(path)) === target;
    if (!isSame) {
      await on.unlink(beside);
      return english('somebody else has changed it meanwhile');
    }
    await on.rename(beside, target);
  } catch (error) {
    await on.unlink(beside).catch(() => undefined);
    throw error;
  }
  await flushFolder(folder, on);
  return undefined;
}

const ANY_MAY_WRITE = 0o222;

async function refuses(path: string, on: WritingDisk): Promise<boolean> {
  return on.access(path, disk.constants.W_OK).then(
    () => false,
    () => true,
  );
}
