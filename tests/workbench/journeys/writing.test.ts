import { expect } from 'vitest';
import { EDITOR, visibleText, waitForSquiggle, whereIs } from '../editor.js';
import { journey } from '../journey.js';
import { choose, goToLine, openFile, runAskingCommand, runCommand } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { complete } from '../suggestions.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('a recipe is written from nothing by what is offered alone', async (page) => {
  await runCommand(page, 'File: New Untitled Text File');
  await page.locator('.tab.active', { hasText: 'Untitled-' }).waitFor();
  await runAskingCommand(page, 'Change Language Mode', 'Select Language Mode');
  await choose(page, 'Bookmatch');
  await page.locator('.statusbar-item', { hasText: /^Bookmatch$/ }).waitFor();
  await page.locator(`${EDITOR} .view-lines`).click();

  await complete(page, 're', 'recipe');
  // The next number and the last recipe are proposed; only the reason has to be thought of.
  await whereIs(page, 'recipe vennick-43 from vennick-42 {');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.type('A lighter bridge, nothing else.');
  await page.keyboard.press('Tab');
  await complete(page, 'ch', 'change');
  await page.keyboard.type('bridge.');
  await page.locator('.suggest-widget.visible .monaco-list-row', { hasText: 'bridge.mass' }).first().waitFor();
  await complete(page, 'm', 'bridge.mass');
  await whereIs(page, 'change bridge.mass: 22 g -> 22 g');
  await page.keyboard.type('20');
  await page.keyboard.press('Escape');
  await expect
    .poll(() => visibleText(page))
    .toMatch(
      /recipe vennick-43 from vennick-42 \{\n {2}because "A lighter bridge, nothing else\."\n {2}change bridge\.mass: 22 g -> 20 g/,
    );
  await page.locator(`${EDITOR} .codelens-decoration`, { hasText: '1 change' }).waitFor();
  await page.locator(`${EDITOR} .squiggly-error, ${EDITOR} .squiggly-warning`).first().waitFor({ state: 'detached' });
});

journey('a hold shows at once what it comes to', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-39') + 3);
  await page.keyboard.press('Home');
  await page.keyboard.press('Shift+End');
  await page.keyboard.press('Delete');
  await complete(page, 'ho', 'hold');
  await complete(page, 'top.st', 'top.stiffness.along');
  await complete(page, 'top.th', 'top.thickness');
  await page.keyboard.press('Escape');
  await page.keyboard.press('ArrowUp');
  await whereIs(page, 'hold top.stiffness.along by top.thickness= 2.68 mm ± 0.03 mm, was 2.66 mm');
});

journey('a finding is accepted where it stands, with a reason', async (page) => {
  await openFile(page, RECIPES);
  const line = lineOf(RECIPES, 'recipe vennick-40');
  await goToLine(page, line);
  await waitForSquiggle(page, 'warning');
  await goToLine(page, line + 1);
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
  await complete(page, 'acc', 'accept');
  await complete(page, 'too', 'too-many-changes');
  await page.keyboard.type('The client pays for both.');
  await page.keyboard.press('Escape');
  await page.locator(`${EDITOR} .squiggly-warning`).first().waitFor({ state: 'detached' });
  await whereIs(page, 'accept too-many-changes because "The client pays for both."');
  // What was accepted is still counted.
  await page.locator(`${EDITOR} .codelens-decoration`, { hasText: '2 changes' }).waitFor();
});
