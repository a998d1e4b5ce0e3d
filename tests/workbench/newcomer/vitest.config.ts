import { defineConfig } from 'vitest/config';

/** Journeys of somebody new: a folder nobody has trusted yet, and one in which there is nothing yet. */
export default defineConfig({
  test: {
    root: process.cwd(),
    include: ['tests/workbench/newcomer/*.test.ts'],
    globalSetup: ['tests/workbench/newcomer/open-newcomer.ts'],
    fileParallelism: false,
    maxWorkers: 1,
    testTimeout: 90_000,
    hookTimeout: 180_000,
    // An editor in a browser on a busy machine: what fails once and then passes is said, and is no failure.
    retry: 1,
  },
});
