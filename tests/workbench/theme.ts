import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { inject } from 'vitest';

export type Theme = 'light' | 'dark' | 'high contrast';

const THEMES: Readonly<Record<Theme, { readonly name: string; readonly sign: string }>> = {
  light: { name: 'Default Light Modern', sign: '.monaco-workbench.vs:not(.vs-dark):not(.hc-black)' },
  dark: { name: 'Default Dark Modern', sign: '.monaco-workbench.vs-dark' },
  'high contrast': { name: 'Default High Contrast', sign: '.monaco-workbench.hc-black' },
};

/** Has the workbench draw itself in a theme while `work` goes on. */
export async function inTheme(page: Page, theme: Theme, work: () => Promise<void>): Promise<void> {
  const folder = join(inject('shop'), '.vscode');
  mkdirSync(folder, { recursive: true });
  const { name, sign } = THEMES[theme];
  writeFileSync(join(folder, 'settings.json'), JSON.stringify({ 'workbench.colorTheme': name }));
  try {
    await page.locator(sign).waitFor({ timeout: 30_000 });
    await page.waitForTimeout(500);
    await work();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
