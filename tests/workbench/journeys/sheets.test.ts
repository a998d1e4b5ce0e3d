import { readFileSync } from 'node:fs';
import type { Frame, Page } from 'playwright-core';
import { expect } from 'vitest';
import { faultsIn } from '../accessibility.js';
import { clickOn } from '../editor.js';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { choose, goToLine, openFile, runAskingCommand } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { inTheme } from '../theme.js';
import { panelPage } from '../webview.js';

const RECIPES = 'vennick-recipes.bookmatch';

async function sheetOf(page: Page, recipe: string, sheet: string, heading: string): Promise<Frame> {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, `recipe ${recipe} `));
  await clickOn(page, `recipe ${recipe} from`, recipe);
  await runAskingCommand(page, 'Bookmatch: Print a Sheet', 'Which sheet?');
  await choose(page, sheet);
  return panelPage(page, heading);
}

journey('the bench sheet of the recipe at the cursor, shown as on paper and handed over to print', async (page) => {
  const frame = await sheetOf(page, 'vennick-38', 'Bench sheet', 'Bench sheet: vennick-38');
  const different = frame.locator('section', { hasText: 'What is different in this one' }).first();
  expect(await different.innerText()).toContain('norway-38');
  // Paper is white whatever the theme, and the sheet's own style is in force.
  expect(await frame.locator('.sheet').evaluate((sheet) => getComputedStyle(sheet).backgroundColor)).toBe(
    'rgb(255, 255, 255)',
  );
  await picture(page, 'bench-sheet');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    frame.getByRole('button', { name: 'Print' }).click(),
  ]);
  const html = readFileSync(await download.path(), 'utf8');
  expect(html).toContain('<h1>Bench sheet: vennick-38</h1>');
  expect(html).not.toMatch(/<script|<link/);
});

journey('nothing about a sheet keeps anybody out', async (page) => {
  const frame = await sheetOf(page, 'vennick-38', 'Species and papers', 'Species and papers: vennick-38');
  for (const theme of ['dark', 'high contrast'] as const) {
    await inTheme(page, theme, async () => expect(await faultsIn(frame)).toEqual([]));
  }
  await picture(page, 'papers-sheet');
});
