import { expect } from 'vitest';
import { journey } from '../journey.js';
import { picture } from '../picture.js';
import { choose, runAskingCommand, runCommand } from '../quick-input.js';
import { openFiles } from '../side-bar.js';

journey('the walkthrough has four steps, each with its picture', async (page) => {
  // Pictures are shown where there is room for them.
  await runCommand(page, 'View: Toggle Primary Side Bar Visibility');
  await runAskingCommand(page, 'Welcome: Open Walkthrough...', 'Select a walkthrough to open');
  await choose(page, 'Your First Recipe');
  const steps = page.locator('.gettingStartedContainer .getting-started-step');
  await expect.poll(() => steps.count()).toBe(4);
  const titles = ['Write a recipe', 'Read what it computes', 'Change one thing and compare', 'Choose the wood'];
  for (const [i, title] of titles.entries()) {
    await steps.nth(i).locator('.step-title').click();
    await steps.nth(i).filter({ hasText: title }).and(page.locator('.expanded')).waitFor();
    const image = page.locator('.gettingStartedContainer .getting-started-media img');
    await expect.poll(() => image.evaluate((one: HTMLImageElement) => one.naturalWidth)).toBeGreaterThan(150);
    expect(await image.getAttribute('alt')).not.toBe('');
  }
  await steps.first().locator('.step-title').click();
  await page.locator('.gettingStartedContainer .getting-started-media img:visible').waitFor();
  await picture(page, 'walkthrough');
  await openFiles(page);
});
