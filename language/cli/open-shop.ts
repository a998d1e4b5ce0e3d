/** A folder of recipes opened for one command: its texts read, its definitions on the shelf. */
import { relative, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Desk } from '../checks/desk.js';
import { ImmediateAnalyst } from '../recipes/evaluation/immediate-analyst.js';
import { openWorkshop } from '../shop.js';
import { type BookmatchParser, createParser, readFile } from '../recipes/shelf/reader.js';
import type { LeftOut } from '../disk/recipe-files.js';
import { inLine } from '../wording/visible.js';
import { ENDING } from './disk.js';
import { type Io, WrongUse } from './io.js';

export interface Shop extends Desk {
  readonly folder: string;
  /** As shown to the maker, seen from where they are; the species library by that name. */
  readonly nameOf: (uri: string) => string;
  /** Files that could not be read. */
  readonly unread: number;
}

/** Opens folders, with one parser for all. */
export class Opener {
  private parser: BookmatchParser | undefined;

  constructor(private readonly io: Io) {}

  /** The recipes of a folder, and files beside them that were asked for by name. */
  async open(folder: string, extra: readonly string[] = []): Promise<Shop> {
    const { io } = this;
    const { say } = io.wording;
    const root = resolve(io.cwd, folder);
    const kind = await io.files.kindOf(root);
    if (kind === 'nothing') throw new WrongUse(say`There is no folder ${shown(root, io)}.`);
    if (kind === 'file') throw new WrongUse(say`${shown(root, io)} is a file; name the folder it lies in.`);
    const found = await io.files.find(root);
    const paths = [...new Set([...found.files, ...extra])];
    const unfit = tellLeftOut(found.leftOut, io);
    if (paths.length + unfit === 0) {
      throw new WrongUse(say`There are no recipe files in ${shown(root, io)}: their names end in ${ENDING}.`);
    }
    return this.read(root, paths, unfit);
  }

  /** The same folder as it stood at a commit, which a person calls `HEAD~3`. */
  async openAt(folder: string, revision: string): Promise<Shop> {
    const { io } = this;
    const { say, text } = io.wording;
    const root = resolve(io.cwd, folder);
    const commit = await io.history.commit(root, revision);
    if ('trouble' in commit) throw new WrongUse(say`${revision} cannot be read: ${text(commit.trouble)}.`);
    const texts = await io.history.texts(root, commit);
    if ('trouble' in texts) throw new WrongUse(say`${revision} cannot be read: ${text(texts.trouble)}.`);
    return this.shopOf(root, new Map([...texts].map(([path, content]) => [resolve(root, path), content])), 0);
  }

  private async read(folder: string, paths: readonly string[], unfit: number): Promise<Shop> {
    const { io } = this;
    const texts = new Map<string, string>();
    let unread = unfit;
    for (const path of paths) {
      const read = await io.files.read(path);
      if ('trouble' in read) {
        unread++;
        io.complain(`${leftOut(path, read.trouble, io)}\n`);
        continue;
      }
      texts.set(path, read.text);
    }
    return this.shopOf(folder, texts, unread);
  }

  /** `byPath`: the text of each file. */
  private shopOf(folder: string, byPath: ReadonlyMap<string, string>, unread: number): Shop {
    this.parser ??= createParser({ wording: this.io.wording });
    const { parser, io } = this;
    const opened = openWorkshop({
      wording: io.wording,
      parser,
      analyst: () => new ImmediateAnalyst(),
      log: (words) => io.complain(`${words}\n`),
    });
    const texts = new Map([...byPath].map(([path, text]) => [uriOf(path), text]));
    const names = new Map([...byPath.keys()].map((path) => [uriOf(path), seenFrom(path, io)]));
    opened.shelf.put(...[...texts].map(([uri, text]) => readFile(uri, text, parser)));
    return {
      ...opened,
      folder,
      unread,
      text: (uri) => texts.get(uri),
      nameOf: (uri) => names.get(uri) ?? io.wording.text('species library'),
    };
  }
}

export function uriOf(path: string): string {
  return pathToFileURL(path).href;
}

/** A path as the maker would type it from where they are. */
export function shown(path: string, io: Io): string {
  return inLine(seenFrom(path, io));
}

function seenFrom(path: string, { cwd }: Io): string {
  return (relative(cwd, path) || '.').split(sep).join('/');
}

/** Says that a file was not read; `trouble` is a plain clause saying why. */
export function leftOut(path: string, trouble: string, io: Io): string {
  const { say, text } = io.wording;
  return say`${shown(path, io)} was left out: ${text(trouble)}.`;
}

/** Says of each that it was not read, and answers how many there are. */
export function tellLeftOut(all: readonly LeftOut[], io: Io): number {
  for (const { path, trouble } of all) io.complain(`${leftOut(path, trouble, io)}\n`);
  return all.length;
}
