import type { Frame, Page } from 'playwright-core';

/** The page inside the panel that shows `heading`, once it does. */
export async function panelPage(page: Page, heading: string): Promise<Frame> {
  for (let tries = 0; tries < 150; tries += 1) {
    // Each page sits in a frame within a frame of the editor's own, both made anew whenever the panel is.
    for (const frame of page.frames()) {
      if (frame.parentFrame()?.parentFrame() === page.mainFrame() && (await headingOf(frame)) === heading) return frame;
    }
    await page.waitForTimeout(200);
  }
  throw new Error(`No panel shows "${heading}".`);
}

async function headingOf(frame: Frame): Promise<string | undefined> {
  try {
    return await frame.evaluate(() => document.querySelector('main h1')?.textContent);
  } catch {
    return undefined; // gone meanwhile
  }
}
