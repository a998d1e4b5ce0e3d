import { expect } from 'vitest';
import { clickOn, visibleText, waitForSquiggle } from './editor.js';
import { applyFix, fixesOnOffer, openFixes } from './fixes.js';
import { journey } from './journey.js';
import { picture } from './picture.js';
import { asks, choose, goToLine, openFile, startCommand } from './quick-input.js';
import { lineOf } from './shop.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('a finding is accepted where it stands, the reason typed at once', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40'));
  await waitForSquiggle(page, 'warning');
  await clickOn(page, 'recipe vennick-40 from', 'vennick-40');
  await openFixes(page);
  await applyFix(page, 'Accept too-many-changes here');
  await page.keyboard.type('A client asked.');
  // While the reason is being typed there may be a second one, about the reason.
  await expect.poll(() => page.locator('.squiggly-warning').count(), { timeout: 20_000 }).toBe(0);
  // The last letters are on the page a moment after the keys.
  await expect
    .poll(() => visibleText(page), { timeout: 20_000 })
    .toMatch(
      /because "Client wants more bite.*\n\s+accept too-many-changes because "A client asked\."\n\s+change top\.wood/,
    );
});

journey('a recipe takes its parent’s changes in', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-41'));
  await clickOn(page, 'recipe vennick-41 from', 'vennick-41');
  await openFixes(page);
  expect(await fixesOnOffer(page)).toEqual(
    expect.arrayContaining([
      'Take the changes of vennick-40 into vennick-41',
      'Set on vennick-38, with the same differences',
    ]),
  );
  await picture(page, 'refactorings');
  await applyFix(page, 'Take the changes of vennick-40');
  await expect
    .poll(() => visibleText(page), { timeout: 10_000 })
    .toMatch(
      /recipe vennick-41 from vennick-38 \{\n.*\n\s+note "vennick-40: Client wants more bite.*\n\s+change bridge\.mass: 27 g -> 22 g\n\s+change top\.wood: norway-38 -> norway-41/,
    );
});

journey('a recipe is set on any other parent of its model', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-39'));
  await startCommand(page, 'Bookmatch: Set on Another Parent');
  await asks(page, 'Which parent for vennick-39? Now it is vennick-38.');
  await picture(page, 'another-parent');
  await choose(page, 'vennick-33');
  await expect
    .poll(() => visibleText(page), { timeout: 10_000 })
    .toMatch(/recipe vennick-39 from vennick-33 \{\n.*\n\s+change top\.wood: sitka-33 -> norway-39/);
});
