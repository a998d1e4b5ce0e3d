import { expect } from 'vitest';
import { clickOn, visibleText, waitForSquiggle } from './editor.js';
import { applyFix, fixesOnOffer, openFixes } from './fixes.js';
import { journey } from './journey.js';
import { picture } from './picture.js';
import { openPageOf, openProblems, problemsWith } from './problems.js';
import { goToLine, openFile } from './quick-input.js';
import { lineOf } from './shop.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('two changes at once are found, and named in the Problems panel', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40'));
  await waitForSquiggle(page, 'warning');
  await openProblems(page);
  const [finding] = await problemsWith(page, '2 changes, and the shop allows 1');
  expect(finding).toContain('bridge.mass');
  expect(finding).toContain('soundhole.diameter');
  expect(finding).toContain('too-many-changes');
  await picture(page, 'findings');
});

journey('a shop in which all is well shows no squiggle: hints mark a word, and nothing is underlined', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40'));
  await waitForSquiggle(page, 'warning');
  for (const recipe of ['vennick-31', 'vennick-34', 'vennick-37', 'vennick-42']) {
    await goToLine(page, lineOf(RECIPES, `recipe ${recipe}`));
    const inView = await visibleText(page);
    if (!inView.includes('recipe vennick-40')) {
      await expect.poll(() => page.locator('.squiggly-warning, .squiggly-error').count(), { timeout: 10_000 }).toBe(0);
    }
    expect(await page.locator('.squiggly-info').count()).toBe(0);
  }
  await picture(page, 'calm');
});

journey('a fix groups the two as one tweak, and the warning is gone', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40'));
  await waitForSquiggle(page, 'warning');
  await clickOn(page, 'recipe vennick-40 from', 'vennick-40');
  await openFixes(page);
  expect(await fixesOnOffer(page)).toEqual(
    expect.arrayContaining(['Split into 2 recipes of one change each', 'Group them as one tweak']),
  );
  await picture(page, 'fixes');
  await applyFix(page, 'Group them as one tweak');
  await page.locator('.squiggly-warning').waitFor({ state: 'detached' });
  await expect
    .poll(() => visibleText(page), { timeout: 10_000 })
    .toMatch(/together ".*" \{\n\s+change bridge\.mass: 27 g -> 22 g/);
});

journey('a number without its unit is asked about as it is typed', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'thickness: 2.80 mm'));
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
  await page.keyboard.type('back.thickness: 2.3');
  await waitForSquiggle(page, 'error');
  await page.keyboard.press('Escape');
  await openFixes(page);
  await applyFix(page, '2.3 mm');
  await page.locator('.squiggly-error').waitFor({ state: 'detached' });
  await expect.poll(() => visibleText(page), { timeout: 10_000 }).toContain('back.thickness: 2.3 mm');
});

journey('the code of a finding leads to its page, with a bad and a good example', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40'));
  await waitForSquiggle(page, 'warning');
  await openProblems(page);
  await openPageOf(page, 'too-many-changes');
  await expect.poll(() => visibleText(page), { timeout: 10_000 }).toContain('# too-many-changes');
});
