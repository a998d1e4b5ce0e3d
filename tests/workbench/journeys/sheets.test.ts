import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Frame, Page } from 'playwright-core';
import { expect, inject } from 'vitest';
import { faultsIn } from '../accessibility.js';
import { clickOn } from '../editor.js';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { asks, choose, goToLine, openFile, runAskingCommand, runCommand } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { openBookmatchViews, openFiles, openFromList, rowsOf } from '../side-bar.js';
import { inTheme } from '../theme.js';
import { panelPage } from '../webview.js';

const RECIPES = 'vennick-recipes.bookmatch';

async function sheetOf(page: Page, recipe: string, sheet: string, heading: string): Promise<Frame> {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, `recipe ${recipe} `));
  await clickOn(page, `recipe ${recipe} from`, recipe);
  await runAskingCommand(page, 'Bookmatch: Print a Sheet', 'Which sheet?');
  await choose(page, sheet);
  return panelPage(page, heading);
}

journey('the bench sheet of the recipe at the cursor, shown as on paper and handed over to print', async (page) => {
  const frame = await sheetOf(page, 'vennick-38', 'Bench sheet', 'Bench sheet: vennick-38');
  const different = frame.locator('section', { hasText: 'What is different in this one' }).first();
  expect(await different.innerText()).toContain('norway-38');
  // Paper is white whatever the theme, and the sheet's own style is in force.
  expect(await frame.locator('.sheet').evaluate((sheet) => getComputedStyle(sheet).backgroundColor)).toBe(
    'rgb(255, 255, 255)',
  );
  await picture(page, 'bench-sheet');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    frame.getByRole('button', { name: 'Print' }).click(),
  ]);
  const html = readFileSync(await download.path(), 'utf8');
  expect(html).toContain('<h1>Bench sheet: vennick-38</h1>');
  expect(html).not.toMatch(/<script|<link/);
});

const KINDS = new Map([
  ['Bench sheet', /^Bench sheet: vennick-38$/],
  ['Client sheet', /^vennick-38$/],
  ['Setup and care card', /^Setup and care: vennick-38$/],
  ['Species and papers', /^Species and papers: vennick-38$/],
]);

/** Turn the panel to another sheet of the same. */
async function turnTo(frame: Frame, kind: string, heading: RegExp): Promise<void> {
  await frame.getByRole('radio', { name: kind }).check();
  await expect.poll(() => frame.locator('main h1').innerText(), { timeout: 10_000 }).toMatch(heading);
}

journey('an order in the text offers its sheets, the one for the client first', async (page) => {
  const file = join(inject('shop'), 'orders.bookmatch');
  const agreed = 'agreed: 2026-02-03  promised: 2026-09-01  destination: "Norway"';
  writeFileSync(file, `order c-07 of vennick-38 { client: "AB"  ${agreed} }\n`);
  try {
    // The list of files hears of a new one sooner than the search for names does.
    await openFromList(page, 'orders.bookmatch');
    await page.locator('.codelens-decoration a', { hasText: 'Print a sheet' }).first().click();
    await asks(page, 'Which sheet?');
    expect(await page.locator('.quick-input-list .monaco-list-row').allInnerTexts()).toEqual(
      ['Client', 'Setup', 'Species', 'Bench', 'Open orders'].map((kind) => expect.stringContaining(kind) as string),
    );
    await choose(page, 'Client sheet');
    const frame = await panelPage(page, 'vennick-38');
    expect(await frame.locator('section', { hasText: 'What was agreed' }).first().innerText()).toContain('2026-09-01');
    await picture(page, 'client-sheet');
    await turnTo(frame, 'Species and papers', KINDS.get('Species and papers')!);
    expect(await frame.locator('.sheet header').innerText()).toContain('It goes to: Norway');
    // At the cursor it needs no lens.
    await runCommand(page, 'View: Focus First Editor Group');
    await runAskingCommand(page, 'Bookmatch: Print a Sheet', 'Which sheet?');
    await choose(page, 'Setup and care card');
    await panelPage(page, 'Setup and care: vennick-38');
  } finally {
    rmSync(file);
  }
});

journey('a build in the lineage offers its sheets', async (page) => {
  await openFile(page, 'vennick-builds.bookmatch');
  await openBookmatchViews(page);
  const row = rowsOf(page, 'Lineage').filter({ hasText: 'no-34' }).first();
  // The view follows the cursor.
  for (let attempt = 0; attempt < 4 && !(await row.isVisible()); attempt++) {
    await goToLine(page, 1);
    await goToLine(page, lineOf('vennick-builds.bookmatch', 'build no-34'));
    await row.waitFor({ timeout: 8_000 }).catch(() => undefined);
  }
  await row.click({ button: 'right' });
  const entry = page.locator('.context-view .action-label', { hasText: 'Print a Sheet' });
  await entry.hover();
  // A menu takes no click in its first moments, lest it be the one that opened it.
  await page.waitForTimeout(500);
  await entry.click();
  await choose(page, 'Bench sheet');
  await panelPage(page, 'Bench sheet: no-34');
  await openFiles(page);
});

for (const theme of ['light', 'dark', 'high contrast'] as const) {
  journey(`nothing about any sheet keeps anybody out: ${theme}`, async (page) => {
    const frame = await sheetOf(page, 'vennick-38', 'Bench sheet', 'Bench sheet: vennick-38');
    await inTheme(page, theme, async () => {
      for (const [kind, heading] of KINDS) {
        await turnTo(frame, kind, heading);
        expect(await faultsIn(frame), kind).toEqual([]);
        await picture(page, `${kind.toLowerCase().replaceAll(' ', '-')}-${theme.replace(' ', '-')}`);
      }
    });
  });
}

journey('nothing about a sheet on paper keeps anybody out', async (page) => {
  const frame = await sheetOf(page, 'vennick-38', 'Bench sheet', 'Bench sheet: vennick-38');
  const paper = await page.context().newPage();
  try {
    for (const [kind, heading] of KINDS) {
      await turnTo(frame, kind, heading);
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        frame.getByRole('button', { name: 'Print' }).click(),
      ]);
      await paper.setContent(readFileSync(await download.path(), 'utf8'));
      expect(await faultsIn(paper.mainFrame()), kind).toEqual([]);
    }
  } finally {
    await paper.close();
  }
});
