import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { PreparedHost } from './prepare.js';

/** Have VS Code itself unpack a packaged extension below `folder`; gives the extension's own folder. */
export function installExtension(host: PreparedHost, vsix: string, folder: string): string {
  const extensions = join(folder, 'extensions');
  const args = [host.serverMain, '--accept-server-license-terms', '--server-data-dir', folder];
  args.push('--extensions-dir', extensions, '--install-extension', vsix);
  const { status, stdout, stderr } = spawnSync(host.node, args, { encoding: 'utf8', timeout: 60_000 });
  const [found] = status === 0 ? readdirSync(extensions).filter((name) => name.startsWith('bookmatch.')) : [];
  if (found === undefined) throw new Error(`${vsix} could not be installed:\n${stdout}${stderr}`);
  return join(extensions, found);
}
