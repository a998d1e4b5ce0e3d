import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/workbench/**', 'node_modules/**'],
    setupFiles: ['tests/one-seed.ts'],
    testTimeout: 20_000,
    // Every core: without this one is left idle, which on a machine of two is half of it.
    maxWorkers: '100%',
    // Nothing here keeps state in a module, so files can share a process: loading the language once instead of a hundred
    // and fifty times is a third of the time.
    isolate: false,
  },
});
