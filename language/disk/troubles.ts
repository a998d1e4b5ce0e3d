/** Why a file or folder cannot be read or written, as one plain clause for the sentence around it. */
import { english } from '../wording/wording.js';

/** A clause in English, to be said through `Wording.text`. */
export interface Trouble {
  readonly trouble: string;
}

/** A pipe, a device, a socket: reading one may wait for ever. */
export const NO_FILE = english('it is no ordinary file');

/** The most that is read of one file, bytes: a workshop's life fits into a hundredth of it. */
export const MOST_BYTES = 8_000_000;
export const TOO_LARGE = english('it is larger than 8 MB, the most that is read of one file');
export const GONE = english('it is no longer there');

const ALIKE: readonly (readonly [code: string, trouble: string])[] = [
  ['ENOENT', GONE],
  ['ENOTDIR', GONE],
  ['EISDIR', english('it is a folder')],
  ['ELOOP', english('it is a link that leads back to itself')],
  ['ENAMETOOLONG', english('its path is too long')],
  ['EIO', english('the disk cannot be read from or written to')],
  ['EMFILE', english('too many files are open at once')],
  ['ENFILE', english('too many files are open at once')],
];

export const UNREADABLE = english('it cannot be read');

const READING: ReadonlyMap<string, string> = new Map([
  ...ALIKE,
  ['EACCES', english('you are not allowed to read it')],
  ['EPERM', english('you are not allowed to read it')],
]);

const WRITING: ReadonlyMap<string, string> = new Map([
  ...ALIKE,
  ['EACCES', english('you are not allowed to write into its folder')],
  ['EPERM', english('you are not allowed to replace it')],
  ['EROFS', english('the disk is read-only')],
  ['ENOSPC', english('the disk is full')],
  ['EDQUOT', english('there is no room left for you on the disk')],
  ['EFBIG', english('the disk takes no file as large as this')],
  ['EBUSY', english('another program holds it')],
  ['ETXTBSY', english('another program holds it')],
]);

export function whyUnread(error: unknown): string {
  return READING.get(codeOf(error)) ?? UNREADABLE;
}

export function whyUnwritten(error: unknown): string {
  return WRITING.get(codeOf(error)) ?? english('it cannot be written to');
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}
