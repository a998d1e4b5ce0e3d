import { join } from 'node:path';
import type { Page } from 'playwright-core';

/** Keep what the page shows. `npm run workbench:pictures` has them put where the README finds them. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['BOOKMATCH_PICTURES'] ?? '.cache/workbench/pictures';
  await page.screenshot({ path: join(folder, `${name}.png`), animations: 'disabled' });
}
