import { expect } from 'vitest';
import { EDITOR, whereIs } from '../editor.js';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { goToLine, openFile, runCommand } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { openFiles } from '../side-bar.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('expectations are tests: run, and told anew after an edit', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-31'));
  await runCommand(page, 'Testing: Focus on Test Explorer View');
  const recipe = page.locator('.test-explorer [role=treeitem]', { hasText: 'vennick-31' }).first();
  await recipe.waitFor({ timeout: 30_000 });
  await runCommand(page, 'Test: Run All Tests');
  await expect.poll(() => recipe.getAttribute('aria-label'), { timeout: 30_000 }).toContain('Passed');

  await openFile(page, RECIPES);
  const { x, y } = await whereIs(page, 'thickness: 2.80 mm', '80');
  await page.mouse.dblclick(x, y);
  await page.keyboard.type('99');
  await expect.poll(() => recipe.getAttribute('aria-label'), { timeout: 30_000 }).toContain('Failed');
  await page
    .locator(EDITOR)
    .getByText(/top\.mass comes to .*: 5 g above what is expected/)
    .first()
    .waitFor();
  await picture(page, 'testing');
  await openFiles(page);
});
