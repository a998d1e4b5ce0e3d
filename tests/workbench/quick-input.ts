import type { Page } from 'playwright-core';

/** Open a file of the folder by its name. */
export async function openFile(page: Page, name: string): Promise<void> {
  await enter(page, name);
  await page.locator('.tab.active', { hasText: name.split('/').at(-1)! }).waitFor();
}

/** Carry out a command of the palette by its title. */
export async function runCommand(page: Page, title: string): Promise<void> {
  await enter(page, `>${title}`);
}

/** Put the cursor at the start of a line, counted from 1. */
export async function goToLine(page: Page, line: number): Promise<void> {
  await enter(page, `:${line}`);
}

/** Choose the entry whose label starts with `label` from the list that is open. */
export async function choose(page: Page, label: string): Promise<void> {
  await page.locator(INPUT).fill(label);
  await entry(page, label).waitFor();
  await page.keyboard.press('Enter');
}

const INPUT = '.quick-input-widget:visible .quick-input-box input';

/** By mouse: keys go astray while a panel has the focus. */
async function enter(page: Page, text: string): Promise<void> {
  await page.keyboard.press('Escape');
  await page.locator('.command-center .command-center-center').click();
  await page.locator(INPUT).fill(text);
  await entry(page, text.startsWith(':') ? '' : text.replace(/^>/, '')).waitFor();
  await page.keyboard.press('Enter');
  await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
}

function entry(page: Page, text: string) {
  return page.locator('.quick-input-list .monaco-list-row', { hasText: text }).first();
}
