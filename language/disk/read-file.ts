/** Reading one recipe file: asked what it is before it is opened, so that no pipe, device or giant holds anybody up. */
import { constants } from 'node:fs';
import { type FileHandle, open, stat } from 'node:fs/promises';
import { type FileText, textOf } from '../recipes/shelf/file-text.js';
import { english } from '../wording/wording.js';
import { MOST_BYTES, NO_FILE, TOO_LARGE, type Trouble, whyUnread } from './troubles.js';

export interface StoredText extends FileText {
  /** As they stood on the disk. */
  readonly bytes: Uint8Array;
}

/** Never throws. */
export async function readRecipeFile(path: string): Promise<StoredText | Trouble> {
  const read = await readBytes(path);
  return 'trouble' in read ? read : { ...textOf(read.bytes), bytes: read.bytes };
}

/** Of an ordinary file no larger than `MOST_BYTES`. Never throws. */
export async function readBytes(path: string): Promise<{ readonly bytes: Uint8Array } | Trouble> {
  let file: FileHandle | undefined;
  try {
    const trouble = unfit(await stat(path));
    if (trouble !== undefined) return { trouble };
    // Whatever has taken its place since then must not hold us up either. Windows has no such flag, and `|` takes that as 0.
    file = await open(path, constants.O_RDONLY | constants.O_NONBLOCK);
    const now = unfit(await file.stat());
    return now === undefined ? await upToMost(file) : { trouble: now };
  } catch (error) {
    return { trouble: whyUnread(error) };
  } finally {
    await file?.close().catch(() => undefined);
  }
}

function unfit(found: { isDirectory(): boolean; isFile(): boolean; readonly size: number }): string | undefined {
  if (found.isDirectory()) return english('it is a folder');
  if (!found.isFile()) return NO_FILE;
  return found.size > MOST_BYTES ? TOO_LARGE : undefined;
}

/** It may grow while it is read. */
async function upToMost(file: FileHandle): Promise<{ readonly bytes: Uint8Array } | Trouble> {
  const pieces: Buffer[] = [];
  let size = 0;
  for (;;) {
    const { buffer, bytesRead } = await file.read(Buffer.allocUnsafe(PIECE), 0, PIECE, size);
    if (bytesRead === 0) return { bytes: Buffer.concat(pieces) };
    pieces.push(buffer.subarray(0, bytesRead));
    size += bytesRead;
    if (size > MOST_BYTES) return { trouble: TOO_LARGE };
  }
}

const PIECE = 65_536;
