import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { findChromium, HOW_TO_GET_CHROMIUM } from './chromium.js';

export interface OpenBrowser {
  readonly page: Page;
  /** Where a journey takes hold of it. */
  readonly address: string;
  readonly close: () => Promise<void>;
}

const SIZE = { width: 1280, height: 800 };

/** A Chromium with one page, its profile below `runFolder`. */
export async function openBrowser(runFolder: string): Promise<OpenBrowser> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error(`No Chromium on this machine. ${HOW_TO_GET_CHROMIUM}`);
  const profile = join(runFolder, 'browser');
  mkdirSync(join(profile, 'Default'), { recursive: true });
  // VS Code for the web puts each panel into an origin of its own, with a service worker that counts as a third party's.
  const preferences = { profile: { cookie_controls_mode: 0, block_third_party_cookies: false } };
  writeFileSync(join(profile, 'Default/Preferences'), JSON.stringify(preferences));
  // The sandbox of Chromium does not work for root, which is who runs tests in a container.
  const args = ['--remote-debugging-port=0', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])];
  const context = await chromium.launchPersistentContext(profile, { executablePath, args, viewport: SIZE });
  const [port] = readFileSync(join(profile, 'DevToolsActivePort'), 'utf8').split('\n');
  return {
    page: context.pages()[0] ?? (await context.newPage()),
    address: `http://127.0.0.1:${port}`,
    close: () => context.close(),
  };
}
