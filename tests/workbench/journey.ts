import { join } from 'node:path';
import { type Browser, type Page, chromium } from 'playwright-core';
import { afterAll, beforeAll, inject, test } from 'vitest';
import { freshStart } from './fresh-start.js';

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await chromium.connectOverCDP(inject('browser'));
  page = browser.contexts()[0]!.pages()[0]!;
});

/** Lets go of the page; it stays open for the next file. */
afterAll(() => browser.close());

/** One thing a person does in the editor, from an open workbench; a picture is kept when it goes wrong. */
export function journey(name: string, walk: (page: Page) => Promise<void>): void {
  test(name, async ({ onTestFailed }) => {
    onTestFailed(async () => {
      await page.screenshot({ path: join('.cache/workbench/failures', `${name.replace(/\W+/g, '-')}.png`) });
    });
    await freshStart(page);
    await walk(page);
  });
}
