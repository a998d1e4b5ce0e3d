import { clickOn } from '../editor.js';
import { journey } from '../journey.js';
import { goToLine, openFile, runCommand } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { openFiles } from '../side-bar.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('the type hierarchy of a recipe is its lineage, down and up', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-38'));
  await clickOn(page, 'recipe vennick-38 from', 'vennick-38');
  await runCommand(page, 'Types: Show Type Hierarchy');
  const row = (name: string) => page.locator('.sidebar [role=treeitem]', { hasText: name });
  await row('vennick-39').first().waitFor();
  await row('vennick-40').first().waitFor();
  await page.locator('.sidebar .title-actions [aria-label="Show Supertypes"]').click();
  await row('vennick-33').first().waitFor();
  await row('vennick-39').first().waitFor({ state: 'detached' });
  await openFiles(page);
});
