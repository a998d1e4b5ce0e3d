import { expect } from 'vitest';
import { clickOn, hoverOver, visibleText, whereIs } from './editor.js';
import { journey } from './journey.js';
import { picture } from './picture.js';
import { goToLine, openFile } from './quick-input.js';
import { lineOf } from './shop.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('the hover of a derived quantity gives its value, formula and source', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-32'));
  await whereIs(page, '= 2.79 mm ± 0.03 mm, was 2.80 mm');
  const hover = await hoverOver(page, 'hold top.stiffness.along', 'along');
  expect(hover).toMatch(/\d+\.\d+ ± \d+\.\d+ N·m/);
  await picture(page, 'hover');
});

journey('the solved value of a hold stands beside it', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-38'));
  await whereIs(page, 'expect top.mass: below 148 g');
  await whereIs(page, 'hold top.stiffness.along by top.thickness= 2.66 mm');
  expect(await visibleText(page)).toContain('was 2.77 mm');
});

journey('going to the definition of a species opens the library, read-only', async (page) => {
  await openFile(page, 'woods.bookmatch');
  await clickOn(page, 'is indian-rosewood', 'indian-rosewood');
  await page.keyboard.press('F12');
  await page.locator('.tab.active', { hasText: 'species.bookmatch' }).waitFor();
  await whereIs(page, 'species indian-rosewood');
  await page.keyboard.type('x');
  await page.locator('.monaco-editor-overlaymessage', { hasText: 'read-only' }).waitFor();
});
