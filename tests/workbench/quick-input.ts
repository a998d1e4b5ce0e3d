import type { Page } from 'playwright-core';
import { EDITOR } from './editor.js';

/** Open a file of the folder by its name. */
export async function openFile(page: Page, name: string): Promise<void> {
  await enter(page, name);
  await page.locator('.tab.active', { hasText: name.split('/').at(-1)! }).waitFor();
  await page.locator(`${EDITOR}.focused`).waitFor();
}

/** Carry out a command of the palette by its title. */
export async function runCommand(page: Page, title: string): Promise<void> {
  await enter(page, `>${title}`);
}

/** Carry out a command that goes on to ask something. */
export async function startCommand(page: Page, title: string): Promise<void> {
  await type(page, `>${title}`);
  await page.keyboard.press('Enter');
}

/** Carry out a command that goes on to ask with a list. */
export async function runAskingCommand(page: Page, title: string, question: string): Promise<void> {
  await startCommand(page, title);
  await asks(page, question);
}

/** Titles of the commands the palette offers that begin so, in the order of the alphabet. */
export async function commandsOnOffer(page: Page, beginning: string): Promise<readonly string[]> {
  await type(page, `>${beginning}`);
  const rows = await page.locator(`${ROW} .monaco-icon-label-container`).allInnerTexts();
  await page.keyboard.press('Escape');
  const titles = rows.map((row) => row.split('\n')[0]!.trim()).filter((row) => row.startsWith(beginning));
  return [...new Set(titles)].sort();
}

/** Put the cursor at the start of a line, counted from 1. */
export async function goToLine(page: Page, line: number): Promise<void> {
  await enter(page, `:${line}`);
}

/** Wait until the list that is open asks this. */
export async function asks(page: Page, question: string): Promise<void> {
  await page.locator(`${INPUT}[placeholder="${question}"]`).waitFor();
}

/** Choose the entry with this label from the list that is open. */
export async function choose(page: Page, label: string): Promise<void> {
  await settleOn(page, label, label);
  await page.keyboard.press('Enter');
  await outOfTheWay(page);
}

/** Answer a question that is asked with a line to be typed. */
export async function answer(page: Page, question: string, text: string): Promise<void> {
  await page.locator('.quick-input-widget:visible .quick-input-message', { hasText: question }).waitFor();
  await page.locator(INPUT).fill(text);
  await page.keyboard.press('Enter');
}

const INPUT = '.quick-input-widget:visible .quick-input-box input';
const ROW = '.quick-input-list .monaco-list-row';

async function enter(page: Page, text: string): Promise<void> {
  await type(page, text);
  await page.keyboard.press('Enter');
  await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
  await outOfTheWay(page);
}

/** Off the command centre, which would show its tip. */
async function outOfTheWay(page: Page): Promise<void> {
  await page.mouse.move(24, 560);
}

/** By mouse: keys go astray while a panel has the focus. */
async function type(page: Page, text: string): Promise<void> {
  await page.keyboard.press('Escape');
  await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
  await page.locator('.command-center .command-center-center').click();
  await page.locator(ROW).first().waitFor();
  await settleOn(page, text, text.startsWith(':') ? '' : text.replace(/^>/, ''));
}

/** The list fills while one types, and may yet throw away what was typed: look until it stays as wanted. */
async function settleOn(page: Page, text: string, label: string): Promise<void> {
  for (let seen = 0, tries = 0; seen < 2; tries += 1) {
    if (tries > 100) throw new Error(`The list does not come to "${label}".`);
    // What is offered may only just have come: a person would type again.
    if (tries % 25 === 24) await page.locator(INPUT).fill(text.slice(0, 1));
    if ((await page.locator(INPUT).inputValue()) !== text) await page.locator(INPUT).fill(text);
    await page.waitForTimeout(80);
    const focused = await page.locator(`${ROW}.focused`).allInnerTexts();
    const isThere = focused.some((row) => row.includes(label));
    seen = isThere ? seen + 1 : 0;
    // What was asked for may stand below something like it.
    const below = isThere ? [] : await page.locator(ROW, { hasText: label }).all();
    if (below.length > 0) await page.keyboard.press('ArrowDown');
  }
}
