import { expect } from 'vitest';
import { clickOn } from '../editor.js';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { goToLine, openFile, runCommand } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { panelFrame } from '../webview.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('the drawing of the recipe at the cursor', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-34'));
  await clickOn(page, 'recipe vennick-34 from', 'vennick-34');
  await runCommand(page, 'Bookmatch: Show Drawing');
  const frame = await panelFrame(page);
  expect(await frame.locator('h1').innerText()).toBe('vennick-34');
  await picture(page, 'drawing');
});
