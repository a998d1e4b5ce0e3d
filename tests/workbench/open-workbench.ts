import { copyFileSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { chromium } from 'playwright-core';
import type { TestProject } from 'vitest/node';
import { findChromium, HOW_TO_GET_CHROMIUM } from './host/chromium.js';
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

const SIZE = { width: 1280, height: 800 };

/** Before all journeys: VS Code with the packaged extension on a copy of the example shop, open in one page. */
export default async function openWorkbench(project: TestProject): Promise<() => Promise<void>> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error(`No Chromium on this machine. ${HOW_TO_GET_CHROMIUM}`);
  const vsix = resolve('bookmatch.vsix');
  if (!existsSync(vsix)) throw new Error('bookmatch.vsix is missing; make it with "npm run package".');
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

  const profile = join(runFolder, 'browser');
  // The sandbox of Chromium does not work for root, which is who runs tests in a container.
  const args = ['--remote-debugging-port=0', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])];
  const context = await chromium.launchPersistentContext(profile, { executablePath, args, viewport: SIZE });
  const page = context.pages()[0] ?? (await context.newPage());
  await page.goto(running.pageFor(shop));
  await page.locator('.monaco-workbench .explorer-folders-view .monaco-list-row').first().waitFor({ timeout: 90_000 });
  lap('workbench open');

  const [port] = readFileSync(join(profile, 'DevToolsActivePort'), 'utf8').split('\n');
  project.provide('browser', `http://127.0.0.1:${port}`);
  project.provide('shop', shop);
  return async () => {
    await context.close();
    await running.stop();
    copyFileSync(join(runFolder, 'server.log'), join(KEPT, 'server.log'));
    rmSync(runFolder, { recursive: true, force: true });
  };
}

function stopwatch(): (what: string) => void {
  let last = Date.now();
  return (what) => {
    const now = Date.now();
    console.log(`  ${what} in ${((now - last) / 1000).toFixed(1)} s`);
    last = now;
  };
}
