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
  'what each change did: build by build, and each effect on its noise floor with the same in a table',
  async (page) => {
    const frame = await effects(page);
    const changed = section(frame, 'What was changed');
    expect(await changed.innerText()).toContain('12 builds, 7 effects to find');
    const rows = await changed.locator('table.design tbody tr').allInnerTexts();
    expect(rows.length).toBe(12);
    expect(rows.find((row) => row.startsWith('no-40'))).toMatch(/22 g.*95 mm/s);

    const mass = section(frame, 'What each change did to top.mass');
    const thinner = mass.locator('table.effects tbody tr', { hasText: 'top.thickness 2.61 mm' });
    expect(await thinner.innerText()).toMatch(/−10\.2 ± 7\.0 g\s+−10\.8 g\s+stands out/);
    // Every row of the table is drawn, its floor too, and filled where it stands out.
    const [told, found] = [mass.locator('table.effects tbody tr'), mass.locator('table.effects tr.found')];
    expect(await mass.locator('svg.plot g > rect.floor').count()).toBe(await told.count());
    expect(await mass.locator('svg.plot g > .mark.found').count()).toBe(await found.count());
    const isOnFloor = await mass.locator('svg.plot g:has(> rect.floor)').evaluateAll((groups) =>
      groups.map((group) => {
        const [floor, mark] = ['rect.floor', '.mark'].map((part) => group.querySelector(part)!);
        const [x, width, at] = [floor!.getAttribute('x'), floor!.getAttribute('width'), mark!.getAttribute('cx')].map(
          Number,
        );
        return at! >= x! && at! <= x! + width!;
      }),
    );
    expect(isOnFloor).toEqual(await told.evaluateAll((all) => all.map((row) => !row.classList.contains('found'))));
    // What takes the plate solver comes when it is there.
    const air = section(frame, 'What each change did to resonance.air day-1');
    await expect
      .poll(() => air.locator('table.effects tbody tr', { hasText: 'soundhole.diameter' }).innerText(), {
        timeout: 90_000,
      })
      .toMatch(/−2\.\d Hz/);
    expect(await section(frame, 'How to read it, and what to change next').innerText()).toContain(
      'build once more as no-42',
    );
    await picture(page, 'effects');
  },
);

journey('what each change did is printed as a document that needs nothing but itself', async (page) => {
  // The line above the model leads there too.
  await openFile(page, 'vennick.bookmatch');
  await goToLine(page, lineOf('vennick.bookmatch', 'model vennick'));
  await page.locator('.codelens-decoration a', { hasText: 'recipes' }).first().click();
  const frame = await panelPage(page, TITLE);
  await section(frame, 'What each change did to top.mass').waitFor();
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
  await section(after, 'What each change did to top.mass').waitFor();
});

for (const theme of ['light', 'dark', 'high contrast'] as const) {
  journey(`what each change did keeps nobody out: ${theme}`, async (page) => {
    const frame = await effects(page);
    await section(frame, 'What each change did to top.mass').waitFor();
    await inTheme(page, theme, async () => {
      expect(await faultsIn(frame)).toEqual([]);
      await section(frame, 'What each change did to top.mass').scrollIntoViewIfNeeded();
      await picture(page, `effects-${theme.replace(' ', '-')}`);
    });
  });
}
