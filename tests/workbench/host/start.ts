import { spawn, type ChildProcess } from 'node:child_process';
import { createWriteStream, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { once } from 'node:events';
import { QUIET_SETTINGS } from './settings.js';
import type { PreparedHost } from './prepare.js';

export interface HostOptions {
  /** An empty folder of this run's own: settings, extensions and logs go here. */
  readonly runFolder: string;
  /** Packaged extension to install. */
  readonly vsix?: string;
  /** User settings on top of the quiet ones. */
  readonly settings?: Readonly<Record<string, unknown>>;
  /** Whether folders start out restricted until they are trusted; off by default. */
  readonly trust?: boolean;
  /** 0, the default, takes any free port. */
  readonly port?: number;
}

export interface RunningHost {
  readonly port: number;
  /** The page that shows `folder`, and opens `file` in it if given. Both are absolute paths. */
  pageFor(folder: string, file?: string): string;
  /** Ends the server and every process it started. */
  stop(): Promise<void>;
}

/** Start VS Code's server on this machine only. Rejects with the end of its log when it does not come up. */
export async function startHost(host: PreparedHost, options: HostOptions): Promise<RunningHost> {
  const { runFolder } = options;
  const extensions = join(runFolder, 'extensions');
  // Not in the run's folder: the path of a socket may have no more than some hundred characters.
  const sockets = mkdtempSync(join(tmpdir(), 'bookmatch-'));
  for (const folder of [extensions, join(runFolder, 'data/User')]) mkdirSync(folder, { recursive: true });
  const settings = { ...QUIET_SETTINGS, ...(options.trust ? ASK_NOTHING : {}), ...options.settings };
  writeFileSync(join(runFolder, 'data/User/settings.json'), JSON.stringify(settings, null, 2));

  const args = [
    host.serverMain,
    ...['--host', '127.0.0.1', '--port', String(options.port ?? 0), '--without-connection-token'],
    ...['--accept-server-license-terms', '--telemetry-level', 'off'],
    ...(options.trust ? [] : ['--disable-workspace-trust']),
    ...['--server-data-dir', runFolder, '--extensions-dir', extensions],
    ...(options.vsix ? ['--install-extension', options.vsix, '--start-server'] : []),
  ];
  // A process group of its own, so that the extension hosts it forks end with it.
  const env = { ...process.env, XDG_RUNTIME_DIR: sockets };
  const server = spawn(host.node, args, { detached: true, env, stdio: ['ignore', 'pipe', 'pipe'] });
  const logFile = join(runFolder, 'server.log');
  const log = createWriteStream(logFile);
  server.stdout.pipe(log);
  server.stderr.pipe(log);
  const end = () => signal(server.pid, 'SIGKILL');
  process.once('exit', end);
  const stop = async () => {
    await endGroup(server);
    process.off('exit', end);
    rmSync(sockets, { recursive: true, force: true });
  };
  try {
    const port = await announcedPort(server);
    return { port, pageFor: (folder, file) => pageAddress(port, folder, file), stop };
  } catch (error) {
    await stop();
    const tail = readFileSync(logFile, 'utf8').slice(-2000);
    throw new Error(`VS Code's server did not start: ${(error as Error).message}\n${tail}`, { cause: error });
  }
}

/** Folders are restricted, and nobody is asked whether they should be. */
const ASK_NOTHING = {
  'security.workspace.trust.enabled': true,
  'security.workspace.trust.startupPrompt': 'never',
};

const START_LIMIT_MS = 90_000;

function announcedPort(server: ChildProcess): Promise<number> {
  return new Promise((found, failed) => {
    const late = setTimeout(() => failed(new Error(`no answer after ${START_LIMIT_MS / 1000} s`)), START_LIMIT_MS);
    let seen = '';
    server.stdout?.on('data', (chunk: Buffer) => {
      seen += chunk.toString();
      const port = /Extension host agent listening on (\d+)/.exec(seen)?.[1];
      if (port === undefined || !seen.includes('Extension host agent started')) return;
      clearTimeout(late);
      found(Number(port));
    });
    server.once('error', failed);
    server.once('exit', (code) => {
      clearTimeout(late);
      failed(new Error(`it ended with code ${code}`));
    });
  });
}

function pageAddress(port: number, folder: string, file?: string): string {
  const address = new URL(`http://127.0.0.1:${port}/`);
  address.searchParams.set('folder', folder);
  const open = file && [['openFile', `vscode-remote://127.0.0.1:${port}${file}`]];
  if (open) address.searchParams.set('payload', JSON.stringify(open));
  return address.href;
}

async function endGroup(leader: ChildProcess): Promise<void> {
  const gone = leader.exitCode === null && leader.signalCode === null ? once(leader, 'exit') : Promise.resolve();
  signal(leader.pid, 'SIGTERM');
  await Promise.race([gone, new Promise((later) => setTimeout(later, 3000))]);
  signal(leader.pid, 'SIGKILL');
}

function signal(group: number | undefined, name: NodeJS.Signals): void {
  if (group === undefined) return;
  try {
    process.kill(-group, name);
  } catch {
    // Nothing of the group is left.
  }
}
