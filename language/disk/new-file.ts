/** A file that is not there yet: written whole and flushed, or not there afterwards either. Never in place of another. */
import * as disk from 'node:fs/promises';
import { english } from '../wording/wording.js';
import { finishingFirst } from './signals.js';
import { whyUnwritten } from './troubles.js';

/** Answers one plain clause when it could not. Never throws. */
export function writeNewFile(
  path: string,
  bytes: Uint8Array,
  on: Pick<typeof disk, 'open' | 'unlink'> = disk,
): Promise<string | undefined> {
  return finishingFirst(() => writing(path, bytes, on));
}

async function writing(
  path: string,
  bytes: Uint8Array,
  on: Pick<typeof disk, 'open' | 'unlink'>,
): Promise<string | undefined> {
  let begun = false;
  try {
    const file = await on.open(path, 'wx');
    begun = true;
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    return undefined;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return english('there is a file of this name already');
    if (begun) await on.unlink(path).catch(() => undefined);
    return whyUnwritten(error);
  }
}
