import { expect } from 'vitest';
import { hoverOver, visibleText, waitForSquiggle, whereIs } from '../editor.js';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { openProblems, problemsWith } from '../problems.js';
import { goToLine } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { openFromList } from '../side-bar.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('in the browser alone, two changes at once are found in a folder that is on no disk', async (page) => {
  await openFromList(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40'));
  await waitForSquiggle(page, 'warning');
  await openProblems(page);
  const [finding] = await problemsWith(page, '2 changes, and the shop allows 1');
  expect(finding).toContain('soundhole.diameter');
  await picture(page, 'web-findings');
});

journey(
  'in the browser alone, the hover of a derived quantity gives its value, from files never opened',
  async (page) => {
    await openFromList(page, RECIPES);
    await goToLine(page, lineOf(RECIPES, 'recipe vennick-32'));
    await whereIs(page, '= 2.79 mm ± 0.03 mm, was 2.80 mm');
    const hover = await hoverOver(page, 'hold top.stiffness.along', 'along');
    expect(hover).toMatch(/\d+\.\d+ ± \d+\.\d+ N·m/);
  },
);

journey('in the browser alone, a resonance is worked out by a worker of its own', async (page) => {
  await openFromList(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-42'));
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
  await page.keyboard.type('expect back.main-resonance: 50..900 Hz');
  await page.keyboard.press('Escape');
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-42'));
  // First that it is being worked out, then what it came to.
  await expect.poll(() => visibleText(page), { timeout: 30_000 }).toMatch(/50\.\.900 Hz\s*\d+(\.\d+)? Hz/);
});
