import { copyFileSync, cpSync, existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { TestProject } from 'vitest/node';
import { openBrowser } from './host/open-browser.js';
import { prepareHost } from './host/prepare.js';
import { startHost } from './host/start.js';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where to take hold of the browser. */
    browser: string;
    /** The folder open in the workbench: a copy of the example shop. */
    shop: string;
  }
}

/** What is worth a look afterwards: the log, pictures, pictures of what went wrong. */
const KEPT = '.cache/workbench';

/** Before all journeys: VS Code with the packaged extension on a copy of the example shop, open in one page. */
export default async function openWorkbench(project: TestProject): Promise<() => Promise<void>> {
  const vsix = packagedExtension();
  const lap = stopwatch();
  const host = prepareHost(console.log);
  lap('host prepared');

  rmSync(KEPT, { recursive: true, force: true });
  mkdirSync(KEPT, { recursive: true });
  const runFolder = mkdtempSync(resolve('.cache/run-'));
  const shop = join(runFolder, 'hollin-reach');
  cpSync('examples/hollin-reach', shop, { recursive: true });
  const running = await startHost(host, { runFolder, vsix });
  lap('server started, extension installed');

  const { page, address, close } = await openBrowser(runFolder);
  await page.goto(running.pageFor(shop));
  await page.locator('.monaco-workbench .explorer-folders-view .monaco-list-row').first().waitFor({ timeout: 90_000 });
  lap('workbench open');

  project.provide('browser', address);
  project.provide('shop', shop);
  return async () => {
    await close();
    await running.stop();
    copyFileSync(join(runFolder, 'server.log'), join(KEPT, 'server.log'));
    rmSync(runFolder, { recursive: true, force: true });
  };
}

/** The extension as people get it. */
export function packagedExtension(): string {
  const vsix = resolve('bookmatch.vsix');
  if (!existsSync(vsix)) throw new Error('bookmatch.vsix is missing; make it with "npm run package".');
  return vsix;
}

function stopwatch(): (what: string) => void {
  let last = Date.now();
  return (what) => {
    const now = Date.now();
    console.log(`  ${what} in ${((now - last) / 1000).toFixed(1)} s`);
    last = now;
  };
}
