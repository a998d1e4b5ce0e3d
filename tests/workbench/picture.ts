import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';

/** Keep what the page shows. `npm run workbench:pictures` takes those anew that stand where the README finds them. */
export async function picture(page: Page, name: string): Promise<void> {
  const file = `${name}.png`;
  const folder = PICTURES !== undefined && existsSync(join(PICTURES, file)) ? PICTURES : KEPT;
  await page.screenshot({ path: join(folder, file), animations: 'disabled' });
}

/** Whether pictures are wanted anew. */
export const TAKES_PICTURES = process.env['BOOKMATCH_PICTURES'] !== undefined;

/** A part of the page for a step of the walkthrough, which finds it among the extension's own pictures, in two themes. */
export async function walkthroughPicture(
  page: Page,
  step: string,
  theme: 'light' | 'dark',
  part: Locator,
): Promise<void> {
  const box = await part.boundingBox();
  if (!box) throw new Error(`Nothing to be seen for the step "${step}".`);
  const path = join(PICTURES === undefined ? KEPT : 'extension/pictures', `walkthrough-${step}-${theme}.png`);
  const size = { width: Math.min(box.width, 900), height: Math.min(box.height, 560) };
  await page.screenshot({ path, clip: { x: box.x, y: box.y, ...size }, animations: 'disabled' });
}

const PICTURES = process.env['BOOKMATCH_PICTURES'];
const KEPT = '.cache/workbench/pictures';
