import { defineConfig } from 'vitest/config';

/** A journey in a VS Code that speaks German. */
export default defineConfig({
  test: {
    root: process.cwd(),
    include: ['tests/workbench/german/*.test.ts'],
    globalSetup: ['tests/workbench/german/open-german.ts'],
    fileParallelism: false,
    maxWorkers: 1,
    testTimeout: 60_000,
    hookTimeout: 180_000,
  },
});
