import { defineConfig } from 'vitest/config';

/** Journeys in VS Code for the web, where there is no Node and no disk. */
export default defineConfig({
  test: {
    root: process.cwd(),
    include: ['tests/workbench/web/*.test.ts'],
    globalSetup: ['tests/workbench/web/open-web-workbench.ts'],
    fileParallelism: false,
    maxWorkers: 1,
    testTimeout: 90_000,
    hookTimeout: 180_000,
    // An editor in a browser on a busy machine: what fails once and then passes is said, and is no failure.
    retry: 1,
  },
});
