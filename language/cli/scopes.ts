/**
 * What `check` is to look at. Names reach as far as a folder does, so a folder is a shop of its own; a file named by
 * itself is checked as part of the folder the maker is in, and only its own findings are told.
 */
import { dirname, relative, resolve } from 'node:path';
import { ENDING } from './disk.js';
import { type Io, WrongUse } from './io.js';
import { type Opener, type Shop, shown, uriOf } from './open-shop.js';

export interface Scope {
  readonly shop: Shop;
  /** The files whose findings are told. */
  readonly uris: readonly string[];
}

/** `within`: one folder to take as the shop for all paths, instead. */
export async function scopesOf(
  paths: readonly string[],
  within: string | undefined,
  opener: Opener,
  io: Io,
): Promise<readonly Scope[]> {
  const single = new Map<string, string[]>();
  const folders: string[] = [];
  for (const path of paths.length > 0 ? paths : [within ?? '.']) {
    const full = resolve(io.cwd, path);
    const kind = await io.files.kindOf(full);
    if (kind === 'nothing') throw new WrongUse(io.wording.say`There is no file or folder ${path}.`);
    if (kind === 'folder') folders.push(full);
    else if (full.endsWith(ENDING)) add(single, homeOf(full, within, io), full);
    else throw new WrongUse(io.wording.say`${shown(full, io)} is not a recipe file: their names end in ${ENDING}.`);
  }
  const scopes: Scope[] = [];
  for (const folder of new Set(folders)) {
    const { files } = await io.files.find(folder);
    const shop = await opener.open(within ?? folder, within === undefined ? [] : files);
    const uris = new Set(files.map(uriOf));
    scopes.push({ shop, uris: shop.shelf.uris().filter((uri) => uris.has(uri)) });
  }
  for (const [home, own] of single) {
    scopes.push({ shop: await opener.open(home, own), uris: own.map(uriOf).sort() });
  }
  return scopes;
}

/** The folder a file is read with. */
function homeOf(file: string, within: string | undefined, io: Io): string {
  if (within !== undefined) return within;
  return relative(io.cwd, file).startsWith('..') ? dirname(file) : io.cwd;
}

function add(files: Map<string, string[]>, home: string, file: string): void {
  const own = files.get(home);
  if (own) own.push(file);
  else files.set(home, [file]);
}
