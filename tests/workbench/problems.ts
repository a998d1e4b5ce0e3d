import type { Page } from 'playwright-core';

const PANEL = '.markers-panel';
const FILTER = '.part.panel .viewpane-filter input';

/** Open the Problems panel and wait until it lists something. */
export async function openProblems(page: Page): Promise<void> {
  const panel = page.locator(PANEL);
  if (!(await panel.isVisible())) await page.locator('#status\\.problems a').click();
  await panel.locator('[role=treeitem]').first().waitFor({ timeout: 90_000 });
}

/** What the rows say that contain `text`, once there is one; files count as rows too. */
export async function problemsWith(page: Page, text: string): Promise<readonly string[]> {
  await page.locator(FILTER).fill(text);
  const rows = page.locator(`${PANEL} [role=treeitem]`, { hasText: text });
  await rows.first().waitFor({ timeout: 30_000 });
  const found = await rows.allInnerTexts();
  await page.locator(FILTER).fill('');
  return found;
}

/** Follow the code of a finding to its page. */
export async function openPageOf(page: Page, code: string): Promise<void> {
  await page.locator(FILTER).fill(code);
  await page.locator(`${PANEL} [role=treeitem] a:has(.marker-code)`, { hasText: code }).first().click();
  await page.locator('.tabs-container .tab', { hasText: `${code}.md` }).waitFor();
}

/** Close the panel, whatever it shows. */
export async function closePanel(page: Page): Promise<void> {
  if (await page.locator(PANEL).isVisible()) await page.locator('#status\\.problems a').click();
  await page.locator(PANEL).waitFor({ state: 'hidden' });
}
