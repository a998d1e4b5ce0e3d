import type { Page } from 'playwright-core';

const DIFF = '.editor-group-container.active .monaco-diff-editor';

/** Wait until the diff editor has told what differs. */
export async function waitForDiff(page: Page, title: string): Promise<void> {
  await page.locator('.tab.active', { hasText: title }).waitFor();
  await page.locator(`${DIFF} .line-insert, ${DIFF} .line-delete`).first().waitFor({ timeout: 30_000 });
}

/** The visible lines of one side, in order. */
export async function sideOf(page: Page, side: 'original' | 'modified'): Promise<readonly string[]> {
  return page.locator(`${DIFF} .editor.${side} .view-line`).evaluateAll((rows) =>
    rows
      .map((row) => ({ top: row.getBoundingClientRect().top, text: row.textContent.replaceAll('\u00A0', ' ') }))
      .sort((a, b) => a.top - b.top)
      .map(({ text }) => text),
  );
}
