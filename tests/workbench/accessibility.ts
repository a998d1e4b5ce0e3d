import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Frame } from 'playwright-core';

declare const axe: { run: (context: unknown, options: RunOptions) => Promise<AxeResults> };

/** What axe finds wrong with a page for people who use a screen reader, keys or high contrast: a line for each. */
export async function faultsIn(frame: Frame): Promise<readonly string[]> {
  // Not by a script tag, which the page's own policy would not let in.
  await frame.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
  const { violations, passes } = await frame.evaluate(() => axe.run(document, {}));
  if (passes.length < 10) throw new Error('axe had hardly anything to look at.');
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(
      ({ html, any }) => `${id}: ${help}: ${html.slice(0, 120)} ${any.map(({ message }) => message).join('; ')}`,
    ),
  );
}
