/** An analyst that solves at once: for a terminal, where somebody waits for the answer anyway. */
import { TopSolver } from '../../mechanics/plate/index.js';
import type { Analyst, PlateAnalysis, PlateTask, SolverAnswer, SolverTask, WoodFit, WoodTask } from './analyst.js';
import { solveTask } from './solving.js';

/** Enough for the plates of a long comparison. */
const KEPT = 64;

export class ImmediateAnalyst implements Analyst {
  private readonly solver = new TopSolver();
  private readonly known = new Map<string, SolverAnswer>();

  // A key stands for one task, so that its answer is of the task's own kind.
  analysis(task: PlateTask): PlateAnalysis | undefined {
    return this.answer(task) as PlateAnalysis | undefined;
  }

  fit(task: WoodTask): WoodFit | undefined {
    return this.answer(task);
  }

  private answer(task: SolverTask): SolverAnswer | undefined {
    const { key } = task;
    const known = this.known.get(key) ?? solveTask(this.solver, task);
    if (!known) return undefined;
    this.known.delete(key);
    this.known.set(key, known);
    if (this.known.size > KEPT) this.known.delete(this.known.keys().next().value!);
    return known;
  }
}
