/**
 * Which recipe files there are in a folder: the one walk, for the terminal and for the server.
 *
 * Invariants
 * - Hidden folders and installed packages are not looked into. Links to folders are not followed, so there are no rings.
 * - A file is told once, under its own name before that of a link to it.
 * - What is named like a recipe file and cannot be one is told with a reason, never left out in silence.
 */
import type { Dirent } from 'node:fs';
import { readdir, realpath, stat } from 'node:fs/promises';
import { sep } from 'node:path';
import { english } from '../wording/wording.js';
import { NO_FILE, type Trouble, whyUnread } from './troubles.js';

export const ENDING = '.bookmatch';

export interface FoundFiles {
  /** Full paths, sorted. */
  readonly files: readonly string[];
  readonly leftOut: readonly LeftOut[];
}

export interface LeftOut extends Trouble {
  readonly path: string;
}

/** A path as the disk has it: names need not be UTF-8 there. */
type Bytes = Buffer;

export async function recipeFilesIn(folder: string): Promise<FoundFiles> {
  const walk: Walk = { files: [], links: [], leftOut: [], folders: [Buffer.from(folder)] };
  for (let next = walk.folders.pop(); next !== undefined; next = walk.folders.pop()) await look(next, walk);
  const real = new Set(walk.files);
  for (const link of walk.links.sort()) {
    const target = await realpath(link).catch(() => link);
    if (real.has(target)) continue;
    real.add(target);
    walk.files.push(link);
  }
  return { files: walk.files.sort(), leftOut: walk.leftOut.sort((a, b) => (a.path < b.path ? -1 : 1)) };
}

interface Walk {
  readonly files: string[];
  /** To files. */
  readonly links: string[];
  readonly leftOut: LeftOut[];
  /** Not yet looked into. */
  readonly folders: Bytes[];
}

async function look(folder: Bytes, walk: Walk): Promise<void> {
  let entries: Dirent<Bytes>[];
  try {
    entries = await readdir(folder, { encoding: 'buffer', withFileTypes: true });
  } catch (error) {
    walk.leftOut.push({ path: folder.toString(), trouble: whyUnread(error) });
    return;
  }
  for (const entry of entries) {
    const name = entry.name.toString();
    const path = joined(folder, entry.name);
    if (entry.isDirectory()) {
      if (!name.startsWith('.') && name !== 'node_modules') walk.folders.push(path);
    } else if (name.endsWith(ENDING)) {
      await take(path, entry, walk);
    }
  }
}

async function take(path: Bytes, entry: Dirent<Bytes>, walk: Walk): Promise<void> {
  const text = path.toString();
  if (!Buffer.from(text).equals(path)) {
    walk.leftOut.push({ path: text, trouble: english('its name is not written in UTF-8; rename it') });
    return;
  }
  if (entry.isFile()) walk.files.push(text);
  else if (!entry.isSymbolicLink()) walk.leftOut.push({ path: text, trouble: NO_FILE });
  else {
    const found = await stat(text).catch(whyUnread);
    if (typeof found === 'string') walk.leftOut.push({ path: text, trouble: LINK_TO_NOTHING });
    else if (found.isFile()) walk.links.push(text);
    else if (!found.isDirectory()) walk.leftOut.push({ path: text, trouble: NO_FILE });
  }
}

const LINK_TO_NOTHING = english('it is a link to nothing');

function joined(folder: Bytes, name: Bytes): Bytes {
  const between = folder.at(-1) === sep.charCodeAt(0) ? '' : sep;
  return Buffer.concat([folder, Buffer.from(between), name]);
}
