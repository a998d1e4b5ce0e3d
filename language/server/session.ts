/**
 * One editor's session: the texts of the folder, those being typed before those on disk, read onto the shelf as they
 * change. It knows no protocol, so that a test can drive it with strings.
 *
 * Invariants
 * - The shelf always holds the newest text of every file: what is open in the editor, or else what is on disk.
 * - A file closed without saving goes back to what is on disk.
 */
import type { Finding } from '../checks/finding.js';
import type { Desk } from '../checks/desk.js';
import { DeferredAnalyst, type PlateWorker } from '../recipes/evaluation/deferred-analyst.js';
import { type OpenWorkshop, openWorkshop } from '../shop.js';
import { type BookmatchParser, readFile } from '../recipes/shelf/reader.js';
import { ENGLISH, type Wording } from '../wording/wording.js';
import type { FolderReader } from './recipe-folder.js';
import { graded, type Severities } from './severity-setting.js';

export class Session {
  private wording = ENGLISH;
  private severities: Severities = new Map();
  private opened: { readonly workshop: OpenWorkshop; readonly desk: Desk } | undefined;
  private analyst: DeferredAnalyst | undefined;
  /** Texts open in the editor. */
  private readonly typed = new Map<string, string>();
  /** Texts as last read from disk. */
  private readonly stored = new Map<string, string>();

  /** With a worker, resonances are worked out in the background; `delivered` is called whenever some have come. */
  constructor(
    private readonly folder: FolderReader,
    private readonly solver?: { readonly worker: PlateWorker; readonly delivered: () => void },
    /** Where a fault of our own is written down. */
    private readonly log?: (words: string) => void,
  ) {}

  get desk(): Desk {
    return this.open().desk;
  }

  private get workshop(): OpenWorkshop {
    return this.open().workshop;
  }

  /** The language to answer in; to be said before anything is asked. */
  speak(wording: Wording): void {
    this.wording = wording;
    this.opened = undefined;
  }

  /** Once the language is known, since every answer is in it. */
  private open() {
    if (this.opened) return this.opened;
    const { solver, wording } = this;
    const opened = openWorkshop({
      wording,
      log: this.log,
      analyst: solver && ((memo) => (this.analyst = new DeferredAnalyst(memo, solver.worker, solver.delivered))),
    });
    const { shelf, workshop, checks } = opened;
    const desk = { shelf, workshop, checks, text: (uri: string) => this.typed.get(uri) ?? this.stored.get(uri) };
    this.opened = { workshop: opened, desk };
    return this.opened;
  }

  get parser(): BookmatchParser {
    return this.workshop.parser;
  }

  /** Whether the worker has plates left to solve. */
  get isSolving(): boolean {
    return this.analyst?.isIdle === false;
  }

  /** Reads every recipe file of the folders. */
  async load(folders: readonly string[]): Promise<void> {
    const uris = await this.folder.list(folders);
    const texts = await Promise.all(uris.map(async (uri) => [uri, await this.folder.read(uri)] as const));
    for (const [uri, text] of texts) if (text !== undefined) this.stored.set(uri, text);
    const fresh = texts.flatMap(([uri, text]) => (text === undefined || this.typed.has(uri) ? [] : [{ uri, text }]));
    this.workshop.shelf.put(...fresh.map(({ uri, text }) => readFile(uri, text, this.workshop.parser)));
  }

  /** Folders were closed: their files go, but for those still open in the editor. */
  leave(folders: readonly string[]): void {
    const isIn = (uri: string) =>
      folders.some((folder) => uri.startsWith(folder.endsWith('/') ? folder : `${folder}/`));
    for (const uri of [...this.stored.keys()].filter(isIn)) {
      this.stored.delete(uri);
      if (!this.typed.has(uri)) this.workshop.shelf.remove(uri);
    }
  }

  /** A text as it stands in the editor, opened or changed. */
  type(uri: string, text: string): void {
    if (this.isReadOnly(uri) || this.typed.get(uri) === text) return;
    this.typed.set(uri, text);
    this.analyst?.forget();
    this.put(uri, text);
  }

  /** The editor let go of a file: what is on disk counts again. */
  async close(uri: string): Promise<void> {
    if (this.isReadOnly(uri)) return;
    this.typed.delete(uri);
    await this.changedOnDisk(uri);
  }

  /** A file was created, changed or deleted outside the editor. */
  async changedOnDisk(uri: string): Promise<void> {
    if (this.isReadOnly(uri)) return;
    const text = await this.folder.read(uri);
    if (text === undefined) this.stored.delete(uri);
    else this.stored.set(uri, text);
    if (this.typed.has(uri)) return;
    if (text === undefined) this.workshop.shelf.remove(uri);
    else this.put(uri, text);
  }

  /** Every file there is, the ones being typed in first. */
  uris(): readonly string[] {
    const all = this.desk.shelf.uris();
    return [...all.filter((uri) => this.typed.has(uri)), ...all.filter((uri) => !this.typed.has(uri))];
  }

  /** What a person set, by the code of a finding. */
  grade(severities: Severities): void {
    this.severities = severities;
  }

  /** Of one file, as grave as the person wants them. */
  findings(uri: string): readonly Finding[] {
    return graded(this.desk.checks.file(uri), this.severities);
  }

  /** The species library can be opened and closed like a file; it is on no disk and stays on the shelf. */
  private isReadOnly(uri: string): boolean {
    return this.workshop.shelf.isLibrary(uri);
  }

  private put(uri: string, text: string): void {
    this.workshop.shelf.put(readFile(uri, text, this.workshop.parser, this.workshop.shelf.file(uri)));
  }
}
