/** An analyst that solves at once: for a terminal, where somebody waits for the answer anyway. */
import { TopSolver } from '../mechanics/top/index.js';
import type { Analyst, PlateAnalysis, PlateTask } from './analyst.js';
import { solveTask } from './solving.js';

/** Enough for the plates of a long comparison. */
const KEPT = 64;

export class ImmediateAnalyst implements Analyst {
  private readonly solver = new TopSolver();
  private readonly known = new Map<string, PlateAnalysis>();

  analysis(task: PlateTask): PlateAnalysis | undefined {
    const { key } = task;
    const known = this.known.get(key) ?? solveTask(this.solver, task);
    if (!known) return undefined;
    this.known.delete(key);
    this.known.set(key, known);
    if (this.known.size > KEPT) this.known.delete(this.known.keys().next().value!);
    return known;
  }
}
