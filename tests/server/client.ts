/** An editor made of strings, talking to the server over a connection in memory: `await openEditor({ 'a': '…' })`. */
import { PassThrough } from 'node:stream';
import {
  type ClientCapabilities,
  CodeLensRefreshRequest,
  ConfigurationRequest,
  createConnection,
  DidChangeConfigurationNotification,
  createProtocolConnection,
  type Diagnostic,
  DidChangeTextDocumentNotification,
  DidChangeWatchedFilesNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  FileChangeType,
  InitializedNotification,
  InlayHintRefreshRequest,
  InitializeRequest,
  type InitializeResult,
  LogMessageNotification,
  type Position,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  type Range,
  RegistrationRequest,
  ShowMessageNotification,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
  type TextDocumentPositionParams,
} from 'vscode-languageserver/node';
import type { PlateWorker } from '../../language/recipes/evaluation/deferred-analyst.js';
import { InstrumentsChanged } from '../../language/server/protocol.js';
import { serve } from '../../language/server/serve.js';
import type { Translations } from '../../language/wording/wording.js';
import { translationsOf } from '../wording/translations.js';

type Settings = Record<string, unknown>;

export class Editor {
  /** The last findings sent for each file, with the version they were sent for. */
  readonly published = new Map<string, PublishDiagnosticsParams>();
  /** What the server wrote to its log: faults of its own. */
  readonly log: string[] = [];
  /** What the person was told in a message. */
  readonly told: string[] = [];
  /** How often the server has said that hints and lenses asked for before are out of date. */
  readonly outdated = { hints: 0, lenses: 0 };
  private rounds = 0;
  private readonly waiting: (() => void)[] = [];

  constructor(
    readonly connection: ProtocolConnection,
    /** The disk: change it and say `changedOnDisk`. */
    readonly disk: Map<string, string>,
    /** What a person has set, by section: change it and say `configured`. */
    readonly settings: Settings = {},
  ) {
    connection.onNotification(PublishDiagnosticsNotification.type, (sent) => void this.published.set(sent.uri, sent));
    connection.onNotification(LogMessageNotification.type, ({ message }) => void this.log.push(message));
    connection.onNotification(ShowMessageNotification.type, ({ message }) => void this.told.push(message));
    connection.onRequest(RegistrationRequest.type, () => undefined);
    connection.onRequest(ConfigurationRequest.type, ({ items }) =>
      items.map(({ section }) => this.settings[section ?? ''] ?? null),
    );
    connection.onRequest(InlayHintRefreshRequest.type, () => {
      this.outdated.hints++;
    });
    connection.onRequest(CodeLensRefreshRequest.type, () => {
      this.outdated.lenses++;
    });
    connection.onNotification(InstrumentsChanged, () => {
      this.rounds++;
      for (const go of this.waiting.splice(0)) go();
    });
  }

  /** Does something, and waits until every finding that follows from it is out. */
  async settled(work: () => void): Promise<void> {
    const before = this.rounds;
    work();
    while (this.rounds === before) await new Promise<void>((go) => this.waiting.push(go));
  }

  open(uri: string, text = this.disk.get(uri) ?? '', version = 1): void {
    const textDocument = { uri, languageId: 'bookmatch', version, text };
    void this.connection.sendNotification(DidOpenTextDocumentNotification.type, { textDocument });
  }

  /** Replaces the whole text, or with a range that part of it. */
  type(uri: string, version: number, text: string, range?: Range): void {
    void this.connection.sendNotification(DidChangeTextDocumentNotification.type, {
      textDocument: { uri, version },
      contentChanges: [range ? { range, text } : { text }],
    });
  }

  close(uri: string): void {
    void this.connection.sendNotification(DidCloseTextDocumentNotification.type, { textDocument: { uri } });
  }

  configured(): void {
    void this.connection.sendNotification(DidChangeConfigurationNotification.type, { settings: null });
  }

  changedOnDisk(uri: string): void {
    const type = this.disk.has(uri) ? FileChangeType.Changed : FileChangeType.Deleted;
    void this.connection.sendNotification(DidChangeWatchedFilesNotification.type, { changes: [{ uri, type }] });
  }

  codes(uri: string): readonly (string | number | undefined)[] {
    return (this.published.get(uri)?.diagnostics ?? []).map((diagnostic: Diagnostic) => diagnostic.code);
  }

  messages(uri: string): string {
    return (this.published.get(uri)?.diagnostics ?? [])
      .map(({ message }) => (typeof message === 'string' ? message : message.value))
      .join('\n');
  }

  async quit(): Promise<void> {
    await this.connection.sendRequest(ShutdownRequest.type);
    this.connection.end();
    this.connection.dispose();
  }
}

/** Superseded by the folders, and yet not optional in the protocol. */
const NO_ROOT = { rootUri: null };

export interface OpenEditor {
  readonly editor: Editor;
  readonly initialized: InitializeResult;
}

export interface EditorOptions extends Pick<ClientCapabilities, 'textDocument' | 'workspace'> {
  readonly locale?: string;
  /** Solves plates; without it nobody does. */
  readonly worker?: PlateWorker;
  readonly settings?: Settings;
  /** The table of German words, when another than the real one is wanted. */
  readonly translations?: Translations;
}

/** Starts a server on a folder with these files, by URI, and waits for the first round of findings. */
export async function openEditor(
  files: Readonly<Record<string, string>>,
  { locale, textDocument, workspace, worker, settings = {}, translations }: EditorOptions = {},
): Promise<OpenEditor> {
  const [up, down] = [new PassThrough(), new PassThrough()];
  const disk = new Map(Object.entries(files));
  const served = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  // The server's own connection would end this process with the editor's; a test has other plans.
  served.onExit(() => undefined);
  const folder = {
    list: () => Promise.resolve([...disk.keys()]),
    read: (uri: string) => Promise.resolve(disk.get(uri)),
  };
  serve(served, folder, worker, (language) => Promise.resolve(translations ?? translationsOf(language)));
  const connection = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const editor = new Editor(connection, disk, settings);
  connection.listen();
  const initialized = await connection.sendRequest(InitializeRequest.type, {
    processId: null,
    locale,
    ...NO_ROOT,
    capabilities: { workspace: { didChangeWatchedFiles: { dynamicRegistration: true }, ...workspace }, textDocument },
    workspaceFolders: [{ uri: 'file:///shop', name: 'shop' }],
  });
  await editor.settled(() => void connection.sendNotification(InitializedNotification.type, {}));
  return { editor, initialized };
}

/** The place of a word in a text: at its beginning, or so many characters on. */
export function placeOf(text: string, word: string, on = 0): Position {
  const at = text.indexOf(word);
  if (at < 0) throw new Error(`the text has no ${word}`);
  const before = text.slice(0, at + on).split('\n');
  return { line: before.length - 1, character: before.at(-1)!.length };
}

export function at(uri: string, text: string, word: string, on = 1): TextDocumentPositionParams {
  return { textDocument: { uri }, position: placeOf(text, word, on) };
}
