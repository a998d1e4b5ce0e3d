import { existsSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fetchOnce } from './fetch-once.js';

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
  const wanted = {
    source: join(root, 'tests/workbench/host'),
    cache: resolve(root, '.cache/workbench-host'),
    layout: 'v1',
    announcement: 'Fetching the browser edition of VS Code (once, about 310 MB on disk) …',
    finish: (fetched: string) => layOut(vscodeIn(fetched)),
  };
  const folder = fetchOnce(wanted, say);
  return { node: nodeFor(root), serverMain: join(vscodeIn(folder), 'out/server-main.js') };
}

function vscodeIn(folder: string): string {
  return join(folder, 'node_modules/code-server/lib/vscode');
}

function layOut(vscode: string): void {
  // The page asks the server for `lib/vscode/node_modules/…`; ours lie one level up, in one locked install.
  symlinkSync('../../../../node_modules', join(vscode, 'node_modules'), 'junction');
  dropExtensions(join(vscode, 'extensions'));
}

/** Built-in extensions that stay: colours, icons, and what opens the kinds of file a shop folder holds. */
const KEPT = /^(theme-|json|markdown-basics|configuration-editing|media-preview|references-view|search-result|diff$)/;

function dropExtensions(folder: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    if (entry.isDirectory() && !KEPT.test(entry.name)) rmSync(join(folder, entry.name), { recursive: true });
  }
}

/** The server needs Node 24; the project carries one for machines whose own Node is older. */
function nodeFor(root: string): string {
  const own = join(root, 'node_modules/node/bin/node');
  return existsSync(own) ? own : process.execPath;
}
