/** A temporary file beside the one that is meant: written whole and flushed there, then put in its place in one step. */
import { randomBytes } from 'node:crypto';
import type * as disk from 'node:fs/promises';
import { join } from 'node:path';

type Disk = Pick<typeof disk, 'open' | 'readdir' | 'stat' | 'unlink'>;

/** A name in this folder that nothing has; hidden, and no recipe file. */
export function besideIn(folder: string): string {
  return join(folder, `${BESIDE}${randomBytes(8).toString('hex')}${TEMPORARY}`);
}

export interface Kept {
  readonly mode: number;
  readonly uid: number;
  readonly gid: number;
}

/** `kept`: whose it is to be, and who may do what with it. Without, as the system has it for new files. */
export async function writeWhole(
  path: string,
  bytes: Uint8Array,
  kept: Kept | undefined,
  on: Pick<Disk, 'open'>,
): Promise<void> {
  const file = await on.open(path, 'wx', kept ? 0o600 : undefined);
  try {
    await file.writeFile(bytes);
    if (kept) {
      const own = await file.stat();
      // Who may not give files away keeps what is written; it is the text that matters.
      if (own.uid !== kept.uid || own.gid !== kept.gid) await file.chown(kept.uid, kept.gid).catch(() => undefined);
      await file.chmod(kept.mode & 0o7777);
    }
    await file.sync();
  } finally {
    await file.close();
  }
}

/** The new name is safe only when the folder is. Not every system lets a folder be flushed. */
export async function flushFolder(folder: string, on: Pick<Disk, 'open'>): Promise<void> {
  try {
    const handle = await on.open(folder, 'r');
    await handle.sync().finally(() => handle.close());
  } catch {
    // The file is in its place all the same.
  }
}

const BESIDE = '.bookmatch-';
const TEMPORARY = '.tmp';
const OURS = /^\.bookmatch-[0-9a-f]{16}\.tmp$/;
/** ms: no writing takes as long. */
const ABANDONED = 3_600_000;

/** Takes away what a crash of ours left behind. */
export async function sweep(folder: string, on: Omit<Disk, 'open'>): Promise<void> {
  const names = await on.readdir(folder).catch((): string[] => []);
  for (const name of names.filter((each) => OURS.test(each))) {
    const path = join(folder, name);
    const found = await on.stat(path).catch(() => undefined);
    if (found?.isFile() && Date.now() - found.mtimeMs > ABANDONED) await on.unlink(path).catch(() => undefined);
  }
}
