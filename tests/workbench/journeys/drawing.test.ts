import { readFileSync } from 'node:fs';
import type { Frame, Page } from 'playwright-core';
import { expect } from 'vitest';
import { faultsIn } from '../accessibility.js';
import { clickOn, EDITOR } from '../editor.js';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { goToLine, openFile, runCommand } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { inTheme } from '../theme.js';
import { panelPage } from '../webview.js';

const RECIPES = 'vennick-recipes.bookmatch';
const MODEL = 'vennick.bookmatch';

/** Open the drawing of a recipe and wait for its page. */
async function drawingOf(page: Page, recipe: string): Promise<Frame> {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, `recipe ${recipe} `));
  await clickOn(page, `recipe ${recipe} from`, recipe);
  await runCommand(page, 'Bookmatch: Show Drawing');
  return panelPage(page, recipe);
}

const brace = (frame: Frame, name: string) =>
  frame.locator(`svg.plan [aria-label="Go to where brace ${name} is written"]`);

journey('the drawing shows the recipe at the cursor, and follows the cursor to another', async (page) => {
  const frame = await drawingOf(page, 'vennick-40');
  expect(await frame.locator('svg.plan .part').count()).toBe(8);
  expect(await frame.locator('.pointed-at').innerText()).toContain('Point at a part');
  // The number in a brace lets the pointer through to it.
  await frame.locator('svg.plan .number').first().hover({ force: true });
  expect(await frame.locator('.pointed-at').innerText()).toMatch(/^x-bass from .* width 7.9 mm · height 15.9 mm/);
  await picture(page, 'drawing');
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-34 '));
  await panelPage(page, 'vennick-34');
});

journey('the drawing follows the text as it is typed', async (page) => {
  await openFile(page, MODEL);
  await goToLine(page, lineOf(MODEL, 'soundhole {'));
  await clickOn(page, 'soundhole {', 'soundhole');
  await runCommand(page, 'Bookmatch: Show Drawing');
  const frame = await panelPage(page, 'vennick');
  const hole = frame.locator('svg.plan .soundhole');
  const before = await hole.getAttribute('d');
  await clickOn(page, 'soundhole {', '101');
  await page.keyboard.press('Home');
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
  await page.keyboard.type('soundhole.offset: 20 mm');
  await expect.poll(() => hole.getAttribute('d'), { timeout: 20_000 }).not.toBe(before);
  expect(await frame.locator('table', { hasText: 'soundhole' }).last().innerText()).toContain('offset 20 mm');
});

journey('a brace in the drawing leads to its line, by the mouse and by the keyboard', async (page) => {
  const frame = await drawingOf(page, 'vennick-40');
  await brace(frame, 'tone-bar-1').click();
  await page.locator('.tab.active', { hasText: MODEL }).waitFor();
  const status = page.locator('#status\\.editor\\.selection');
  await expect.poll(() => status.innerText(), { timeout: 10_000 }).toContain(`Ln ${lineOf(MODEL, 'tone-bar-1')},`);
  await page.locator(`${EDITOR}.focused`).waitFor();
  // The cursor is in the model now, and the drawing still that of the recipe.
  await brace(frame, 'tone-bar-2').focus();
  expect(await frame.locator('h1').innerText()).toBe('vennick-40');
  expect(await frame.locator('.pointed-at').innerText()).toContain('tone-bar-2');
  // The editor may still be taking the focus for the line before.
  await expect.poll(() => frame.evaluate(() => document.hasFocus()), { timeout: 10_000 }).toBe(true);
  await brace(frame, 'tone-bar-2').press('Enter');
  await expect.poll(() => status.innerText(), { timeout: 10_000 }).toContain(`Ln ${lineOf(MODEL, 'tone-bar-2')},`);
});

journey('a mode shape is worked out when it is asked for, and drawn', async (page) => {
  const frame = await drawingOf(page, 'vennick-40');
  await frame.getByLabel('mode shapes').check();
  const table = frame.locator('table', { hasText: 'Frequency' });
  await table.waitFor({ timeout: 60_000 });
  expect(await table.locator('tbody tr').count()).toBe(6);
  const first = await frame.locator('.still').getAttribute('d');
  await frame.getByRole('radio', { name: / Hz$/ }).nth(2).check();
  await expect.poll(() => frame.locator('.still').getAttribute('d'), { timeout: 10_000 }).not.toBe(first);
  expect(await frame.locator('.marks').textContent()).toMatch(/[+−]\s+[+−]/);
  await picture(page, 'mode-shape');
});

journey('a mode swings as a relief, quickly enough to look like motion, and is turned', async (page) => {
  const frame = await drawingOf(page, 'vennick-40');
  await frame.getByLabel('mode shapes').check();
  await frame.getByLabel('as a relief').check({ timeout: 60_000 });
  const relief = frame.locator('plate-relief');
  await relief.waitFor();
  const drawn = () => relief.evaluate((element) => (element as HTMLElement & { readonly drawn: number }).drawn);
  await expect.poll(drawn, { timeout: 10_000 }).toBeGreaterThan(0);
  // Still, it is not drawn again and again.
  await page.waitForTimeout(300);
  const still = await drawn();
  await page.waitForTimeout(700);
  expect((await drawn()) - still).toBeLessThan(2);
  await frame.getByLabel('moving slowly').check();
  const [begun, from] = [Date.now(), await drawn()];
  await page.waitForTimeout(3000);
  const perSecond = ((await drawn()) - from) / ((Date.now() - begun) / 1000);
  console.log(`  the relief was drawn ${perSecond.toFixed(0)} times a second`);
  expect(perSecond).toBeGreaterThan(15);
  await frame.getByLabel('moving slowly').uncheck();
  const picturesOf = () => relief.evaluate((element) => element.querySelector('canvas')!.toDataURL());
  await relief.focus();
  await page.waitForTimeout(300);
  const before = await picturesOf();
  await relief.press('ArrowLeft');
  await expect.poll(picturesOf).not.toBe(before);
  await picture(page, 'mode-relief');
  expect(await faultsIn(frame)).toEqual([]);
  await frame.getByLabel('flat').check();
  await frame.locator('svg.plan').first().waitFor();
});

journey('the drawing is printed as a document that needs nothing but itself', async (page) => {
  const frame = await drawingOf(page, 'vennick-40');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    frame.getByRole('button', { name: 'Print' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('vennick-40, drawing.html');
  const html = readFileSync(await download.path(), 'utf8');
  expect(html).not.toMatch(/<script|<link|<button|tabindex|https?:\/\/(?!www\.w3\.org)/);
  const paper = await page.context().newPage();
  try {
    await paper.setContent(html);
    await paper.setViewportSize({ width: 794, height: 1123 });
    await paper.emulateMedia({ media: 'print' });
    expect(await paper.locator('svg.plan .part').count()).toBe(8);
    expect(await paper.locator('table').first().innerText()).toContain('15.9 mm');
    expect(await paper.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    expect(await faultsIn(paper.mainFrame())).toEqual([]);
    await picture(paper, 'drawing-print');
  } finally {
    await paper.close();
  }
});

journey('the drawing is found again after the window is reloaded', async (page) => {
  const before = await drawingOf(page, 'vennick-40');
  await before.getByLabel('back', { exact: true }).check();
  await before.locator('h2', { hasText: 'Braces of the back' }).waitFor();
  await Promise.all([page.waitForEvent('load'), runCommand(page, 'Developer: Reload Window')]);
  await page.locator('.monaco-workbench .explorer-folders-view .monaco-list-row').first().waitFor({ timeout: 90_000 });
  const after = await panelPage(page, 'vennick-40');
  await after.locator('h2', { hasText: 'Braces of the back' }).waitFor();
});

for (const theme of ['light', 'dark', 'high contrast'] as const) {
  journey(`nothing about the drawing keeps anybody out: ${theme}`, async (page) => {
    const frame = await drawingOf(page, 'vennick-40');
    await inTheme(page, theme, async () => {
      expect(await faultsIn(frame)).toEqual([]);
      await frame.getByLabel('mode shapes').check();
      await frame.locator('table', { hasText: 'Frequency' }).waitFor({ timeout: 60_000 });
      expect(await faultsIn(frame)).toEqual([]);
      await frame.getByLabel('back', { exact: true }).check();
      await frame.locator('h2', { hasText: 'Modes of the back' }).waitFor();
      expect(await faultsIn(frame)).toEqual([]);
    });
  });
}
