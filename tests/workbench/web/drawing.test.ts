import { expect } from 'vitest';
import { clickOn } from '../editor.js';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { goToLine, runCommand } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { openFromList } from '../side-bar.js';
import { panelPage } from '../webview.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('in the browser alone, the drawing opens and a mode shape is worked out', async (page) => {
  await openFromList(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40 '));
  await clickOn(page, 'recipe vennick-40 from', 'vennick-40');
  await runCommand(page, 'Bookmatch: Show Drawing');
  const frame = await panelPage(page, 'vennick-40');
  expect(await frame.locator('svg.plan .part').count()).toBe(8);
  await frame.getByLabel('mode shapes').check();
  const table = frame.locator('table', { hasText: 'Frequency' });
  await table.waitFor({ timeout: 60_000 });
  expect(await table.locator('tbody tr').count()).toBe(6);
  await picture(page, 'web-drawing');
});
