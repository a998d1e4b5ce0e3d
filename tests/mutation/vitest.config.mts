import { defineConfig } from 'vitest/config';

// For the mutation runs only (mutate.ts): the tests it names, always with the same made-up cases, so that a mutant dies or lives
// the same each time.
export default defineConfig({
  test: {
    include: (process.env['BOOKMATCH_MUTATION_TESTS'] ?? '').split(','),
    setupFiles: ['tests/seed.ts'],
    env: { BOOKMATCH_SEED: '7', BOOKMATCH_THOROUGH: '0' },
    testTimeout: 20_000,
    isolate: false,
  },
});
