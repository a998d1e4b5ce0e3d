import type { Locator, Page } from 'playwright-core';

/** The editor with the focus, or the only one. */
export const EDITOR = '.editor-group-container.active .monaco-editor';

interface Box {
  readonly x: number;
  readonly y: number;
}

/** The middle of `word` in the first visible line that contains `line`. Throws when it is not on the screen. */
export async function whereIs(page: Page, line: string, word = line): Promise<Box> {
  const found = await page.waitForFunction(
    ([editor, wantedLine, wantedWord]) => {
      const plain = (text: string) => text.replaceAll('\u00A0', ' ');
      const row = [...document.querySelectorAll(`${editor} .view-line`)].find((candidate) =>
        plain(candidate.textContent).includes(wantedLine),
      );
      if (!row) return null;
      const text = plain(row.textContent);
      const start = text.indexOf(wantedWord, text.indexOf(wantedLine));
      const range = document.createRange();
      let passed = 0;
      const walker = document.createTreeWalker(row, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        const length = node.textContent?.length ?? 0;
        const from = start - passed;
        const to = from + wantedWord.length;
        if (from >= 0 && from < length) range.setStart(node, from);
        if (to > 0 && to <= length) range.setEnd(node, to);
        passed += length;
      }
      const { x, y, width, height } = range.getBoundingClientRect();
      return width > 0 ? { x: x + width / 2, y: y + height / 2 } : null;
    },
    [EDITOR, line, word] as const,
    { timeout: 20_000 },
  );
  const box = await found.jsonValue();
  if (!box) throw new Error(`"${word}" is not on the screen.`);
  return box;
}

/** Click on a word, which puts the cursor in it. An editor that is still settling may lose a click. */
export async function clickOn(page: Page, line: string, word = line): Promise<void> {
  const cursor = page.locator(`${EDITOR} .cursors-layer .cursor`).first();
  for (let tries = 0; tries < 5; tries += 1) {
    const { x, y } = await whereIs(page, line, word);
    await page.mouse.click(x, y);
    await page.waitForTimeout(100);
    const box = await cursor.boundingBox();
    if (box && box.y <= y && y <= box.y + box.height) return;
  }
  throw new Error(`The cursor does not go to "${word}".`);
}

/** What the hover over a word says. */
export async function hoverOver(page: Page, line: string, word = line): Promise<string> {
  const hover = page.locator('.monaco-hover:visible .monaco-hover-content').first();
  // The text may shift under the pointer while hints arrive; a person would point again.
  for (let attempt = 0; attempt < 6; attempt++) {
    const { x, y } = await whereIs(page, line, word);
    await page.mouse.move(x - 3, y - 40);
    await page.mouse.move(x, y, { steps: 4 });
    if (
      await hover.waitFor({ timeout: 5_000 }).then(
        () => true,
        () => false,
      )
    )
      return settledText(hover);
  }
  throw new Error(`No hover over "${word}".`);
}

/** A hover says at first that it is on its way. */
async function settledText(hover: Locator): Promise<string> {
  for (let tries = 0; tries < 50; tries++) {
    const text = await hover.innerText();
    if (text.trim() !== 'Loading...') return text;
    await hover.page().waitForTimeout(200);
  }
  return hover.innerText();
}

/** The text on the screen, without what hints add. */
export async function visibleText(page: Page): Promise<string> {
  const lines = await page.locator(`${EDITOR} .view-line`).evaluateAll((rows) =>
    rows
      .map((row) => ({ top: row.getBoundingClientRect().top, text: row.textContent.replaceAll('\u00A0', ' ') }))
      .sort((a, b) => a.top - b.top)
      .map(({ text }) => text),
  );
  return lines.join('\n');
}

/** Wait for a squiggle of this severity in the active editor. */
export async function waitForSquiggle(page: Page, severity: 'error' | 'warning' | 'info'): Promise<void> {
  await page.locator(`${EDITOR} .squiggly-${severity}`).first().waitFor({ timeout: 90_000 });
}
