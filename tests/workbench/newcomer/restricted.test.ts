import { readdirSync } from 'node:fs';
import { basename } from 'node:path';
import { expect, inject } from 'vitest';
import { hoverOver, waitForSquiggle, whereIs } from '../editor.js';
import { journey } from '../journey.js';
import { openProblems, problemsWith } from '../problems.js';
import { goToLine, openFile } from '../quick-input.js';
import { lineOf } from '../shop.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('in a folder nobody has trusted, recipes are checked and nothing of the folder is run', async (page) => {
  await page.goto(inject('restrictedPage'));
  await page.locator('.explorer-folders-view .monaco-list-row').first().waitFor({ timeout: 90_000 });
  await page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40'));
  await waitForSquiggle(page, 'warning');
  await openProblems(page);
  const [finding] = await problemsWith(page, '2 changes, and the shop allows 1');
  expect(finding).toContain('soundhole.diameter');
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-32'));
  await whereIs(page, '= 2.79 mm ± 0.03 mm, was 2.80 mm');
  expect(await hoverOver(page, 'hold top.stiffness.along', 'along')).toMatch(/\d+\.\d+ ± \d+\.\d+ N·m/);
  const files = readdirSync(inject('shop'), { recursive: true, encoding: 'utf8' });
  expect(files.map((file) => basename(file))).not.toContain('sprung');
});
