/**
 * Answers move smoothly with the sizes, across changes of what touches what. What is compared is the solver with itself a step on;
 * that the slope is the right one is tested against solid elements in `hole-sweeps.test.ts` beside it.
 */
import { expect, test } from 'vitest';
import { roughness, WANTED } from './sweeps.js';

/** A few short stretches of the table in `continuity.md`, chosen where parts come to touch. */
const STRETCHES = [
  ['X', 'hole diameter', 3, 0.5],
  ['X through the hole', 'hole diameter', 2, 0.05 * 10],
  ['X', 'first brace, first end', 2, 0.5],
  ['ladder', 'last brace, sideways', 2, 0.5],
] as const;

test.each(STRETCHES)('%s: %s, ± %d mm by %d mm', { timeout: 60_000 }, (top, move, range, step) => {
  roughness(top, move, range, step).forEach((value, i) => {
    expect.soft(value, ['first mode', 'rotation', 'dip', 'belly'][i]).toBeLessThan(WANTED[i]!);
  });
});
