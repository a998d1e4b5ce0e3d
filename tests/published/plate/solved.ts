/** A solver for tests: solves or fails the test with the problems found. */
import {
  TopSolver,
  type SolveOptions,
  type TopModel,
  type TopSolution,
} from '../../../language/mechanics/plate/index.js';

const solver = new TopSolver();

export function solved(model: TopModel, options?: SolveOptions): TopSolution {
  const result = solver.solve(model, options);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.solution;
}

export function frequencies(model: TopModel, options?: SolveOptions): readonly number[] {
  return solved(model, options).modes.map(({ frequency }) => frequency);
}

/** Greatest relative error of the first values against the expected ones. */
export function worstError(values: readonly number[], expected: readonly number[]): number {
  return Math.max(...expected.map((value, i) => Math.abs(values[i]! / value - 1)));
}
