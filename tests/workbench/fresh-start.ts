import type { Page } from 'playwright-core';
import { closePanel } from './problems.js';
import { runCommand } from './quick-input.js';
import { openFiles } from './side-bar.js';

/** Close whatever the last journey left open, without saving, and go back to the list of files. */
export async function freshStart(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await closePanel(page);
  if (await page.locator('.sidebar .composite.title', { hasText: 'Bookmatch' }).isVisible()) await openFiles(page);
  const tabs = page.locator('.tabs-container .tab');
  if ((await tabs.count()) === 0) return;
  await runCommand(page, 'View: Close All Editors');
  const leave = page.locator('.monaco-dialog-box .monaco-button', { hasText: "Don't Save" });
  const asked = leave.waitFor({ timeout: 10_000 }).then(() => leave.click());
  await Promise.race([asked, tabs.first().waitFor({ state: 'detached' })]);
  asked.catch(() => undefined);
  await tabs.first().waitFor({ state: 'detached' });
}
