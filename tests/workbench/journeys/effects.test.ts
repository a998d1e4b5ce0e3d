import { readFileSync } from 'node:fs';
import type { Frame, Page } from 'playwright-core';
import { expect } from 'vitest';
import { faultsIn } from '../accessibility.js';
import { clickOn } from '../editor.js';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { goToLine, openFile, runCommand } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { inTheme } from '../theme.js';
import { panelPage } from '../webview.js';

const RECIPES = 'vennick-recipes.bookmatch';
const MATRIX = 'What each change did to each reading';
const TITLE = 'What each change did: vennick';

/** From the recipe at the cursor to its model, which nobody needs to name. */
async function effects(page: Page): Promise<Frame> {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-38'));
  await clickOn(page, 'recipe vennick-38 from', 'vennick-38');
  await runCommand(page, 'Bookmatch: Show What Each Change Did');
  return panelPage(page, TITLE);
}

function section(frame: Frame, heading: string) {
  return frame.locator(`section:has(h2:text-is("${heading}"))`);
}

journey(
  'what each change did: looked at in a matrix, one press opens an effect with its three intervals',
  async (page) => {
    const frame = await effects(page);
    expect(await frame.locator('header').innerText()).toContain('12 builds, 7 effects to find');
    const matrix = section(frame, MATRIX);
    expect(await matrix.locator('tbody tr').count()).toBe(8);
    // What takes the plate solver comes when it is there.
    const cell = matrix.locator('button.cell[aria-label^="resonance.air: soundhole.diameter 95 mm: computed −"]');
    await cell.waitFor({ timeout: 120_000 });
    await cell.click();
    const detail = section(frame, 'soundhole.diameter 95 mm on resonance.air');
    await expect
      .poll(() => detail.innerText(), { timeout: 120_000 })
      .toMatch(/computed −2\.\d ± .*your builds say .*together −2\.\d/);
    expect(await detail.locator('svg.plot circle.mark.together').count()).toBe(1);
    expect(await detail.locator('svg.plot.wide circle').count()).toBe(24);
    expect(await detail.locator('table.builds tbody tr', { hasText: 'no-40' }).innerText()).toContain('95 mm');
    await picture(page, 'effects');
    // The same as tables, behind a switch; nothing is said twice.
    await frame.getByLabel('tables').check();
    expect(await detail.locator('svg').count()).toBe(0);
    expect(await detail.locator('table.effects tbody tr', { hasText: 'soundhole.diameter' }).innerText()).toContain(
      '±',
    );
    // The panel has half of what the side bar leaves.
    const before = await page.evaluate(() => ({ width: window.innerWidth, height: window.innerHeight }));
    for (const width of [700, 1400]) {
      await page.setViewportSize({ width: 2 * width + 400, height: 900 });
      await expect
        .poll(() => frame.evaluate(() => window.innerWidth), { timeout: 10_000 })
        .toBeGreaterThan(0.9 * width);
      await expect
        .poll(() => frame.evaluate(() => document.documentElement.scrollWidth - window.innerWidth), { timeout: 10_000 })
        .toBeLessThanOrEqual(0);
    }
    await page.setViewportSize(before);
    expect(await section(frame, 'How to read it, and what to change next').innerText()).toContain(
      'build once more as no-42',
    );
  },
);

journey('what each change did is printed as a document that needs nothing but itself', async (page) => {
  // The line above the model leads there too.
  await openFile(page, 'vennick.bookmatch');
  await goToLine(page, lineOf('vennick.bookmatch', 'model vennick'));
  await page.locator('.codelens-decoration a', { hasText: 'recipes' }).first().click();
  const frame = await panelPage(page, TITLE);
  await section(frame, MATRIX).waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    frame.getByRole('button', { name: 'Print' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('What each change did, vennick.html');
  const html = readFileSync(await download.path(), 'utf8');
  expect(html).not.toMatch(/<script|<link|<button|https?:\/\/(?!www\.w3\.org)/);
  const paper = await page.context().newPage();
  try {
    await paper.setContent(html);
    await paper.setViewportSize({ width: 794, height: 1123 });
    await paper.emulateMedia({ media: 'print' });
    expect(await paper.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    expect(await faultsIn(paper.mainFrame())).toEqual([]);
    await paper.screenshot({ path: '.cache/workbench/pictures/effects-print.png', fullPage: true });
  } finally {
    await paper.close();
  }
});

journey('what each change did is found again after the window is reloaded', async (page) => {
  await effects(page);
  await Promise.all([page.waitForEvent('load'), runCommand(page, 'Developer: Reload Window')]);
  await page.locator('.monaco-workbench .explorer-folders-view .monaco-list-row').first().waitFor({ timeout: 90_000 });
  const after = await panelPage(page, TITLE);
  await section(after, MATRIX).waitFor();
});

for (const theme of ['light', 'dark', 'high contrast'] as const) {
  journey(`what each change did keeps nobody out: ${theme}`, async (page) => {
    const frame = await effects(page);
    await section(frame, MATRIX).waitFor();
    await inTheme(page, theme, async () => {
      expect(await faultsIn(frame)).toEqual([]);
      await section(frame, MATRIX).scrollIntoViewIfNeeded();
      await picture(page, `effects-${theme.replace(' ', '-')}`);
    });
  });
}
