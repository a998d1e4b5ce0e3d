import { defineConfig } from 'vitest/config';

/** A journey in a VS Code that speaks German. */
export default defineConfig({
  test: {
    root: process.cwd(),
    include: ['tests/workbench/german/*.test.ts'],
    globalSetup: ['tests/workbench/german/open-german.ts'],
    fileParallelism: false,
    maxWorkers: 1,
    testTimeout: 90_000,
    hookTimeout: 180_000,
    // An editor in a browser on a busy machine: what fails once and then passes is said, and is no failure.
    retry: 1,
  },
});
