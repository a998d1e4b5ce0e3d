/** The server as an editor has it: a process of its own, spoken to over its input and output. */
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import {
  ConfigurationRequest,
  createProtocolConnection,
  type Diagnostic,
  InitializedNotification,
  InitializeRequest,
  LogMessageNotification,
  MessageType,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  RegistrationRequest,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { SERVER_FLAGS } from '../../extension/server-flags.js';
import { InstrumentsChanged } from '../../language/server/protocol.js';

export const SERVER = 'dist/server.cjs';

/** Superseded by the folders, and yet not optional in the protocol. */
const NO_ROOT = { rootUri: null };

export interface Publication {
  readonly version: number | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

export class ServerProcess {
  /** The last findings sent for each file. */
  readonly published = new Map<string, Publication>();
  /** Every publication, in order, for tests that look at what was said and withdrawn. */
  readonly said: { readonly uri: string; readonly diagnostics: readonly Diagnostic[] }[] = [];
  /** Faults the server wrote to its log, and whatever else it wrote where nothing belongs. */
  readonly faults: string[] = [];
  rounds = 0;

  private constructor(
    readonly connection: ProtocolConnection,
    private readonly child: ChildProcess,
    private readonly keepsAll: boolean,
  ) {
    connection.onNotification(PublishDiagnosticsNotification.type, ({ uri, version, diagnostics }) => {
      this.published.set(uri, { version, diagnostics });
      if (this.keepsAll) this.said.push({ uri, diagnostics });
    });
    connection.onNotification(LogMessageNotification.type, ({ type, message }) => {
      if (type === MessageType.Error || type === MessageType.Warning) this.faults.push(message);
    });
    connection.onNotification(InstrumentsChanged, () => {
      this.rounds++;
    });
    connection.onRequest(RegistrationRequest.type, () => undefined);
    connection.onRequest(ConfigurationRequest.type, ({ items }) => items.map(() => null));
    child.stderr?.on('data', (data: Buffer) => void this.faults.push(String(data).trim()));
    child.on('exit', (code, signal) => {
      if (!this.isQuitting) this.faults.push(`the server ended by itself: ${signal ?? code}`);
    });
  }

  private isQuitting = false;

  /** Starts the built server on these folders. `keepsAll`: everything it ever published is kept. */
  static async start(folders: readonly string[], { keepsAll = false, server = SERVER } = {}): Promise<ServerProcess> {
    if (!existsSync(server)) throw new Error(`${server} is not there: run \`npm run build\` first.`);
    const child = spawn(process.execPath, [...SERVER_FLAGS, server, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
    const connection = createProtocolConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    );
    connection.onError(() => undefined);
    child.stdin.on('error', () => undefined);
    const started = new ServerProcess(connection, child, keepsAll);
    connection.listen();
    await connection.sendRequest(InitializeRequest.type, {
      processId: process.pid,
      ...NO_ROOT,
      capabilities: {
        workspace: {
          didChangeWatchedFiles: { dynamicRegistration: true },
          workspaceFolders: true,
          configuration: true,
        },
      },
      workspaceFolders: folders.map((uri) => ({ uri, name: uri })),
    });
    void connection.sendNotification(InitializedNotification.type, {});
    return started;
  }

  get hasEnded(): boolean {
    return this.child.exitCode !== null || this.child.signalCode !== null;
  }

  /** Resident memory in MB; undefined where the system does not say. */
  get resident(): number | undefined {
    try {
      const pages = readFileSync(`/proc/${this.child.pid}/statm`, 'utf8').split(' ')[1];
      return (Number(pages) * 4096) / 1e6;
    } catch {
      return undefined;
    }
  }

  /** Seconds of CPU so far; undefined where the system does not say. */
  get cpu(): number | undefined {
    try {
      const fields = readFileSync(`/proc/${this.child.pid}/stat`, 'utf8').split(') ')[1]!.split(' ');
      return (Number(fields[11]) + Number(fields[12])) / 100;
    } catch {
      return undefined;
    }
  }

  async quit(): Promise<void> {
    this.isQuitting = true;
    const ended = new Promise<void>((go) => {
      if (this.hasEnded) go();
      else this.child.once('exit', () => go());
    });
    const patience = setTimeout(() => void this.child.kill('SIGKILL'), 3000);
    if (!this.hasEnded) {
      await Promise.race([this.connection.sendRequest(ShutdownRequest.type).catch(() => undefined), ended]);
      await this.connection.sendNotification('exit').catch(() => undefined);
    }
    await ended;
    clearTimeout(patience);
    this.connection.dispose();
  }
}
