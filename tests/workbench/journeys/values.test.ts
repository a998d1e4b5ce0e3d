import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { whereIs } from '../editor.js';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { goToLine, openFile } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { openBookmatchViews, openFiles, rowsOf } from '../side-bar.js';
import { panelPage } from '../webview.js';

const RECIPES = 'vennick-recipes.bookmatch';

/** Keep to values with `text` in them. */
async function filterValues(page: Page, text: string): Promise<void> {
  const header = page.locator('.sidebar .pane-header[aria-label^="Values"]');
  await header.hover();
  await header.locator('[aria-label="Filter Values"]').click();
  const input = page.locator('.quick-input-widget:visible input');
  await input.fill(text);
  await page.keyboard.press('Enter');
}

const said = (page: Page) =>
  rowsOf(page, 'Values').evaluateAll((rows) => rows.map((row) => row.getAttribute('aria-label')));

journey('the values of the recipe at the cursor, with what was changed here marked by a word', async (page) => {
  await openFile(page, RECIPES);
  await openBookmatchViews(page);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40'));
  await page.locator('.sidebar .pane-header[aria-label^="Values"]', { hasText: 'vennick-40' }).waitFor();
  await filterValues(page, 'here');
  await expect
    .poll(() => said(page))
    .toEqual(
      expect.arrayContaining(['diameter, 95 mm · changed here, was 101 mm', 'mass, 22 g · changed here, was 27 g']),
    );
  await picture(page, 'values');
  // It follows the cursor, and a click goes where the value is written.
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-34'));
  const thickness = rowsOf(page, 'Values').filter({ hasText: '2.61 mm' }).first();
  await thickness.waitFor();
  expect(await thickness.getAttribute('aria-label')).toBe('thickness, 2.61 mm · changed here, was 2.77 mm');
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-31'));
  await filterValues(page, 'x-bass width');
  await rowsOf(page, 'Values').filter({ hasText: '7.9 mm' }).first().click();
  await page.locator('.tab.active', { hasText: 'vennick.bookmatch' }).waitFor();
  await whereIs(page, 'x-bass     { from:');
  await filterValues(page, '');
  await openFiles(page);
});

journey('what is not known names what would make it so', async (page) => {
  await openFile(page, RECIPES);
  await openBookmatchViews(page);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40'));
  // The list shows only as many rows as have room.
  await filterValues(page, 'lining.width');
  const box = rowsOf(page, 'Values').filter({ hasText: 'lining.width' }).first();
  await box.waitFor();
  expect(await box.getAttribute('aria-label')).toMatch(/, not known · needs lining\.width, /);
  await filterValues(page, '');
  await openFiles(page);
});

journey('the status bar counts the changes, and a click lays the recipe beside its parent', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-34'));
  const item = page.locator('.statusbar-item', { hasText: /vennick-\d+: / });
  await item.filter({ hasText: /vennick-34: 1 change$/ }).waitFor();
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40'));
  await item.filter({ hasText: /vennick-40: 2 changes, 1 allowed/ }).waitFor();
  await item.locator('a').first().click();
  await panelPage(page, 'vennick-38 beside vennick-40');
});
