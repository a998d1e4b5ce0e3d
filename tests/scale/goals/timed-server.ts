/** A language server in a process of its own, ours or another, and the processor's time it takes for what it is told. */
import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import {
  type ClientCapabilities,
  ConfigurationRequest,
  createProtocolConnection,
  DidChangeTextDocumentNotification,
  DidOpenTextDocumentNotification,
  InitializedNotification,
  InitializeRequest,
  type Position,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  RegistrationRequest,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { InstrumentsChanged } from '../../../language/server/protocol.js';

export interface Program {
  readonly name: string;
  /** What Node is called with. */
  readonly arguments: readonly string[];
  readonly languageId: string;
  /** By section, for a server that asks what is set. */
  readonly settings?: Readonly<Record<string, unknown>>;
}

/** One message the server wrote: the number it answers or its method, the file it is about, and the time taken by then. */
interface Written {
  readonly name: string;
  readonly uri?: string;
  /** µs */
  readonly cpu: number;
}

interface Told {
  readonly cpu: number;
  readonly heap: number;
  readonly written: readonly Written[];
}

interface Awaited {
  readonly holds: (name: string, uri?: string) => boolean;
  readonly go: (findings: number) => void;
}

/** Superseded by the folders, and yet not optional in the protocol. */
const NO_ROOT = { rootUri: null };

const TELL = 'tests/scale/goals/tell.cjs';

const CAPABILITIES: ClientCapabilities = {
  workspace: { didChangeWatchedFiles: { dynamicRegistration: true }, workspaceFolders: true, configuration: true },
  textDocument: { hover: { contentFormat: ['markdown'] }, synchronization: {} },
};

export class TimedServer {
  private readonly texts = new Map<string, { text: string; version: number }>();
  private readonly awaited = new Set<Awaited>();
  private requests = 0;

  private constructor(
    readonly program: Program,
    private readonly child: ChildProcess,
    readonly connection: ProtocolConnection,
  ) {
    const heard = (name: string, uri?: string, findings = 0) => {
      for (const each of this.awaited) if (each.holds(name, uri)) each.go(findings);
    };
    connection.onNotification(PublishDiagnosticsNotification.type, ({ uri, diagnostics }) => {
      heard('textDocument/publishDiagnostics', uri, diagnostics.length);
    });
    connection.onNotification(InstrumentsChanged, () => {
      heard('round');
    });
    connection.onRequest(RegistrationRequest.type, () => undefined);
    connection.onRequest(ConfigurationRequest.type, ({ items }) =>
      items.map(({ section }) => program.settings?.[section ?? ''] ?? null),
    );
  }

  static async start(program: Program, folder: string): Promise<TimedServer> {
    const child = spawn(process.execPath, ['--require', resolve(TELL), ...program.arguments, '--stdio'], {
      stdio: ['pipe', 'pipe', 'inherit', 'ipc'],
    });
    const connection = createProtocolConnection(
      new StreamMessageReader(child.stdout!),
      new StreamMessageWriter(child.stdin!),
    );
    const started = new TimedServer(program, child, connection);
    connection.listen();
    await connection.sendRequest(InitializeRequest.type, {
      processId: process.pid,
      ...NO_ROOT,
      capabilities: CAPABILITIES,
      workspaceFolders: [{ uri: folder, name: 'shop' }],
    });
    void connection.sendNotification(InitializedNotification.type, {});
    return started;
  }

  /** Waits for findings of a file, and how many they are, or for the end of a round over all of them (`round`). */
  heard(name: 'round' | 'findings', uri?: string): Promise<number> {
    return new Promise((done) => {
      const method = name === 'round' ? name : 'textDocument/publishDiagnostics';
      const each: Awaited = {
        holds: (said, about) => said === method && (uri === undefined || uri === about),
        go: (findings) => {
          this.awaited.delete(each);
          done(findings);
        },
      };
      this.awaited.add(each);
    });
  }

  open(uri: string, text: string): void {
    this.texts.set(uri, { text, version: 1 });
    const textDocument = { uri, languageId: this.program.languageId, version: 1, text };
    void this.connection.sendNotification(DidOpenTextDocumentNotification.type, { textDocument });
  }

  /** Replaces so many characters of an open file. */
  type(uri: string, at: number, cut: number, letters: string): void {
    const file = this.texts.get(uri)!;
    const range = { start: positionOf(file.text, at), end: positionOf(file.text, at + cut) };
    file.text = file.text.slice(0, at) + letters + file.text.slice(at + cut);
    file.version++;
    void this.connection.sendNotification(DidChangeTextDocumentNotification.type, {
      textDocument: { uri, version: file.version },
      contentChanges: [{ range, text: letters }],
    });
  }

  /** A request; the number its answer carries, by which it is found in what was written. An empty answer counts as none. */
  async ask(method: string, params: unknown): Promise<string> {
    // The library's connection numbers its requests from nought, and the first was `initialize`.
    const number = String(++this.requests);
    const answer = await this.connection.sendRequest<unknown>(method, params);
    if (answer === null || answer === undefined) throw new Error(`${this.program.name} has no answer to ${method}`);
    return number;
  }

  /** What it wrote since it was last asked, and the time taken by now, µs. */
  told(question: 'time' | 'heap' = 'time'): Promise<Told> {
    return new Promise((done) => {
      this.child.once('message', (message) => done(message as Told));
      this.child.send(question);
    });
  }

  /** Waits until nothing more is done. */
  async rest(): Promise<Told> {
    let before = await this.told();
    const written = [...before.written];
    for (;;) {
      await new Promise((go) => void setTimeout(go, QUIET));
      const now = await this.told();
      written.push(...now.written);
      if (now.cpu - before.cpu < 3000) return { ...now, written };
      before = now;
    }
  }

  /** Resident memory, MB. */
  get resident(): number {
    const pages = readFileSync(`/proc/${this.child.pid}/statm`, 'utf8').split(' ')[1];
    return (Number(pages) * 4096) / 1e6;
  }

  stop(): void {
    this.connection.dispose();
    this.child.kill();
  }
}

/** ms */
const QUIET = 40;

export function positionOf(text: string, offset: number): Position {
  const before = text.slice(0, offset);
  const line = before.split('\n').length - 1;
  return { line, character: offset - (before.lastIndexOf('\n') + 1) };
}
