/**
 * Plays actions to a server as an editor would, and keeps by itself what the texts must be now: with an index of lines of
 * its own, so that it does not share the server's mistakes.
 */
import {
  CancellationTokenSource,
  DidChangeTextDocumentNotification,
  DidChangeWatchedFilesNotification,
  DidChangeWorkspaceFoldersNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  FileChangeType,
  LSPErrorCodes,
  type Position,
  ResponseError,
} from 'vscode-languageserver/node';
import type { Action, Change } from './action.js';
import { Dice } from './dice.js';
import type { Folders } from './folders.js';
import { OF_FOLDER, ofFile, ofFileSolved, ofPlace, type Question } from './questions.js';
import type { ServerProcess } from './server-process.js';
import { numberChanged, rewritten } from './typing.js';

export interface OpenFile {
  text: string;
  version: number;
  readonly past: string[];
}

const KEPT_PAST = 30;

export class Player {
  readonly open = new Map<string, OpenFile>();
  isSecondOpen = false;
  readonly counts = { actions: 0, edits: 0, requests: 0 };
  readonly errors: string[] = [];
  private readonly awaited = new Set<Promise<unknown>>();

  constructor(
    readonly server: ServerProcess,
    readonly folders: Folders,
  ) {}

  play(action: Action): void {
    this.counts.actions++;
    switch (action.do) {
      case 'open': {
        this.ensureOpen(this.path(action.file));
        return;
      }
      case 'close': {
        this.close(this.path(action.file));
        return;
      }
      case 'edit': {
        this.edit(this.path(action.file), action.changes, action.skips);
        return;
      }
      case 'type': {
        this.type(this.path(action.file), action.at, action.text);
        return;
      }
      case 'rewrite': {
        this.become(this.path(action.file), (text) => rewritten(text, new Dice(action.seed)));
        return;
      }
      case 'number': {
        this.become(this.path(action.file), (text) => numberChanged(text, new Dice(action.seed)));
        return;
      }
      case 'undo': {
        this.undo(this.path(action.file), action.steps);
        return;
      }
      case 'late': {
        this.late(this.path(action.file), action.text);
        return;
      }
      case 'save': {
        this.save(this.path(action.file));
        return;
      }
      case 'write': {
        const path = this.path(action.file);
        this.folders.write(path, rewritten(this.folders.read(path), new Dice(action.seed)), action.as);
        this.changed([path, FileChangeType.Changed]);
        return;
      }
      case 'create': {
        const path = this.folders.newPath(action.name);
        this.folders.write(path, this.folders.read(this.path(action.from)));
        this.changed([path, FileChangeType.Created]);
        return;
      }
      case 'delete': {
        this.delete(this.path(action.file));
        return;
      }
      case 'rename': {
        this.rename(this.path(action.file), this.folders.newPath(action.name));
        return;
      }
      case 'folder': {
        this.second(action.isOpen);
        return;
      }
      case 'ask': {
        this.askAside(action);
        return;
      }
    }
  }

  /** The file a number stands for: of those on the disk and those open. */
  private path(file: number): string {
    const paths = this.paths();
    return paths[file % paths.length]!;
  }

  paths(): readonly string[] {
    const there = this.folders.paths();
    return [...there, ...[...this.open.keys()].filter((path) => !there.includes(path)).sort()];
  }

  private uri(path: string): string {
    return this.folders.uri(path);
  }

  private ensureOpen(path: string): void {
    if (this.open.has(path)) return;
    const file: OpenFile = { text: this.folders.read(path), version: 1, past: [] };
    this.open.set(path, file);
    openIn(this.server, this.uri(path), file);
  }

  private close(path: string): void {
    if (!this.open.delete(path)) return;
    const textDocument = { uri: this.uri(path) };
    void this.server.connection.sendNotification(DidCloseTextDocumentNotification.type, { textDocument });
  }

  private edit(path: string, changes: readonly Change[], skips = 0): void {
    this.ensureOpen(path);
    const file = this.open.get(path)!;
    let { text } = file;
    const contentChanges = changes.map((change) => {
      const start = offsetToTell(text, change.at % (text.length + 1));
      const end = offsetToTell(text, Math.min(text.length, start + change.cut));
      const range = { start: positionAt(text, start), end: positionAt(text, end) };
      text = text.slice(0, start) + change.text + text.slice(end);
      return { range, text: change.text };
    });
    this.tell(path, file, text, contentChanges, skips);
  }

  private type(path: string, at: number, letters: string): void {
    this.ensureOpen(path);
    let place = at % (this.open.get(path)!.text.length + 1);
    for (const letter of letters) {
      this.edit(path, [{ at: place, cut: 0, text: letter }]);
      place += letter.length;
    }
  }

  private become(path: string, made: (text: string) => string): void {
    this.ensureOpen(path);
    const file = this.open.get(path)!;
    const text = made(file.text);
    this.tell(path, file, text, [{ text }]);
  }

  private undo(path: string, steps: number): void {
    const file = this.open.get(path);
    const text = file?.past.at(-steps);
    if (!file || text === undefined) return;
    this.tell(path, file, text, [{ text }]);
  }

  private tell(path: string, file: OpenFile, text: string, contentChanges: readonly object[], skips = 0): void {
    this.counts.edits++;
    file.past.push(file.text);
    if (file.past.length > KEPT_PAST) file.past.shift();
    file.text = text;
    file.version += 1 + skips;
    this.tellChange(path, file.version, contentChanges);
  }

  private late(path: string, text: string): void {
    const file = this.open.get(path);
    if (!file) return;
    const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
    this.tellChange(path, file.version, [{ range, text }]);
    this.tellChange(path, file.version - 1, [{ text }]);
  }

  private tellChange(path: string, version: number, contentChanges: readonly object[]): void {
    const textDocument = { uri: this.uri(path), version };
    void this.server.connection.sendNotification(DidChangeTextDocumentNotification.method, {
      textDocument,
      contentChanges,
    });
  }

  private save(path: string): void {
    const file = this.open.get(path);
    if (!file) return;
    this.folders.write(path, file.text);
    this.changed([path, FileChangeType.Changed]);
  }

  private delete(path: string): void {
    this.folders.delete(path);
    this.changed([path, FileChangeType.Deleted]);
  }

  /** As an editor does it: the text of an open file moves along. */
  private rename(from: string, to: string): void {
    if (from === to || !this.folders.paths().includes(from)) return;
    const wasOpen = this.open.has(from);
    this.close(from);
    this.close(to);
    this.folders.rename(from, to);
    this.changed([from, FileChangeType.Deleted], [to, FileChangeType.Created]);
    if (wasOpen) this.ensureOpen(to);
  }

  /** An editor watches the folders that are open, and no others. */
  private changed(...files: readonly (readonly [string, FileChangeType])[]): void {
    const isWatched = (path: string) => this.isSecondOpen || !path.startsWith(this.folders.second);
    const changes = files.filter(([path]) => isWatched(path)).map(([path, type]) => ({ uri: this.uri(path), type }));
    if (changes.length === 0) return;
    void this.server.connection.sendNotification(DidChangeWatchedFilesNotification.type, { changes });
  }

  private second(isOpen: boolean): void {
    if (isOpen === this.isSecondOpen) return;
    this.isSecondOpen = isOpen;
    const folder = [{ uri: this.uri(this.folders.second), name: 'other' }];
    const event = isOpen ? { added: folder, removed: [] } : { added: [], removed: folder };
    void this.server.connection.sendNotification(DidChangeWorkspaceFoldersNotification.type, { event });
  }

  private askAside({ file, what, at, isWithdrawn }: Action & { do: 'ask' }): void {
    const path = this.path(file);
    const text = this.open.get(path)?.text ?? this.folders.read(path);
    const questions = [
      ...ofFile(this.uri(path)),
      ...ofFileSolved(this.uri(path)),
      ...ofPlace(this.uri(path), positionAt(text, at % (text.length + 1))),
      ...OF_FOLDER,
    ];
    const source = new CancellationTokenSource();
    const answer = this.ask(questions[what % questions.length]!, source);
    if (isWithdrawn) source.cancel();
    this.awaited.add(answer);
    void answer.finally(() => this.awaited.delete(answer));
  }

  /** Waits for what was asked aside. */
  async answered(): Promise<void> {
    await Promise.all(this.awaited);
  }

  /** The answer; an error is noted, and `undefined` the answer. */
  async ask({ method, params }: Question, source = new CancellationTokenSource()): Promise<unknown> {
    this.counts.requests++;
    try {
      const { connection } = this.server;
      return params === undefined
        ? await connection.sendRequest(method, source.token)
        : await connection.sendRequest(method, params, source.token);
    } catch (error) {
      // A request that cannot be met, and says why to the person who asked.
      if (error instanceof ResponseError && error.code === LSPErrorCodes.RequestFailed)
        return { refused: error.message };
      const isWithdrawn = error instanceof ResponseError && error.code === LSPErrorCodes.RequestCancelled;
      if (!isWithdrawn || !source.token.isCancellationRequested) this.errors.push(`${method}: ${String(error)}`);
      return undefined;
    }
  }
}

export function openIn(server: ServerProcess, uri: string, { version, text }: OpenFile): void {
  const textDocument = { uri, languageId: 'bookmatch', version, text };
  void server.connection.sendNotification(DidOpenTextDocumentNotification.type, { textDocument });
}

/** No place can be told between a CR and its LF. */
function offsetToTell(text: string, offset: number): number {
  return text[offset - 1] === '\r' && text[offset] === '\n' ? offset - 1 : offset;
}

/** By the protocol: lines end with LF, CR LF or a lone CR; characters are counted in UTF-16. */
export function positionAt(text: string, offset: number): Position {
  const lines = text.slice(0, offset).split(/\r\n|\n|\r/);
  // A CR just before the place, whose LF comes after it, is half of a line's end.
  if (text[offset - 1] === '\r' && text[offset] === '\n') lines.pop();
  return { line: lines.length - 1, character: lines.at(-1)!.length };
}
