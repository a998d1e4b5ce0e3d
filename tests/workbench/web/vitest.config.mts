import { defineConfig } from 'vitest/config';

/** Journeys in VS Code for the web, where there is no Node and no disk. */
export default defineConfig({
  test: {
    root: process.cwd(),
    include: ['tests/workbench/web/*.test.ts'],
    globalSetup: ['tests/workbench/web/open-web-workbench.ts'],
    fileParallelism: false,
    maxWorkers: 1,
    testTimeout: 60_000,
    hookTimeout: 180_000,
  },
});
