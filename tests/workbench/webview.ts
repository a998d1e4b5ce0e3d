import type { Frame, Page } from 'playwright-core';

/** The page inside the panel whose tab is in front, once it shows something. */
export async function panelFrame(page: Page): Promise<Frame> {
  const outer = await page.waitForSelector('iframe.webview.ready', { timeout: 30_000 });
  const shell = await outer.contentFrame();
  const inner = await shell!.waitForSelector('iframe#active-frame', { timeout: 30_000 });
  const frame = await inner.contentFrame();
  await frame!.waitForSelector('main > *', { timeout: 30_000 });
  return frame!;
}
