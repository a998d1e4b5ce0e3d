import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { clickOn } from '../editor.js';
import { journey } from '../journey.js';
import { picture, TAKES_PICTURES, walkthroughPicture } from '../picture.js';
import { asks, choose, goToLine, openFile, runAskingCommand, runCommand } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { openFiles } from '../side-bar.js';
import { inTheme } from '../theme.js';
import { panelPage } from '../webview.js';

const RECIPES = 'vennick-recipes.bookmatch';
const STEPS = [
  'Make a place for your recipes',
  'Write the first recipe',
  'See what you wrote',
  'Change one thing and compare',
  'Print a sheet for the bench',
  'Come back with numbers',
];

const steps = (page: Page) => page.locator('.gettingStartedContainer .getting-started-step');

/** Titles of the steps that are ticked. */
async function ticked(page: Page): Promise<readonly string[]> {
  const done = steps(page).filter({ has: page.locator('.codicon-getting-started-step-checked') });
  return done.locator('.step-title').allInnerTexts();
}

async function openWalkthrough(page: Page): Promise<void> {
  await runCommand(page, 'Bookmatch: First Steps');
  await expect.poll(() => steps(page).count(), { timeout: 20_000 }).toBe(STEPS.length);
}

async function atRecipe(page: Page, recipe: string): Promise<void> {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, `recipe ${recipe} `));
  await clickOn(page, `recipe ${recipe} from`, recipe);
}

journey('the walkthrough has six steps, each with its picture', async (page) => {
  // Pictures are shown where there is room for them.
  await runCommand(page, 'View: Toggle Primary Side Bar Visibility');
  await openWalkthrough(page);
  for (const [i, title] of STEPS.entries()) {
    await steps(page).nth(i).locator('.step-title').click();
    await steps(page).nth(i).filter({ hasText: title }).and(page.locator('.expanded')).waitFor();
    const image = page.locator('.gettingStartedContainer .getting-started-media img');
    await expect.poll(() => image.evaluate((one: HTMLImageElement) => one.naturalWidth)).toBeGreaterThan(150);
    expect(await image.getAttribute('alt')).not.toBe('');
  }
  // A folder with recipes is open: nobody has to say so.
  await expect.poll(() => ticked(page), { timeout: 10_000 }).toEqual(expect.arrayContaining(STEPS.slice(0, 2)));
  await steps(page).first().locator('.step-title').click();
  await page.locator('.gettingStartedContainer .getting-started-media img:visible').waitFor();
  await picture(page, 'walkthrough');
  await openFiles(page);
});

journey('each step ticks when it is done, however that is done', async (page) => {
  await atRecipe(page, 'vennick-38');
  await runCommand(page, 'Bookmatch: Show Drawing');
  await panelPage(page, 'vennick-38');
  await atRecipe(page, 'vennick-38');
  await runCommand(page, 'Bookmatch: Compare with Parent');
  await atRecipe(page, 'vennick-38');
  await runAskingCommand(page, 'Bookmatch: Print a Sheet', 'Which sheet?');
  await page.keyboard.press('Escape');
  await runCommand(page, 'Bookmatch: Show What Each Change Did');
  await openWalkthrough(page);
  await expect.poll(() => ticked(page), { timeout: 10_000 }).toEqual(STEPS);
});

const whenPicturesAreWanted: typeof journey = TAKES_PICTURES ? journey : () => undefined;

for (const theme of ['light', 'dark'] as const) {
  whenPicturesAreWanted(`the pictures of the walkthrough, ${theme}`, async (page) => {
    await inTheme(page, theme, async () => {
      const editors = page.locator('.part.editor');
      const take = (step: string, part = editors) => walkthroughPicture(page, step, theme, part);
      await openFiles(page);
      await take('folder', page.locator('.part.sidebar'));
      await atRecipe(page, 'vennick-38');
      await page.waitForTimeout(2_000);
      await take('shop');
      await runCommand(page, 'Bookmatch: Show Drawing');
      await panelPage(page, 'vennick-38');
      await page.waitForTimeout(2_000);
      await take('drawing');
      await runCommand(page, 'View: Close All Editors');
      await runAskingCommand(page, 'Bookmatch: Show Side by Side', 'Which instrument?');
      await choose(page, 'vennick-33');
      await asks(page, 'Beside which other?');
      await choose(page, 'vennick-38');
      await panelPage(page, 'vennick-33 beside vennick-38');
      await page.waitForTimeout(4_000);
      await take('compare');
      await runCommand(page, 'View: Close All Editors');
      await atRecipe(page, 'vennick-38');
      await runAskingCommand(page, 'Bookmatch: Print a Sheet', 'Which sheet?');
      await choose(page, 'Bench sheet');
      await panelPage(page, 'Bench sheet: vennick-38');
      await page.waitForTimeout(2_000);
      await take('print');
      await runCommand(page, 'View: Close All Editors');
      await atRecipe(page, 'vennick-38');
      await runCommand(page, 'Bookmatch: Show What Each Change Did');
      await panelPage(page, 'What each change did: vennick');
      await page.waitForTimeout(4_000);
      await take('build');
    });
  });
}
