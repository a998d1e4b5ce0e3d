/** The solver on a thread of its own, so that typing never waits for it. Runs in `dist/solver.cjs`. */
import { parentPort } from 'node:worker_threads';
import { TopSolver } from '../mechanics/plate/index.js';
import { solveTask } from '../recipes/evaluation/solving.js';
import type { SolverMessage, SolverReply } from './thread-worker.js';

const solver = new TopSolver();

parentPort?.on('message', ({ task, stop }: SolverMessage) => {
  const flag = new Int32Array(stop);
  const analysis = solveTask(solver, task, () => Atomics.load(flag, 0) !== 0);
  parentPort!.postMessage({ analysis } satisfies SolverReply);
});
