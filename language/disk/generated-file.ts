/** A file of this project that is made from a table in it. */
import { lstat } from 'node:fs/promises';
import { writeNewFile } from './new-file.js';
import { readBytes } from './read-file.js';
import { replaceFile } from './replace-file.js';

/** Made anew from what stands in it now, undefined when there is none. Throws when it cannot be read or written. */
export async function generateFile(path: string, make: (now: string | undefined) => string): Promise<void> {
  const isThere = await lstat(path).then(
    () => true,
    () => false,
  );
  const trouble = isThere ? await anew(path, make) : await writeNewFile(path, Buffer.from(make(undefined)));
  if (trouble !== undefined) throw new Error(`${path} was not written: ${trouble}.`);
}

async function anew(path: string, make: (now: string) => string): Promise<string | undefined> {
  const read = await readBytes(path);
  if ('trouble' in read) return read.trouble;
  return replaceFile(path, read.bytes, Buffer.from(make(Buffer.from(read.bytes).toString('utf8'))));
}
