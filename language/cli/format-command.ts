/** `bookmatch format`: lays out recipe files, or tells which are not. */
import { resolve } from 'node:path';
import { formatted } from '../editing/formatting/formatting.js';
import { createParser } from '../recipes/shelf/reader.js';
import { ENDING } from './disk.js';
import { EXIT, type Io, WrongUse } from './io.js';
import { leftOut, shown, tellLeftOut } from './open-shop.js';
import type { FoundFiles, LeftOut } from '../disk/recipe-files.js';
import { type Wording } from '../wording/wording.js';

export interface FormatOptions {
  /** Only tell which files would change. */
  readonly check?: boolean;
}

export async function format(paths: readonly string[], { check }: FormatOptions, io: Io): Promise<number> {
  const parser = createParser({ wording: io.wording });
  let [changed, untouched, failed] = [0, 0, 0];
  const { files, leftOut: unfit } = await filesAt(paths, io);
  failed += tellLeftOut(unfit, io);
  for (const path of files) {
    const read = await io.files.read(path);
    if ('trouble' in read) {
      failed++;
      io.complain(`${leftOut(path, read.trouble, io)}\n`);
      continue;
    }
    if (read.foreign) {
      failed++;
      io.complain(`${notUtf8(path, io)}\n`);
      continue;
    }
    const text = formatted(read.text, parser);
    if (text === read.text) {
      untouched++;
      continue;
    }
    const trouble = check ? undefined : await io.files.replace(path, read, text);
    if (trouble === undefined) {
      changed++;
      io.print(`${shown(path, io)}\n`);
    } else {
      failed++;
      const { say, text } = io.wording;
      io.complain(`${say`${shown(path, io)} is as it was: ${text(trouble)}.`}\n`);
    }
  }
  if (changed + untouched > 0) io.print(`${summary(changed, untouched, check ?? false, io.wording)}\n`);
  if (failed > 0) return EXIT.wrongUse;
  return check && changed > 0 ? EXIT.findings : EXIT.fine;
}

function notUtf8(path: string, io: Io): string {
  return io.wording
    .say`${shown(path, io)} is as it was: it is not saved as UTF-8. Open it in an editor and save it with that encoding.`;
}

async function filesAt(paths: readonly string[], io: Io): Promise<FoundFiles> {
  const { say } = io.wording;
  const files = new Set<string>();
  const leftOut: LeftOut[] = [];
  for (const path of paths.length > 0 ? paths : ['.']) {
    const full = resolve(io.cwd, path);
    const kind = await io.files.kindOf(full);
    if (kind === 'nothing') throw new WrongUse(say`There is no file or folder ${path}.`);
    if (kind === 'file' && !full.endsWith(ENDING)) {
      throw new WrongUse(say`${shown(full, io)} is not a recipe file: their names end in ${ENDING}.`);
    }
    const found = kind === 'folder' ? await io.files.find(full) : { files: [full], leftOut: [] };
    leftOut.push(...found.leftOut);
    if (found.files.length + found.leftOut.length === 0) {
      throw new WrongUse(say`There are no recipe files in ${shown(full, io)}: their names end in ${ENDING}.`);
    }
    for (const file of found.files) files.add(file);
  }
  return { files: [...files], leftOut };
}

function summary(changed: number, untouched: number, check: boolean, { say }: Wording): string {
  if (changed === 0)
    return untouched === 1 ? say`The file is laid out already.` : say`All ${untouched} files are laid out already.`;
  if (changed === 1) return check ? say`1 file to lay out; bookmatch format does it.` : say`1 file laid out.`;
  return check ? say`${changed} files to lay out; bookmatch format does it.` : say`${changed} files laid out.`;
}
