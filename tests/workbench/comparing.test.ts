import { expect } from 'vitest';
import { sideOf, waitForDiff } from './diff.js';
import { clickOn, visibleText } from './editor.js';
import { journey } from './journey.js';
import { picture } from './picture.js';
import { asks, choose, goToLine, openFile, runAskingCommand, runCommand } from './quick-input.js';
import { lineOf } from './shop.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('a recipe beside its parent, both written out in full, in the diff editor', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40'));
  await clickOn(page, 'recipe vennick-40 from', 'vennick-40');
  await runCommand(page, 'Bookmatch: Compare with Parent');
  await waitForDiff(page, 'vennick-38 beside vennick-40');
  await expect.poll(() => sideOf(page, 'original'), { timeout: 10_000 }).toContain('    diameter: 101 mm');
  await expect.poll(() => sideOf(page, 'modified'), { timeout: 10_000 }).toContain('    diameter: 95 mm');
  await page.locator('.editor-actions [aria-label*="Collapse Unchanged Regions"]').click();
  await page.locator('.diff-hidden-lines .center:visible').first().waitFor();
  await page.mouse.move(24, 560);
  await picture(page, 'comparison');
  // The choice holds for every comparison until it is taken back.
  await page.locator('.editor-actions [aria-label*="Collapse Unchanged Regions"]').click();
});

journey('any two recipes are chosen from a list and laid side by side', async (page) => {
  await openFile(page, RECIPES);
  await runAskingCommand(page, 'Bookmatch: Compare Two Recipes', 'Which instrument?');
  await choose(page, 'vennick-34');
  await asks(page, 'Beside which other?');
  await choose(page, 'vennick-37');
  await waitForDiff(page, 'vennick-34 beside vennick-37');
  expect((await sideOf(page, 'original')).join('\n')).toContain('recipe vennick-34');
  expect((await sideOf(page, 'modified')).join('\n')).toContain('recipe vennick-37');
});

journey('the first of a line has no parent, and that is said', async (page) => {
  await openFile(page, 'vennick.bookmatch');
  await clickOn(page, 'model vennick {', 'vennick');
  await runCommand(page, 'Bookmatch: Compare with Parent');
  const said = page.locator('.notification-list-item', {
    hasText: 'vennick has no parent: it is the first of its line.',
  });
  await said.waitFor();
  await page.keyboard.press('Escape');
});

journey('the whole recipe is shown as read-only text', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-34'));
  await clickOn(page, 'recipe vennick-34 from', 'vennick-34');
  await runCommand(page, 'Bookmatch: Show the Whole Recipe');
  await page.locator('.tab.active', { hasText: 'vennick-34, written out in full' }).waitFor();
  await expect.poll(() => visibleText(page), { timeout: 10_000 }).toContain('recipe vennick-34 for vennick');
});
