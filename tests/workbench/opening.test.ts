import { expect } from 'vitest';
import { EDITOR } from './editor.js';
import { journey } from './journey.js';
import { openFile } from './quick-input.js';

journey('a recipe file opens in its own language, with colours', async (page) => {
  await openFile(page, 'vennick-recipes.bookmatch');
  await page.locator('.statusbar-item', { hasText: /^Bookmatch$/ }).waitFor();
  const colours = await page
    .locator(`${EDITOR} .view-line span span`)
    .evaluateAll((spans) => [...new Set(spans.map((span) => getComputedStyle(span).color))]);
  // Comments, keywords, names, numbers and texts differ.
  expect(colours.length).toBeGreaterThan(4);
});

journey('the file shows the drawing of two halves', async (page) => {
  await openFile(page, 'woods.bookmatch');
  const icon = page.locator('.explorer-folders-view .monaco-icon-label', { hasText: 'woods.bookmatch' });
  const image = await icon.evaluate((label) => getComputedStyle(label, '::before').backgroundImage);
  expect(image).toContain('bookmatch.svg');
});
