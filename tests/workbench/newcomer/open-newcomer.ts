import { copyFileSync, cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { TestProject } from 'vitest/node';
import { openBrowser } from '../host/open-browser.js';
import { prepareHost } from '../host/prepare.js';
import { startHost } from '../host/start.js';
import { packagedExtension } from '../open-workbench.js';

declare module 'vitest' {
  interface ProvidedContext {
    /** Page with a copy of the example shop that nobody has trusted. */
    restrictedPage: string;
    /** Page with an empty folder. */
    emptyPage: string;
    emptyFolder: string;
  }
}

const KEPT = '.cache/workbench-newcomer';

/** Before the journeys: VS Code with the packaged extension, in which folders are restricted until trusted. */
export default async function openNewcomer(project: TestProject): Promise<() => Promise<void>> {
  const host = prepareHost(console.log);
  mkdirSync(KEPT, { recursive: true });
  const runFolder = mkdtempSync(resolve('.cache/run-'));
  const [shop, empty] = [join(runFolder, 'hollin-reach'), join(runFolder, 'new-shop')];
  cpSync('examples/hollin-reach', shop, { recursive: true });
  layTrap(shop);
  mkdirSync(empty);
  const running = await startHost(host, { runFolder, vsix: packagedExtension(), trust: true });
  const { page, address, close } = await openBrowser(runFolder);
  await page.goto(running.pageFor(shop));
  await page.locator('.monaco-workbench .explorer-folders-view .monaco-list-row').first().waitFor({ timeout: 90_000 });

  project.provide('browser', address);
  project.provide('shop', shop);
  project.provide('restrictedPage', running.pageFor(shop));
  project.provide('emptyPage', running.pageFor(empty));
  project.provide('emptyFolder', empty);
  return async () => {
    await close();
    await running.stop();
    copyFileSync(join(runFolder, 'server.log'), join(KEPT, 'server.log'));
    rmSync(runFolder, { recursive: true, force: true });
  };
}

/** Whatever in a folder might be run without anybody asking: each leaves a file `sprung` behind. */
function layTrap(shop: string): void {
  const spring = "require('node:fs').writeFileSync(require('node:path').join(__dirname, 'sprung'), '')";
  for (const name of ['index.js', 'bookmatch.config.js', 'server.cjs', 'solver.cjs']) {
    writeFileSync(join(shop, name), spring);
  }
  mkdirSync(join(shop, '.vscode'));
  mkdirSync(join(shop, 'dist/wording'), { recursive: true });
  for (const name of ['server.cjs', 'solver.cjs', 'extension.cjs']) writeFileSync(join(shop, 'dist', name), spring);
  const tasks = [{ label: 'trap', type: 'shell', command: 'touch sprung', runOptions: { runOn: 'folderOpen' } }];
  writeFileSync(join(shop, '.vscode/tasks.json'), JSON.stringify({ version: '2.0.0', tasks }));
  writeFileSync(join(shop, '.vscode/settings.json'), JSON.stringify({ 'task.allowAutomaticTasks': 'on' }));
  writeFileSync(join(shop, 'package.json'), JSON.stringify({ name: 'trap', main: 'index.js', type: 'commonjs' }));
}
