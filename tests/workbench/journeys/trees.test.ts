import { expect } from 'vitest';
import { clickOn, whereIs } from '../editor.js';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { goToLine, openFile } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { openBookmatchViews, openFiles, rowsOf } from '../side-bar.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('the lineage lists each recipe under its parent, and leads to it', async (page) => {
  await openFile(page, RECIPES);
  await openBookmatchViews(page);
  // The view follows the cursor.
  const row = rowsOf(page, 'Lineage').filter({ hasText: 'vennick-34' }).first();
  for (let attempt = 0; attempt < 4 && !(await row.isVisible()); attempt++) {
    await goToLine(page, 1);
    await goToLine(page, lineOf(RECIPES, 'recipe vennick-34'));
    await row.waitFor({ timeout: 8_000 }).catch(() => undefined);
  }
  const said = { timeout: 10_000 };
  // The tree may be drawn once more while it opens to the cursor: what counts is what it comes to.
  await expect.poll(() => row.getAttribute('aria-label'), said).toBe('recipe, vennick-34, 1 change, built');
  const levelOf = async (name: string) =>
    Number(await rowsOf(page, 'Lineage').filter({ hasText: name }).first().getAttribute('aria-level'));
  await expect.poll(async () => (await levelOf('vennick-34')) - (await levelOf('vennick-33')), said).toBe(1);
  await goToLine(page, 1);
  await row.click();
  await whereIs(page, 'recipe vennick-34 from vennick-33');
  await picture(page, 'lineage');
  await openFiles(page);
});

journey('the sets are ranked for the recipe in hand, and one click writes one into it', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-35'));
  await clickOn(page, 'recipe vennick-35 from', 'vennick-35');
  await openBookmatchViews(page);
  await page.locator('.sidebar .pane-header[aria-label^="Woods"]', { hasText: 'vennick-35' }).waitFor();
  const first = rowsOf(page, 'Woods').first();
  await first.filter({ hasText: 't-3' }).waitFor();
  expect(await first.getAttribute('aria-label')).toMatch(/^t-3, thickness needed: 2\.6\d mm, mass: 1\d\d g, /);
  await picture(page, 'woods');
  await first.hover();
  await first.locator('[aria-label="Use This Set"]').click();
  await whereIs(page, 'change top.wood: sitka-33 -> t-3');
  // The hold that is there already is kept, and solved for the new set.
  await whereIs(page, 'hold top.stiffness.along by top.thickness= 2.66 mm ± 0.03 mm, was 2.77 mm');
  // It may now stand further down than the view reaches.
  await rowsOf(page, 'Woods').first().hover();
  const taken = rowsOf(page, 'Woods').filter({ hasText: 't-3' }).filter({ hasText: 'in this recipe' });
  for (let turns = 0; turns < 20 && !(await taken.isVisible()); turns += 1) {
    await page.mouse.wheel(0, 60);
    await page.waitForTimeout(300);
  }
  await taken.waitFor();
  await openFiles(page);
});
