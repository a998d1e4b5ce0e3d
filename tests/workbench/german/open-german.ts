import { copyFileSync, cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { TestProject } from 'vitest/node';
import { openBrowser } from '../host/open-browser.js';
import { prepareHost } from '../host/prepare.js';
import { startHost } from '../host/start.js';
import { packagedExtension } from '../open-workbench.js';

const KEPT = '.cache/workbench-german';

/**
 * Before the journey: VS Code with the packaged extension, told what a language pack tells it. Without the pack its own
 * words stay English; ours are all in the extension.
 */
export default async function openGerman(project: TestProject): Promise<() => Promise<void>> {
  const host = prepareHost(console.log);
  mkdirSync(KEPT, { recursive: true });
  const runFolder = mkdtempSync(resolve('.cache/run-'));
  const shop = join(runFolder, 'hollin-reach');
  cpSync('examples/hollin-reach', shop, { recursive: true });
  const running = await startHost(host, { runFolder, vsix: packagedExtension() });
  const { page, address, close } = await openBrowser(runFolder);
  await page.context().addInitScript(() => void Object.assign(globalThis, { _VSCODE_NLS_LANGUAGE: 'de' }));
  await page.goto(running.pageFor(shop));
  await page.locator('.monaco-workbench .explorer-folders-view .monaco-list-row').first().waitFor({ timeout: 90_000 });

  project.provide('browser', address);
  project.provide('shop', shop);
  return async () => {
    await close();
    await running.stop();
    copyFileSync(join(runFolder, 'server.log'), join(KEPT, 'server.log'));
    rmSync(runFolder, { recursive: true, force: true });
  };
}
