/**
 * One editor's session: the texts of the folder, those being typed before those on disk, read onto the shelf as they
 * change. It knows no protocol, so that a test can drive it with strings.
 *
 * Invariants
 * - The shelf always holds the newest text of every file: what is open in the editor, or else what is on disk.
 * - A file closed without saving goes back to what is on disk; one of no open folder goes.
 */
import type { Diagnostic } from 'vscode-languageserver-types';
import type { Finding } from '../checks/finding.js';
import type { Desk } from '../checks/desk.js';
import { DeferredAnalyst, type PlateWorker } from '../recipes/evaluation/deferred-analyst.js';
import type { Input, Query } from '../recipes/shelf/memo.js';
import { diagnosticsOf, isSameData } from './convert.js';
import { type OpenWorkshop, openWorkshop } from '../shop.js';
import { type BookmatchParser, readFile } from '../recipes/shelf/reader.js';
import { inLine } from '../wording/visible.js';
import { ENGLISH, type Wording } from '../wording/wording.js';
import type { FileFacts } from '../facts/facts.js';
import type { FolderReader } from './recipe-folder.js';
import { StoredTexts } from './stored-texts.js';
import { AS_THEY_ARE, graded, type Grades } from './severity-setting.js';

/** What there is once the language is known. */
interface Opened {
  readonly workshop: OpenWorkshop;
  readonly desk: Desk;
  readonly grades: Input<'', Grades>;
  readonly diagnostics: Query<string, readonly Diagnostic[]>;
}

export class Session {
  private spoken = ENGLISH;
  private opened: Opened | undefined;
  private readonly stale = new Set<string>();
  private analyst: DeferredAnalyst | undefined;
  /** Texts open in the editor. */
  private readonly typed = new Map<string, string>();
  private readonly stored: StoredTexts;
  /** Closed in the editor, and not yet read from the disk. */
  private readonly closing = new Set<string>();
  private loading = 0;
  /** How often the shelf has changed. */
  edits = 0;

  /** With a worker, resonances are worked out in the background; `delivered` is called whenever some have come. */
  constructor(
    folder: FolderReader,
    private readonly solver?: { readonly worker: PlateWorker; readonly delivered: () => void },
    /** Where a fault of our own is written down. */
    private readonly log?: (words: string) => void,
  ) {
    this.stored = new StoredTexts(folder);
  }

  get desk(): Desk {
    return this.open().desk;
  }

  private get workshop(): OpenWorkshop {
    return this.open().workshop;
  }

  /** The language to answer in; to be said before anything is asked. */
  speak(wording: Wording): void {
    this.spoken = wording;
    this.opened = undefined;
  }

  /** Once the language is known, since every answer is in it. */
  private open(): Opened {
    if (this.opened) return this.opened;
    const { solver, spoken: wording } = this;
    const opened = openWorkshop({
      wording,
      log: this.log,
      analyst: solver && ((memo) => (this.analyst = new DeferredAnalyst(memo, solver.worker, solver.delivered))),
    });
    const { shelf, workshop, checks } = opened;
    const desk = { shelf, workshop, checks, text: (uri: string) => this.typed.get(uri) ?? this.stored.get(uri) };
    const grades = shelf.memo.input<'', Grades>();
    const diagnostics = shelf.memo.query(
      'diagnostics',
      (uri: string) => diagnosticsOf(desk, graded(checks.file(uri), grades.get('') ?? AS_THEY_ARE)),
      { isBoundToKey: true, equal: isSameData, marked: (uri) => void this.stale.add(uri) },
    );
    this.opened = { workshop: opened, desk, grades, diagnostics };
    return this.opened;
  }

  /** The language it answers in. */
  get wording(): Wording {
    return this.spoken;
  }

  get parser(): BookmatchParser {
    return this.workshop.parser;
  }

  /** Whether the worker has plates left to solve. */
  get isSolving(): boolean {
    return this.analyst?.isIdle === false;
  }

  /** Whether folders are being read: as long as that goes on, names may seem unknown that are not. */
  get isLoading(): boolean {
    return this.loading > 0;
  }

  /** Reads every recipe file of the folders, in slices between which others are served. */
  async load(folders: readonly string[]): Promise<void> {
    this.loading++;
    try {
      const uris = await this.stored.open(folders);
      const { shelf } = this.workshop;
      const read: { text: string; facts: FileFacts }[] = [];
      let since = performance.now();
      for (const uri of uris) {
        const text = this.stored.get(uri);
        if (text === undefined || this.typed.has(uri)) continue;
        read.push({ text, facts: this.read(uri, text) });
        if (performance.now() - since < SLICE) continue;
        await new Promise((go) => void setTimeout(go, 0));
        since = performance.now();
      }
      // What was changed or opened meanwhile is on the shelf already, as it is now.
      const lasting = read.filter(({ text, facts: { uri } }) => !this.typed.has(uri) && this.stored.get(uri) === text);
      this.edits++;
      shelf.put(...lasting.map(({ facts }) => facts));
      for (const { facts } of lasting) this.stale.add(facts.uri);
      for (const uri of this.stored.leftOut()) this.stale.add(uri);
    } finally {
      this.loading--;
    }
  }

  /** Folders were closed: their files go, but for those still open in the editor. */
  leave(folders: readonly string[]): void {
    const gone = this.stored.close(folders).filter((uri) => !this.typed.has(uri));
    if (gone.length > 0) this.remove(...gone);
  }

  /** A text as it stands in the editor, opened or changed. */
  type(uri: string, text: string): void {
    this.closing.delete(uri);
    if (this.isReadOnly(uri) || this.typed.get(uri) === text) return;
    this.typed.set(uri, text);
    this.analyst?.forget();
    this.put(uri, text);
  }

  /** The editor let go of a file: what is on disk counts again, as soon as it is read. */
  async close(uri: string): Promise<void> {
    if (this.isReadOnly(uri) || !this.typed.has(uri)) return;
    this.closing.add(uri);
    await this.stored.read(uri);
    // It may have been opened again by now.
    if (!this.closing.delete(uri)) return;
    this.typed.delete(uri);
    this.putStored(uri);
  }

  /** A file was created, changed or deleted outside the editor. */
  async changedOnDisk(uri: string): Promise<void> {
    if (this.isReadOnly(uri)) return;
    const isNewest = await this.stored.read(uri);
    if (isNewest && !this.typed.has(uri)) this.putStored(uri);
  }

  /** Every file there is, the ones being typed in first. */
  uris(): readonly string[] {
    const all = this.desk.shelf.uris();
    return [...all.filter((uri) => this.typed.has(uri)), ...all.filter((uri) => !this.typed.has(uri))];
  }

  isTyped(uri: string): boolean {
    return this.typed.has(uri);
  }

  isKnown(uri: string): boolean {
    return this.desk.shelf.file(uri) !== undefined;
  }

  /** How a person wants findings told. */
  grade(grades: Grades): void {
    this.open().grades.set('', grades);
  }

  /** Of one file, as grave as the person wants them. */
  findings(uri: string): readonly Finding[] {
    return graded(this.desk.checks.file(uri), this.open().grades.get('') ?? AS_THEY_ARE);
  }

  /** The same as an editor shows them, remembered. */
  diagnostics(uri: string): readonly Diagnostic[] {
    this.stale.delete(uri);
    return this.isKnown(uri) ? this.open().diagnostics.get(uri) : this.leftOut(uri);
  }

  /** The work that leads to the findings of a file, in small steps; asked for afterwards, they are there at once. */
  *towardsFindings(uri: string): Generator<void> {
    const { shelf, checks } = this.desk;
    for (const { definition } of shelf.file(uri)?.definitions ?? []) yield* checks.towards(definition);
  }

  /** Of a file that has no text here: why not, where that is worth knowing. */
  private leftOut(uri: string): readonly Diagnostic[] {
    const trouble = this.stored.trouble(uri);
    if (trouble === undefined) return [];
    const { say, text } = this.wording;
    const message = say`${nameOf(uri)} was left out: ${text(trouble)}.`;
    const place = { uri, span: AT_ITS_HEAD };
    const finding: Finding = { code: 'left-out', severity: 'warning', message, place, related: [], fixes: [] };
    return diagnosticsOf(this.desk, graded([finding], this.open().grades.get('') ?? AS_THEY_ARE));
  }

  /** While folders are being read: only what no other file has a part in. */
  diagnosticsOfText(uri: string): readonly Diagnostic[] {
    const findings = graded(this.desk.checks.text(uri), this.open().grades.get('') ?? AS_THEY_ARE);
    return diagnosticsOf(this.desk, findings);
  }

  /** Files whose findings may be others than when they were last asked for, the ones being typed in first. */
  staleFiles(): readonly string[] {
    const all = [...this.stale];
    return [...all.filter((uri) => this.typed.has(uri)), ...all.filter((uri) => !this.typed.has(uri))];
  }

  /** The species library can be opened and closed like a file; it is on no disk and stays on the shelf. */
  private isReadOnly(uri: string): boolean {
    return this.workshop.shelf.isLibrary(uri);
  }

  private put(uri: string, text: string): void {
    this.edits++;
    this.stale.add(uri);
    this.workshop.shelf.put(this.read(uri, text, this.workshop.shelf.file(uri)));
  }

  private read(uri: string, text: string, before?: FileFacts): FileFacts {
    const { parser, workshop } = this.workshop;
    return readFile(uri, text, parser, before, (fault) => void workshop.barrier.note(fault));
  }

  private remove(...uris: readonly string[]): void {
    this.edits++;
    const { shelf } = this.workshop;
    shelf.remove(...uris);
    shelf.memo.forget(uris);
    // Whoever shows its findings is to take them away.
    for (const uri of uris) this.stale.add(uri);
  }

  private putStored(uri: string): void {
    const text = this.stored.get(uri);
    if (text !== undefined) this.put(uri, text);
    else if (this.workshop.shelf.file(uri)) this.remove(uri);
    // What was told of it may have changed.
    else this.stale.add(uri);
  }
}

/** For how long a request may have to wait while a folder is read, ms. */
const SLICE = 20;

const AT_ITS_HEAD = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/** The last word of an address, as a person reads it. */
function nameOf(uri: string): string {
  const word = uri.slice(uri.lastIndexOf('/') + 1);
  try {
    return inLine(decodeURIComponent(word));
  } catch {
    return inLine(word);
  }
}
