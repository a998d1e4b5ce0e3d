import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, inject } from 'vitest';
import { whereIs } from '../editor.js';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { answer, choose, commandsOnOffer, startCommand } from '../quick-input.js';
import { openBookmatchViews, rowsOf } from '../side-bar.js';

journey('an empty folder offers to start a shop, and four answers write one without a fault', async (page) => {
  await page.goto(inject('emptyPage'));
  await page.locator('.monaco-workbench .explorer-folders-view').waitFor({ timeout: 90_000 });
  await openBookmatchViews(page);
  const offer = page.locator('.notification-toast', { hasText: 'There is no recipe in this folder yet.' });
  await offer.waitFor({ timeout: 30_000 });
  await picture(page, 'first-run');
  await offer.getByText('Not Now').click();
  await offer.waitFor({ state: 'detached' });
  // What is about recipes is offered where there are some.
  expect(await commandsOnOffer(page, 'Bookmatch: ')).toEqual([
    'Bookmatch: First Steps',
    // The editor's own, of every view there is.
    'Bookmatch: Focus on Lineage View',
    'Bookmatch: Start a Shop',
  ]);
  await page.locator('.sidebar .pane .monaco-button', { hasText: 'Start a Shop' }).click();
  await answer(page, 'What is the shop called?', 'Sanders & Dale');
  await choose(page, 'Inches and ounces');
  await choose(page, 'A classical guitar');
  await answer(page, 'What is that model called?', 'Concert 1');

  await page.locator('.tab.active', { hasText: 'concert-1.bookmatch' }).waitFor();
  await whereIs(page, 'model concert-1 {');
  await rowsOf(page, 'Lineage').filter({ hasText: 'concert-1-3' }).waitFor();
  await page.locator('#status\\.problems[aria-label="No Problems"], #status\\.problems[aria-label^="Infos"]').waitFor();
  const folder = inject('emptyFolder');
  expect(readdirSync(folder).sort()).toEqual(['concert-1.bookmatch', 'shop.bookmatch', 'woods.bookmatch']);
  expect(readFileSync(join(folder, 'shop.bookmatch'), 'utf8')).toContain('title: "Sanders & Dale"\n  units: inch');
});

journey('a shop that is there already is left as it is', async (page) => {
  const folder = inject('emptyFolder');
  const before = readFileSync(join(folder, 'shop.bookmatch'), 'utf8');
  await startCommand(page, 'Bookmatch: Start a Shop');
  await answer(page, 'What is the shop called?', 'Another');
  await choose(page, 'Millimetres and grams');
  await choose(page, 'A steel-string guitar');
  await answer(page, 'What is that model called?', 'Other');
  const said = page.locator('.notification-toast', { hasText: 'Nothing was written: shop.bookmatch, woods.bookmatch' });
  await said.waitFor();
  expect(readdirSync(folder).sort()).toEqual(['concert-1.bookmatch', 'shop.bookmatch', 'woods.bookmatch']);
  expect(readFileSync(join(folder, 'shop.bookmatch'), 'utf8')).toBe(before);
});
