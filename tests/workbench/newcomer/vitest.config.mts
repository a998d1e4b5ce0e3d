import { defineConfig } from 'vitest/config';

/** Journeys of somebody new: a folder nobody has trusted yet, and one in which there is nothing yet. */
export default defineConfig({
  test: {
    root: process.cwd(),
    include: ['tests/workbench/newcomer/*.test.ts'],
    globalSetup: ['tests/workbench/newcomer/open-newcomer.ts'],
    fileParallelism: false,
    maxWorkers: 1,
    testTimeout: 60_000,
    hookTimeout: 180_000,
  },
});
