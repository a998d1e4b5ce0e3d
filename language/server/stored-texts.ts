/**
 * The recipe files of the open folders as last read from the disk.
 *
 * Invariants
 * - Only what a fresh start would find is kept: files in an open folder, none of them hidden or in an installed package.
 * - Of two readings of one file the later begun counts, whichever ends first.
 */
import type { FolderReader } from './recipe-folder.js';

export class StoredTexts {
  private readonly texts = new Map<string, string>();
  /** Why a file or folder has no text here, by address: one plain clause in English. */
  private readonly troubles = new Map<string, string>();
  private readonly folders = new Set<string>();
  /** Readings under way, by file. */
  private readonly turnOf = new Map<string, number>();
  private turns = 0;

  constructor(private readonly reader: FolderReader) {}

  get(uri: string): string | undefined {
    return this.texts.get(uri);
  }

  /** Why there is no text of it, when that is not because there is no such file. */
  trouble(uri: string): string | undefined {
    return this.troubles.get(uri);
  }

  /** Files and folders that could not be read. */
  leftOut(): readonly string[] {
    return [...this.troubles.keys()];
  }

  /** Reads the files of further folders; answers which. */
  async open(folders: readonly string[]): Promise<readonly string[]> {
    for (const folder of folders) this.folders.add(folder);
    const uris = await this.reader.list(folders, (uri, trouble) => void this.troubles.set(uri, trouble));
    await Promise.all(uris.map((uri) => this.read(uri)));
    return uris;
  }

  /** Lets go of folders; answers whose texts went. */
  close(folders: readonly string[]): readonly string[] {
    for (const folder of folders) this.folders.delete(folder);
    const gone = [...this.texts.keys(), ...this.troubles.keys()].filter((uri) => !this.isOurs(uri));
    for (const uri of gone) {
      this.texts.delete(uri);
      this.troubles.delete(uri);
    }
    return gone;
  }

  /** Reads a file again. False when a later reading has been begun meanwhile: its text is still to come. */
  async read(uri: string): Promise<boolean> {
    const turn = ++this.turns;
    this.turnOf.set(uri, turn);
    let trouble: string | undefined;
    const leftOut = (_: string, why: string) => void (trouble = why);
    const text = this.isOurs(uri) ? await this.reader.read(uri, leftOut) : undefined;
    if (this.turnOf.get(uri) !== turn) return false;
    this.turnOf.delete(uri);
    // Its folder may have been closed while it was read.
    const isOurs = this.isOurs(uri);
    if (text === undefined || !isOurs) this.texts.delete(uri);
    else this.texts.set(uri, text);
    if (trouble === undefined || !isOurs) this.troubles.delete(uri);
    else this.troubles.set(uri, trouble);
    return true;
  }

  private isOurs(uri: string): boolean {
    const path = plain(uri);
    return [...this.folders].some((folder) => {
      const start = plain(folder.endsWith('/') ? folder : `${folder}/`);
      return path.startsWith(start) && !path.slice(start.length).split('/').some(isLeftOut);
    });
  }
}

/** The same rule as in the walk through a folder. */
function isLeftOut(word: string): boolean {
  return word.startsWith('.') || word === 'node_modules';
}

/** Editors differ in which characters of a name they write as `%20`. */
function plain(uri: string): string {
  try {
    return decodeURIComponent(uri);
  } catch {
    return uri;
  }
}
