// `npm run try`: the example shop in the browser edition of VS Code, for a first look without installing anything.
import { cpSync, existsSync, mkdtempSync, mkdirSync, rmSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { prepareHost } from './prepare.js';
import { startHost } from './start.js';

const SHOP = 'examples/hollin-reach';
const VSIX = 'bookmatch.vsix';

try {
  await tryOut();
} catch (error) {
  console.error(`\n${(error as Error).message}`);
  process.exit(1);
}

async function tryOut(): Promise<void> {
  if (!existsSync(VSIX)) throw new Error(`${VSIX} is missing; make it with "npm run package".`);
  const host = prepareHost((line) => console.log(line));
  mkdirSync('.cache', { recursive: true });
  const runFolder = mkdtempSync(resolve('.cache/try-'));
  const running = await startHost(host, { runFolder, vsix: resolve(VSIX) });
  // A copy, since the page saves what is typed in it.
  const shop = join(runFolder, basename(SHOP));
  cpSync(SHOP, shop, { recursive: true });
  console.log(`\nOpen this page in your browser:\n\n  ${running.pageFor(shop)}\n`);
  console.log(`It shows a copy of ${SHOP}; change whatever you like. Press Ctrl-C here when you are done.`);

  await new Promise<void>((done) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, done);
  });
  await running.stop();
  rmSync(runFolder, { recursive: true, force: true });
}
