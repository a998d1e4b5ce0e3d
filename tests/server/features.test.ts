/** The table of features says of ours what the server says of itself. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { openEditor } from './client.js';

const PAGE = readFileSync('language/server/features.md', 'utf8');
const ROWS = [...PAGE.matchAll(/^\| [^|]+ \| `(\w+Provider)` \| ([^|]+) \|/gm)].map(([, capability, ours]) => ({
  capability: capability!,
  ours: /^yes\b/.test(ours!) ? true : /^no\b/.test(ours!) ? false : undefined,
}));

it('every row of ours is what the server declares, and every capability has a row', async () => {
  const { editor, initialized } = await openEditor({});
  const offered = Object.keys(initialized.capabilities).filter((key) => key.endsWith('Provider'));
  expect(ROWS.length).toBeGreaterThan(20);
  expect(ROWS.map(({ capability, ours }) => [capability, ours])).toEqual(
    ROWS.map(({ capability }) => [capability, offered.includes(capability)]),
  );
  expect(offered.filter((key) => !ROWS.some(({ capability }) => capability === key))).toEqual([]);
  await editor.quit();
});
