import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export interface Wanted {
  /** Folder with the `package.json` and lock file of what is wanted. */
  readonly source: string;
  /** Folder that is to hold it. Whatever else lies there is an older one, and goes. */
  readonly cache: string;
  /** Changed when `finish` changes, so that what an older one left is thrown away. */
  readonly layout: string;
  /** Said before fetching, which takes a while. */
  readonly announcement: string;
  /** What is still to be done once the packages are there. */
  readonly finish: (folder: string) => void;
}

/**
 * Packages fetched once for each lock file; a second call returns at once. Gives the folder with their `node_modules`.
 * Throws an `Error` with a plain message when they cannot be fetched.
 */
export function fetchOnce(
  { source, cache, layout, announcement, finish }: Wanted,
  say: (line: string) => void,
): string {
  const lock = readFileSync(join(source, 'package-lock.json'));
  const fingerprint = createHash('sha256').update(lock).update(layout).digest('hex').slice(0, 12);
  const folder = join(cache, fingerprint);
  const stamp = join(folder, 'ready');
  if (existsSync(stamp)) return folder;

  say(announcement);
  rmSync(cache, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const file of ['package.json', 'package-lock.json']) cpSync(join(source, file), join(folder, file));
  installPackages(folder);
  finish(folder);
  writeFileSync(stamp, `${new Date().toISOString()}\n`);
  return folder;
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
