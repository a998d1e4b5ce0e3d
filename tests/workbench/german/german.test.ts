import { expect } from 'vitest';
import { hoverOver, whereIs } from '../editor.js';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { openProblems, problemsWith } from '../problems.js';
import { goToLine, openFile, startCommand } from '../quick-input.js';
import { lineOf } from '../shop.js';
import { openBookmatchViews } from '../side-bar.js';
import { panelPage } from '../webview.js';

const RECIPES = 'vennick-recipes.bookmatch';

journey('in a German VS Code findings, hovers, hints, lenses, views and commands are German', async (page) => {
  await openFile(page, RECIPES);
  await goToLine(page, lineOf(RECIPES, 'recipe vennick-40'));
  await openProblems(page);
  const [finding] = await problemsWith(page, '2 Änderungen, und die Werkstatt erlaubt 1');
  expect(finding).toContain('soundhole.diameter');

  await goToLine(page, lineOf(RECIPES, 'recipe vennick-32'));
  await whereIs(page, '= 2.79 mm ± 0.03 mm, vorher 2.80 mm');
  const hover = await hoverOver(page, 'hold top.stiffness.along', 'along');
  expect(hover).toContain('Biegesteifigkeit der rohen Decke längs der Faser, je Breite.');
  expect(hover).toMatch(/aus gemessen|Handbuch/i);
  await page.locator('.codelens-decoration', { hasText: 'ein anderer Satz desselben Holzes' }).first().waitFor();

  await openBookmatchViews(page);
  for (const view of ['Abstammung', 'Werte', 'Hölzer']) {
    await page.locator(`.sidebar .pane-header[aria-label^="${view}"]`).waitFor();
  }
  await startCommand(page, 'Zeichnung zeigen');
  await page.locator('.tab.active', { hasText: 'Zeichnung von vennick-32' }).waitFor();
  await picture(page, 'german');

  await goToLine(page, lineOf(RECIPES, 'recipe vennick-38'));
  await startCommand(page, 'Zeigen, was jede Änderung bewirkt hat');
  const effects = await panelPage(page, 'Was jede Änderung bewirkt hat: vennick');
  const said = await effects.locator('main').innerText();
  for (const words of [
    '12 Bauten, 7 gesuchte Wirkungen',
    'Was jede Änderung an jedem Messwert bewirkt hat',
    'nicht unterscheidbar',
    'noch einmal so bauen',
  ])
    expect(said).toContain(words);
  expect(said).not.toMatch(/\b(the|of|and|what|builds?|effect|floor)\b/);
  await picture(page, 'german-effects');
});
