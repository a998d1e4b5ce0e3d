import { defineConfig } from 'vitest/config';
import { freshGrammar } from './fresh-grammar.mjs';

freshGrammar();

// Other cases for random tests on each run (tests/seed.ts). Kept for the workers and for whoever loads this file again.
const seed = (process.env['BOOKMATCH_SEED'] ??= String(1 + Math.floor(Math.random() * 1e9)));
console.log(`random tests draw with BOOKMATCH_SEED=${seed}`);

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/workbench/**', 'node_modules/**'],
    setupFiles: ['tests/seed.ts'],
    env: { BOOKMATCH_SEED: seed },
    testTimeout: 20_000,
    // Every core: without this one is left idle, which on a machine of two is half of it.
    maxWorkers: '100%',
    // Nothing here keeps state in a module, so files can share a process: loading the language once instead of a hundred
    // and fifty times is a third of the time.
    isolate: false,
  },
});
