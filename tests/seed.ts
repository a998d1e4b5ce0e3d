// Random tests draw other cases on each run, on every machine and in CI: what holds for one seed only does not hold. The seed is
// drawn once for the run and printed before its first test (vitest.config.mts); the same cases again:
// BOOKMATCH_SEED=7 npx vitest run FILE
import fc from 'fast-check';
import { THOROUGH } from './thorough.js';

/** For tests with dice of their own. */
export const SEED = Number(process.env['BOOKMATCH_SEED'] ?? NaN);
if (!Number.isInteger(SEED)) throw new Error('BOOKMATCH_SEED must be a whole number.');

/** Ten of them, or in a sample the first: what a single draw passes may be luck. */
export const SEEDS = Array.from({ length: THOROUGH ? 10 : 1 }, (_, i) => SEED + i);

fc.configureGlobal({ seed: SEED });
