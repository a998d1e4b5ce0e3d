import { readFileSync } from 'node:fs';
import type { Frame, Page } from 'playwright-core';
import { expect } from 'vitest';
import { faultsIn } from '../accessibility.js';
import { clickOn, whereIs } from '../editor.js';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { asks, choose, goToLine, openFile, runAskingCommand, runCommand } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { openBookmatchViews, openFiles, rowsOf } from '../side-bar.js';
import { inTheme } from '../theme.js';
import { panelPage } from '../webview.js';

const RECIPES = 'vennick-recipes.bookmatch';

/** Open two instruments side by side by choosing them from the lists. */
async function sideBySide(page: Page, a: string, b: string): Promise<Frame> {
  await openFile(page, RECIPES);
  await runAskingCommand(page, 'Bookmatch: Show Side by Side', 'Which instrument?');
  await choose(page, a);
  await asks(page, 'Beside which other?');
  await choose(page, b);
  return panelPage(page, `${a} beside ${b}`);
}

/** What a row of a table says, cell by cell, as it is read aloud. */
async function cellsOf(frame: Frame, section: string, row: string): Promise<readonly string[]> {
  const found = frame.locator(`section:has(h2:text-is("${section}")) tbody tr`, { hasText: row }).first();
  await found.waitFor();
  return found
    .locator('th, td')
    .evaluateAll((cells) => cells.map((cell) => (cell.querySelector('.spoken') ?? cell).textContent.trim()));
}

journey('the line above a recipe opens it beside its parent, differences with sign and word', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40'));
  await whereIs(page, 'recipe vennick-40 from');
  await page.locator('.codelens-decoration a', { hasText: '2 changes (1 allowed)' }).first().click();
  const frame = await panelPage(page, 'vennick-38 beside vennick-40');
  expect(await frame.locator('header').innerText()).toContain(
    'vennick-40 comes from vennick-38. 2 changes; 1 is allowed.',
  );
  expect(await cellsOf(frame, 'What differs', 'diameter')).toEqual([
    'diameter',
    '101 mm',
    '95 mm',
    '−6 mm',
    '−5.9 %',
    'smaller',
    'counted',
  ]);
  const moving = await cellsOf(frame, 'What that does', 'moving-mass');
  expect(moving.slice(3, 6)).toEqual(['−5 g', '−11 %', 'lighter']);
  expect(moving[6]).toMatch(/^can be told apart: it takes \d/);
  await picture(page, 'side-by-side');
});

journey('the lineage opens a recipe beside its parent', async (page) => {
  await openFile(page, RECIPES);
  await openBookmatchViews(page);
  // The view follows the cursor.
  const row = rowsOf(page, 'Lineage').filter({ hasText: 'vennick-34' }).first();
  for (let attempt = 0; attempt < 4 && !(await row.isVisible()); attempt++) {
    await goToLine(page, 1);
    await goToLine(page, lineOf(RECIPES, 'recipe vennick-34'));
    await row.waitFor({ timeout: 8_000 }).catch(() => undefined);
  }
  await row.click({ button: 'right' });
  const entry = page.locator('.context-view .action-label', { hasText: 'Show Side by Side with Parent' });
  await entry.hover();
  // A menu takes no click in its first moments, lest it be the one that opened it.
  await page.waitForTimeout(500);
  await entry.click();
  const frame = await panelPage(page, 'vennick-33 beside vennick-34');
  expect(await cellsOf(frame, 'Readings beside what was computed', 'top.mass')).toContain('160 g');
  expect(await cellsOf(frame, 'What differs', 'thickness')).toContain('thinner');
  await openFiles(page);
});

journey('what is typed is in the panel at once', async (page) => {
  const frame = await sideBySide(page, 'vennick-38', 'vennick-40');
  await goToLine(page, lineOf(RECIPES, 'change soundhole.diameter: 101 mm -> 95 mm'));
  await clickOn(page, 'change soundhole.diameter: 101 mm -> 95 mm', '95');
  await page.keyboard.press('Control+Shift+ArrowRight');
  await page.keyboard.press('End');
  await page.keyboard.press('Control+Backspace');
  await page.keyboard.press('Control+Backspace');
  await page.keyboard.type('98 mm');
  await expect.poll(() => cellsOf(frame, 'What differs', 'diameter'), { timeout: 20_000 }).toContain('−3 mm');
});

journey('mode shapes are drawn over each other when they are asked for, and follow the text', async (page) => {
  const frame = await sideBySide(page, 'vennick-38', 'vennick-40');
  expect(await frame.locator('table.modes').count()).toBe(0);
  const drawn = frame.locator('section.drawn');
  await drawn.getByLabel('mode shapes').check();
  await frame.locator('table.modes tbody tr').nth(5).waitFor({ timeout: 60_000 });
  const main = await cellsOf(frame, 'Drawn over each other', 'main resonance');
  expect(main).toEqual([
    'all as one; main resonance',
    expect.stringMatching(/^\d+ Hz$/),
    expect.stringMatching(/^\d+ Hz$/),
    expect.stringMatching(/^\+\d(\.\d)? Hz$/),
    expect.stringMatching(/^\+\d(\.\d)? %$/),
    'higher',
    expect.stringMatching(/^\d+ %$/),
  ]);
  const label = (await drawn.locator('svg.plan').getAttribute('aria-label'))!;
  expect(label).toContain(`${main[1]} in vennick-38 and ${main[2]} in vennick-40, ${main[3]}: all as one`);
  // The one solid, the other dashed, whatever their colours.
  const dashes = (side: string) =>
    drawn.locator(`.level.of-${side}`).evaluate((line) => getComputedStyle(line).strokeDasharray);
  expect(await dashes('a')).toBe('none');
  expect(await dashes('b')).not.toBe('none');
  // A plate that moves all as one stands still nowhere; any other does.
  expect(await drawn.locator('.still.of-a').getAttribute('d')).toBe('');
  await drawn.getByRole('radio', { name: / Hz$/ }).nth(3).check();
  await expect.poll(() => drawn.locator('.still.of-a').getAttribute('d')).toMatch(/^M/);
  expect(await drawn.locator('.still.of-b').getAttribute('d')).toMatch(/^M/);
  await drawn.scrollIntoViewIfNeeded();
  await picture(page, 'side-by-side-modes');

  const before = await frame.locator('table.modes').innerText();
  await runCommand(page, 'View: Focus First Editor Group');
  await goToLine(page, lineOf(RECIPES, 'change soundhole.diameter: 101 mm -> 95 mm'));
  await clickOn(page, 'change soundhole.diameter: 101 mm -> 95 mm', '95');
  await page.keyboard.press('End');
  await page.keyboard.press('Control+Backspace');
  await page.keyboard.press('Control+Backspace');
  await page.keyboard.type('85 mm');
  await expect.poll(() => frame.locator('table.modes').innerText(), { timeout: 30_000 }).not.toBe(before);
  await expect.poll(() => drawn.getByRole('status').innerText(), { timeout: 60_000 }).toBe('');
});

journey('two builds: each reading beside the other, and the noise floor behind the difference', async (page) => {
  const frame = await sideBySide(page, 'no-33', 'no-38');
  const evidence = frame.locator('section:has(h2:text-is("What the builds say"))');
  expect(await evidence.innerText()).toContain('bracing.wood is billet-4 in no-38 and billet-3 in no-33');
  expect(await cellsOf(frame, 'What the builds say', 'top.mass')).toContain('stands out');
  expect(await evidence.locator('svg.evidence-plot .floor').count()).toBe(
    (await evidence.locator('circle.mark').count()) - 1,
  );
  await evidence.evaluate((section) => section.scrollIntoView());
  await picture(page, 'side-by-side-evidence');
});

journey('the page is printed as a document that needs nothing but itself', async (page) => {
  const frame = await sideBySide(page, 'vennick-41', 'vennick-42');
  await frame.getByLabel('mode shapes').check();
  await frame.locator('table.modes').waitFor({ timeout: 60_000 });
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    frame.getByRole('button', { name: 'Print' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('vennick-41 beside vennick-42.html');
  const html = readFileSync(await download.path(), 'utf8');
  expect(html).not.toMatch(/<script|<link|<button|https?:\/\/(?!www\.w3\.org)/);
  expect(html).toContain("default-src 'none'");
  const paper = await page.context().newPage();
  try {
    await paper.setContent(html);
    expect(await paper.locator('h1').innerText()).toBe('vennick-41 beside vennick-42');
    await paper.setViewportSize({ width: 794, height: 1123 });
    await paper.emulateMedia({ media: 'print' });
    expect(await paper.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    expect(await paper.locator('table.modes tbody tr').count()).toBe(6);
    expect(await paper.locator('.level.of-b').getAttribute('d')).toMatch(/^M/);
    expect(await faultsIn(paper.mainFrame())).toEqual([]);
    await picture(paper, 'side-by-side-print');
    await paper.locator('section.drawn').screenshot({ path: '.cache/workbench/pictures/side-by-side-modes-print.png' });
  } finally {
    await paper.close();
  }
});

journey('the panel is found again after the window is reloaded, with what was chosen in it', async (page) => {
  const before = await sideBySide(page, 'vennick-38', 'vennick-40');
  await before.getByLabel('everything that differs').check();
  await cellsOf(before, 'What that does', 'glued-stiffness');
  await Promise.all([page.waitForEvent('load'), runCommand(page, 'Developer: Reload Window')]);
  await page.locator('.monaco-workbench .explorer-folders-view .monaco-list-row').first().waitFor({ timeout: 90_000 });
  const after = await panelPage(page, 'vennick-38 beside vennick-40');
  await cellsOf(after, 'What that does', 'glued-stiffness');
});

for (const theme of ['light', 'dark', 'high contrast'] as const) {
  journey(`nothing about the panel keeps anybody out: ${theme}`, async (page) => {
    const frame = await sideBySide(page, 'no-33', 'no-38');
    await inTheme(page, theme, async () => {
      expect(await faultsIn(frame)).toEqual([]);
      await picture(page, `side-by-side-${theme.replace(' ', '-')}`);
      await frame.getByLabel('mode shapes').check();
      await frame.locator('table.modes').waitFor({ timeout: 60_000 });
      expect(await faultsIn(frame)).toEqual([]);
      await frame.locator('section.drawn').scrollIntoViewIfNeeded();
      await picture(page, `side-by-side-modes-${theme.replace(' ', '-')}`);
    });
  });
}
