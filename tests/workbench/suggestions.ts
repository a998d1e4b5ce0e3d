import type { Page } from 'playwright-core';

const WIDGET = '.suggest-widget.visible';

/** Type the beginning of something, choose what is offered under this label, and take it. */
export async function complete(page: Page, beginning: string, label: string): Promise<void> {
  await page.keyboard.type(beginning);
  const list = page.locator(`${WIDGET} .monaco-list-row`);
  // The list opens by itself after most words; asked for by hand it opens anywhere.
  if (!(await list.first().isVisible())) await page.keyboard.press('Control+Space');
  await list.first().waitFor({ timeout: 15_000 });
  const wanted = page.locator(`${WIDGET} .monaco-list-row`).filter({
    has: page.locator('.label-name', { hasText: new RegExp(`^${label.replaceAll('.', '\\.')}$`) }),
  });
  await wanted.first().waitFor({ timeout: 15_000 });
  const isChosen = () => wanted.first().evaluate((row) => row.classList.contains('focused'));
  for (let tries = 0; !(await isChosen()); tries += 1) {
    if (tries > 20) throw new Error(`"${label}" is not chosen from the list.`);
    await page.keyboard.press('ArrowDown');
  }
  await page.keyboard.press('Enter');
}

/** Wait until nothing is on offer. */
export async function noSuggestions(page: Page): Promise<void> {
  await page.locator(WIDGET).waitFor({ state: 'hidden' });
}
