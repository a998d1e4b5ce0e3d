import type { Page } from 'playwright-core';

/** Open the list of fixes at the cursor. Asked while findings are still coming in, the editor shows none: ask again. */
export async function openFixes(page: Page): Promise<void> {
  const first = page.locator('.action-widget .monaco-list-row.action').first();
  for (let tries = 0; tries < 8; tries += 1) {
    await page.keyboard.press('Control+.');
    const shown = await first.waitFor({ timeout: 2_500 }).then(
      () => true,
      () => false,
    );
    if (shown) return;
  }
  throw new Error('No fixes are offered at the cursor.');
}

/** The fixes on offer, in order. */
export async function fixesOnOffer(page: Page): Promise<readonly string[]> {
  const rows = await page.locator('.action-widget .monaco-list-row.action').allInnerTexts();
  return rows.map((row) => row.trim());
}

/** Choose one from the open list. */
export async function applyFix(page: Page, title: string): Promise<void> {
  await page.locator('.action-widget .monaco-list-row.action', { hasText: title }).first().click();
  await page.locator('.action-widget').first().waitFor({ state: 'hidden' });
}
