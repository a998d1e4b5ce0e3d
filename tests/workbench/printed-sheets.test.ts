/** Every sheet of the example shops as it leaves the printer: both papers, both languages. */
import { execFileSync } from 'node:child_process';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findChromium } from './host/chromium.js';

const SHEETS: readonly (readonly [shop: string, name: string, kind: string])[] = [
  ...['bench', 'client', 'care', 'papers'].map((kind) => ['wick-lane', 'c-07', kind] as const),
  ['wick-lane', '', 'orders'],
  ['wick-lane', 'lark-3', 'bench'],
  ['hollin-reach', 'no-38', 'bench'],
  ['hollin-reach', 'vennick-40', 'client'],
  ['hollin-reach', 'no-38', 'care'],
  ['hollin-reach', 'no-38', 'papers'],
];

let browser: Browser;
beforeAll(async () => {
  browser = await chromium.launch({ executablePath: findChromium(), args: ['--no-sandbox', '--disable-gpu'] });
});
afterAll(() => browser.close());

/** mm on either side, as `@page` of the sheets has it. */
const MARGIN = 12;
const PAPERS = { A4: [210, 297], Letter: [215.9, 279.4] } as const;

for (const [shop, name, kind] of SHEETS) {
  for (const language of ['en', 'de']) {
    test(`the ${kind} sheet of ${name || 'all orders'} prints whole, in ${language}`, async () => {
      const html = execFileSync(
        process.execPath,
        ['dist/bookmatch.mjs', '--language', language, 'sheet', ...(name === '' ? [] : [name]), '--kind', kind].concat([
          '--in',
          `examples/${shop}`,
        ]),
        { encoding: 'utf8', maxBuffer: 1e8 },
      );
      const page = await browser.newPage();
      try {
        await page.setContent(html);
        await page.emulateMedia({ media: 'print' });
        const heads = new Set(await page.locator('h2').allInnerTexts());
        for (const [paper, [width]] of Object.entries(PAPERS)) {
          await page.setViewportSize({ width: Math.floor(((width - 2 * MARGIN) / 25.4) * 96), height: 1000 });
          // Nothing is wider than the paper, and no word is broken for want of room.
          expect(
            await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
          ).toBeLessThanOrEqual(0);
          const pages = await linesOf(await page.pdf({ format: paper, preferCSSPageSize: false, margin: sides() }));
          expect(pages.length).toBeGreaterThan(0);
          for (const lines of pages) expect(heads, 'a head alone at the foot of a page').not.toContain(lines.at(-1));
          const said = pages.flat().join(' ').replace(/\s+/g, ' ');
          for (const head of heads) expect(said).toContain(head.replace(/\s+/g, ' '));
        }
      } finally {
        await page.close();
      }
    });
  }
}

function sides() {
  const margin = `${MARGIN}mm`;
  return { top: margin, bottom: margin, left: margin, right: margin };
}

/** Lines of text of each page, from top to bottom. */
async function linesOf(pdf: Buffer): Promise<readonly (readonly string[])[]> {
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const document = await getDocument({ data: new Uint8Array(pdf), useSystemFonts: true }).promise;
  const pages: string[][] = [];
  for (let n = 1; n <= document.numPages; n += 1) {
    const { items } = await (await document.getPage(n)).getTextContent();
    const rows = new Map<number, string[]>();
    for (const item of items) {
      if (!('str' in item) || item.str.trim() === '') continue;
      const y = Math.round((item.transform as readonly number[])[5]!);
      rows.set(y, [...(rows.get(y) ?? []), item.str]);
    }
    pages.push([...rows].sort(([one], [other]) => other - one).map(([, words]) => words.join('').trim()));
  }
  return pages;
}
