/** Standard output of this process: written whole, or known not to be. */
import { fstatSync, writeSync } from 'node:fs';
import { whyUnwritten } from '../disk/troubles.js';

export interface Output {
  readonly write: (text: string) => void;
  /** Why not all of it arrived, as one plain clause; nothing while all has. A reader that has seen enough is no trouble. */
  readonly trouble: () => string | undefined;
}

export function standardOutput(): Output {
  let trouble: string | undefined;
  const failed = (error: Error) => {
    if (!('code' in error) || error.code !== 'EPIPE') trouble ??= whyUnwritten(error);
  };
  process.stdout.on('error', failed);
  const isOnDisk = !process.stdout.isTTY && isFileOrDevice();
  const write = (text: string) => {
    if (trouble !== undefined || process.stdout.destroyed) return;
    if (!isOnDisk) process.stdout.write(text);
    else
      try {
        writeWhole(Buffer.from(text));
      } catch (error) {
        failed(error as Error);
      }
  };
  return { write, trouble: () => trouble };
}

function isFileOrDevice(): boolean {
  try {
    const found = fstatSync(STANDARD_OUTPUT);
    return found.isFile() || found.isCharacterDevice();
  } catch {
    return false;
  }
}

const STANDARD_OUTPUT = 1;

/** A disk that is nearly full takes a part and says so by a number alone, which a stream of Node passes over. */
function writeWhole(bytes: Buffer): void {
  for (let done = 0; done < bytes.length;) done += writeSync(STANDARD_OUTPUT, bytes, done);
}
