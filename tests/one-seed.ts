// Random tests draw the same cases every time, so that a failure is of the change at hand and can be repeated.
// Other cases: BOOKMATCH_SEED=7 npx vitest run FILE
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env['BOOKMATCH_SEED'] ?? 3) });
