import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/workbench/**', 'node_modules/**'],
    setupFiles: ['tests/one-seed.ts'],
    testTimeout: 20_000,
  },
});
