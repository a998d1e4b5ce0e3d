import { cpSync } from 'node:fs';
import { inject } from 'vitest';
import { clickOn, whereIs } from '../editor.js';
import { journey } from '../journey.js';
import { goToLine, openFile } from '../quick-input.js';
import { lineOf } from '../shop.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('a wood is renamed in every file that names it', async (page) => {
  await openFile(page, RECIPES);
  await openFile(page, 'woods.bookmatch');
  try {
    await clickOn(page, 'wood norway-41 is', 'norway-41');
    await page.keyboard.press('F2');
    const box = page.locator('.rename-box input');
    await box.waitFor();
    await box.fill('old-beam');
    await page.keyboard.press('Enter');
    await whereIs(page, 'wood old-beam is norway-spruce');
    await openFile(page, RECIPES);
    await goToLine(page, lineOf(RECIPES, 'recipe vennick-42'));
    await whereIs(page, 'change top.wood: old-beam -> norway-42');
    await whereIs(page, 'change top.wood: norway-40 -> old-beam');
  } finally {
    // Renaming saves what it changes; the next journey finds the shop as it was.
    cpSync('examples/hollin-reach', inject('shop'), { recursive: true });
  }
});
