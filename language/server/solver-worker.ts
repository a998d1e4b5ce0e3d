/** The solver in a browser's worker, so that typing never waits for it. Runs in `dist/web/solver.js`. */
import { TopSolver } from '../mechanics/plate/index.js';
import type { SolverTask } from '../recipes/evaluation/analyst.js';
import { solveTask } from '../recipes/evaluation/solving.js';

const solver = new TopSolver();

self.onmessage = ({ data }: MessageEvent<SolverTask>) => {
  self.postMessage(solveTask(solver, data));
};
