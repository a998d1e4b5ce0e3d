import { defineConfig } from 'vitest/config';

/** Journeys in a real VS Code: one browser page for all of them, one after the other. */
export default defineConfig({
  test: {
    root: process.cwd(),
    include: ['tests/workbench/**/*.test.ts'],
    exclude: ['tests/workbench/web/**', 'tests/workbench/newcomer/**', 'tests/workbench/german/**'],
    globalSetup: ['tests/workbench/open-workbench.ts'],
    fileParallelism: false,
    maxWorkers: 1,
    testTimeout: 60_000,
    hookTimeout: 180_000,
  },
});
