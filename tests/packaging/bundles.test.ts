/** What must not travel in a bundle: libraries for something that only another program does. */
import { build } from 'esbuild';
import { expect, it } from 'vitest';
import { packagesIn } from '../../extension/packaging/third-party.mjs';

/** They write files for printers and machines, and read the words of a command: work of the terminal. */
const OF_THE_TERMINAL = ['pdf-lib', '@tarikjabiri/dxf', 'commander'].map((name) => `node_modules/${name}`);

async function carried(entry: string): Promise<readonly string[]> {
  const { metafile } = await build({
    ...{
      entryPoints: [entry],
      bundle: true,
      metafile: true,
      write: false,
      outfile: 'dist/bundle.mjs',
      logLevel: 'silent',
    },
    ...{ format: 'esm', platform: 'node', mainFields: ['module', 'main'], loader: { '.bookmatch': 'text' } },
    external: ['vscode'],
  });
  return packagesIn([metafile]);
}

it('a keystroke does not wait behind what only the terminal does', async () => {
  // The check can fail: this is where they are.
  expect(await carried('language/cli/main.ts')).toEqual(expect.arrayContaining(OF_THE_TERMINAL));
  for (const entry of ['language/server/main-node.ts', 'language/server/solver-thread.ts', 'extension/main-node.ts']) {
    const packages = await carried(entry);
    expect([entry, packages.filter((each) => OF_THE_TERMINAL.includes(each))]).toEqual([entry, []]);
  }
});
