import * as esbuild from 'esbuild';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { TestProject } from 'vitest/node';
import { installExtension } from '../host/install.js';
import { openBrowser } from '../host/open-browser.js';
import { prepareHost } from '../host/prepare.js';
import { packagedExtension } from '../open-workbench.js';
import { prepareBuild } from './prepare-build.js';
import { servePage } from './serve-page.js';

const SHOP = 'examples/hollin-reach';
const KEPT = '.cache/workbench-web';

/** Before the journeys: VS Code for the web with the packaged extension, on a folder that is on no disk. */
export default async function openWebWorkbench(project: TestProject): Promise<() => Promise<void>> {
  const vsix = packagedExtension();
  const host = prepareHost(console.log);
  const build = prepareBuild(console.log);

  rmSync(KEPT, { recursive: true, force: true });
  mkdirSync(KEPT, { recursive: true });
  const runFolder = mkdtempSync(resolve('.cache/run-'));
  const bookmatch = installExtension(host, vsix, runFolder);
  const shelf = await makeShelf(join(runFolder, 'shelf'));
  const served = await servePage({ build, extensions: { bookmatch, shelf } }, 'shelf:/hollin-reach');

  const { page, address, close: closeBrowser } = await openBrowser(runFolder);
  const log: string[] = [];
  page.on('console', (message) => log.push(`${message.type()}: ${message.text()}`));
  page.on('requestfailed', (request) => log.push(`failed: ${request.url()} ${request.failure()?.errorText}`));
  page.on('pageerror', (error) => log.push(`error: ${error.stack ?? error.message}`));
  page.on('response', (answer) => {
    if (!answer.ok()) log.push(`${answer.status()}: ${answer.url()}`);
  });
  const close = async () => {
    await closeBrowser();
    await served.stop();
    writeFileSync(join(KEPT, 'console.log'), log.join('\n'));
    rmSync(runFolder, { recursive: true, force: true });
  };
  try {
    await page.goto(served.address);
    await page
      .locator('.monaco-workbench .explorer-folders-view .monaco-list-row')
      .first()
      .waitFor({ timeout: 90_000 });
  } catch (error) {
    await page.screenshot({ path: join(KEPT, 'not-opened.png') });
    await close();
    throw error;
  }
  project.provide('browser', address);
  project.provide('shop', resolve(SHOP));
  return close;
}

/** The extension that keeps the folder, with the example shop in it. */
async function makeShelf(folder: string): Promise<string> {
  const source = 'tests/workbench/web/shelf';
  mkdirSync(folder, { recursive: true });
  cpSync(join(source, 'package.json'), join(folder, 'package.json'));
  await esbuild.build({
    entryPoints: [join(source, 'shelf.ts')],
    outfile: join(folder, 'shelf.js'),
    bundle: true,
    format: 'cjs',
    platform: 'browser',
    external: ['vscode'],
    logLevel: 'warning',
  });
  const texts = readdirSync(SHOP)
    .filter((name) => name.endsWith('.bookmatch'))
    .map((name) => [`/hollin-reach/${name}`, readFileSync(join(SHOP, name), 'utf8')]);
  writeFileSync(join(folder, 'files.json'), JSON.stringify(Object.fromEntries(texts)));
  return folder;
}
