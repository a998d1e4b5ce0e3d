/**
 * An analyst that never keeps anybody waiting: what it does not know yet is worked out elsewhere, the newest wish
 * first, and when an answer arrives every question that had to do without it is asked again.
 *
 * Invariants
 * - One plate is with the worker at a time; the rest wait here, where an edit can drop them.
 * - An answer belongs to its plate, not to a recipe: the same plate is never solved twice while its answer is kept.
 */
import type { Analyst, PlateAnalysis, PlateTask } from './analyst.js';
import { keyOf } from './immediate-analyst.js';
import type { Input, Memo } from './memo.js';

/** Does the work: a worker thread, a web worker, or a later turn of the same thread. */
export interface PlateWorker {
  solve(task: PlateTask, done: (analysis: PlateAnalysis | undefined) => void): void;
  /** Gives up what it is at, if it can; `done` is still called. */
  stop(): void;
}

const KEPT = 128;

export class DeferredAnalyst implements Analyst {
  private readonly answers: Input<string, PlateAnalysis>;
  /** Keys of the answers kept, the most recently wanted last. */
  private readonly kept = new Set<string>();
  private readonly waiting = new Map<string, PlateTask>();
  private busyWith: string | undefined;

  constructor(
    memo: Memo,
    private readonly worker: PlateWorker,
    /** Called after an answer has been put where the questions can read it. */
    private readonly delivered: () => void,
  ) {
    this.answers = memo.input();
  }

  analysis(task: PlateTask): PlateAnalysis | undefined {
    const key = keyOf(task);
    const answer = this.answers.get(key);
    if (answer) {
      this.kept.delete(key);
      this.kept.add(key);
      return answer;
    }
    if (key !== this.busyWith) {
      this.waiting.delete(key);
      this.waiting.set(key, task);
    }
    this.next();
    return undefined;
  }

  /** An edit came in between: what waits may no longer be wanted, and what is will be asked for again. */
  forget(): void {
    this.waiting.clear();
    if (this.busyWith !== undefined) this.worker.stop();
  }

  /** Whether everything asked for has been delivered. */
  get isIdle(): boolean {
    return this.busyWith === undefined && this.waiting.size === 0;
  }

  private next(): void {
    const newest = [...this.waiting.keys()].at(-1);
    if (this.busyWith !== undefined || newest === undefined) return;
    const task = this.waiting.get(newest)!;
    this.waiting.delete(newest);
    this.busyWith = newest;
    this.worker.solve(task, (analysis) => {
      this.busyWith = undefined;
      if (analysis) this.keep(newest, analysis);
      this.next();
      if (analysis) this.delivered();
    });
  }

  private keep(key: string, analysis: PlateAnalysis): void {
    this.answers.set(key, analysis);
    this.kept.add(key);
    if (this.kept.size <= KEPT) return;
    const oldest = this.kept.values().next().value!;
    this.kept.delete(oldest);
    this.answers.set(oldest, undefined);
  }
}
