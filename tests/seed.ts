// Random tests draw other cases on each run, on every machine and in CI: what holds for one seed only does not hold. The seed is
// drawn once for the run and printed before its first test (vitest.config.mts); the same cases again:
// BOOKMATCH_SEED=7 npx vitest run FILE
import fc from 'fast-check';

/** For tests with dice of their own. */
export const SEED = Number(process.env['BOOKMATCH_SEED'] ?? NaN);
if (!Number.isInteger(SEED)) throw new Error('BOOKMATCH_SEED must be a whole number.');

fc.configureGlobal({ seed: SEED });
