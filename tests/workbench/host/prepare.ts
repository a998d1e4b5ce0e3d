import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readFileSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

/** VS Code's server, unpacked and ready to start. */
export interface PreparedHost {
  /** The Node that runs it. */
  readonly node: string;
  /** Its entry file. */
  readonly serverMain: string;
}

/**
 * Unpack VS Code's server into `.cache/`, once for each lock file; a second call returns at once.
 * Throws an `Error` with a plain message when the packages cannot be fetched.
 */
export function prepareHost(say: (line: string) => void, root = process.cwd()): PreparedHost {
  const source = join(root, 'tests/workbench/host');
  const lock = readFileSync(join(source, 'package-lock.json'));
  const fingerprint = createHash('sha256').update(lock).update(LAYOUT).digest('hex').slice(0, 12);
  const folder = resolve(root, '.cache/workbench-host', fingerprint);
  const vscode = join(folder, 'node_modules/code-server/lib/vscode');
  const prepared = { node: nodeFor(root), serverMain: join(vscode, 'out/server-main.js') };
  const stamp = join(folder, 'ready');
  if (existsSync(stamp)) return prepared;

  say('Fetching the browser edition of VS Code (once, about 310 MB on disk) …');
  rmSync(resolve(root, '.cache/workbench-host'), { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const file of ['package.json', 'package-lock.json']) cpSync(join(source, file), join(folder, file));
  installPackages(folder);
  // The page asks the server for `lib/vscode/node_modules/…`; ours lie one level up, in one locked install.
  symlinkSync('../../../../node_modules', join(vscode, 'node_modules'), 'junction');
  dropExtensions(join(vscode, 'extensions'));
  writeFileSync(stamp, `${new Date().toISOString()}\n`);
  return prepared;
}

/** Change this when the steps below change, so that an older unpacked host is thrown away. */
const LAYOUT = 'v1';

/** Built-in extensions that stay: colours, icons, and what opens the kinds of file a shop folder holds. */
const KEPT = /^(theme-|json|markdown-basics|configuration-editing|media-preview|references-view|search-result|diff$)/;

function dropExtensions(folder: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    if (entry.isDirectory() && !KEPT.test(entry.name)) rmSync(join(folder, entry.name), { recursive: true });
  }
}

/** Install scripts stay off: nothing is compiled, and the server runs without the native parts. */
function installPackages(folder: string): void {
  const args = ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  const result = spawnSync('npm', args, { cwd: folder, encoding: 'utf8', env: withoutNpmSettings() });
  if (result.status === 0) return;
  const reason = result.error?.message ?? `${result.stdout}${result.stderr}`.trim();
  throw new Error(`The browser edition of VS Code could not be fetched; is the network there?\n${reason}`);
}

/** Run from an npm script, npm hands its own settings down; they would make `npm ci` act on this project instead. */
function withoutNpmSettings(): NodeJS.ProcessEnv {
  return Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !/^npm_(config_local_prefix|package_|lifecycle_)/.test(name)),
  );
}

/** The server needs Node 24; the project carries one for machines whose own Node is older. */
function nodeFor(root: string): string {
  const own = join(root, 'node_modules/node/bin/node');
  return existsSync(own) ? own : process.execPath;
}
