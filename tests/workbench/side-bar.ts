import type { Page } from 'playwright-core';
import { EDITOR } from './editor.js';

/** Open the side bar's page with the family tree and the woods. */
export async function openBookmatchViews(page: Page): Promise<void> {
  const header = page.locator('.sidebar .composite.title', { hasText: 'Bookmatch' });
  if (!(await header.isVisible())) await page.locator('.activitybar [aria-label="Bookmatch"]').first().click();
  await header.waitFor();
}

/** Back to the list of files. */
export async function openFiles(page: Page): Promise<void> {
  const files = page.locator('.explorer-folders-view');
  for (let tries = 0; tries < 4 && !(await files.isVisible()); tries++) {
    await page.locator('.activitybar [aria-label^="Explorer"]').first().click();
    // A workbench that is busy may lose a click.
    await files.waitFor({ timeout: 5_000 }).catch(() => undefined);
  }
  await files.waitFor();
}

/** Open a file from the list of files, to stay. */
export async function openFromList(page: Page, name: string): Promise<void> {
  await page.locator('.explorer-folders-view .monaco-list-row', { hasText: name }).dblclick();
  await page.locator('.tab.active', { hasText: name }).waitFor();
  await page.locator(`${EDITOR}.focused`).waitFor();
}

/** The rows of one view, as read aloud. */
export function rowsOf(page: Page, view: 'Lineage' | 'Values' | 'Woods') {
  return page.locator(`.sidebar .pane:has(.pane-header[aria-label^="${view}"]) [role=treeitem]`);
}
