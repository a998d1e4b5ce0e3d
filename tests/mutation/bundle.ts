/** The tests of a target and all they reach in one file, with every mutant of its sources in it, to be switched on one at a time. */
import { build, type Plugin } from 'esbuild';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Instrumenter } from '@stryker-mutator/instrumenter';
import type { Target } from './targets.js';

export interface Mutant {
  readonly id: string;
  readonly fileName: string;
  readonly replacement: string;
  /** Counted from 0. */
  readonly location: { readonly start: Position; readonly end: Position };
}

export interface Position {
  readonly line: number;
  readonly column: number;
}

const SILENT = { isDebugEnabled: () => false, debug: () => undefined, info: () => undefined, warn: console.warn };

/** Writes the bundle to `out`; answers the mutants that are in it. */
export async function bundle(target: Target, tests: readonly string[], out: string): Promise<readonly Mutant[]> {
  const instrumenter = new Instrumenter(SILENT as never);
  const files = target.files.map((name) => ({ name, mutate: true, content: readFileSync(name, 'utf8') }));
  const made = await instrumenter.instrument(files, { plugins: null, excludedMutations: [], ignorers: [] });
  const contents = new Map(made.files.map(({ name, content }) => [resolve(name), content]));
  const shim = resolve('tests/mutation/in-process.ts');
  const entry = [
    `import './tests/seed.ts';`,
    `import fc from 'fast-check';`,
    // The smallest case that fails is for people to look at.
    `fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true });`,
    ...tests.map((test) => `import './${test}';`),
    `export { takeListed } from './tests/mutation/in-process.ts';`,
  ].join('\n');
  const plugin: Plugin = {
    name: 'mutants',
    setup(context) {
      context.onResolve({ filter: /^vitest$/ }, ({ importer }) =>
        importer === shim ? { path: 'vitest', external: true } : { path: shim },
      );
      context.onLoad({ filter: /\.ts$/ }, ({ path }) => {
        const mutated = contents.get(path);
        return mutated === undefined ? undefined : { contents: mutated, loader: 'ts' };
      });
    },
  };
  await build({
    stdin: { contents: entry, resolveDir: process.cwd(), loader: 'ts' },
    outfile: out,
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    loader: { '.bookmatch': 'text' },
    plugins: [plugin, RAW],
    logLevel: 'error',
  });
  return made.mutants.map(({ id, fileName, replacement, location }) => ({ id, fileName, replacement, location }));
}

/** `import text from './page.css?raw'`, as the bundles have it. */
const RAW: Plugin = {
  name: 'texts',
  setup(context) {
    context.onResolve({ filter: /\?raw$/ }, ({ path, resolveDir }) => ({
      path: resolve(resolveDir, path.replace(/\?raw$/, '')),
      namespace: 'text',
    }));
    context.onLoad({ filter: /./, namespace: 'text' }, ({ path }) => ({
      contents: readFileSync(path, 'utf8'),
      loader: 'text',
    }));
  },
};
