/**
 * An analyst that never keeps anybody waiting: what it does not know yet is worked out elsewhere, the newest wish
 * first, and when an answer arrives every question that had to do without it is asked again.
 *
 * Invariants
 * - One plate is with the worker at a time; the rest wait here, where an edit can drop them.
 * - An answer belongs to its plate, not to a recipe: the same plate is never solved twice while its answer is kept.
 */
import type { Analyst, PlateAnalysis, PlateTask, SolverAnswer, SolverTask, WoodFit, WoodTask } from './analyst.js';
import type { Input, Memo } from '../shelf/memo.js';

/** Does the work: a worker thread, a web worker, or a later turn of the same thread. */
export interface PlateWorker {
  solve(task: SolverTask, done: (answer: SolverAnswer | undefined) => void): void;
  /** Gives up what it is at, if it can; `done` is still called. */
  stop(): void;
}

/** Some 20 kB each. */
const KEPT = 512;

export class DeferredAnalyst implements Analyst {
  /** By key, the most recently wanted last. */
  private readonly answers = new Map<string, SolverAnswer>();
  /** How many answers have come: what a question that had to do without one leans on. */
  private readonly arrivals: Input<'', number>;
  private arrived = 0;
  private currentRound = {};
  private readonly waiting = new Map<string, SolverTask>();
  private busyWith: string | undefined;
  /** The worker has been told to give up what it is at. */
  private isStopping = false;

  constructor(
    memo: Memo,
    private readonly worker: PlateWorker,
    /** Called after an answer has been put where the questions can read it. */
    private readonly delivered: () => void,
  ) {
    this.arrivals = memo.input();
  }

  // A key stands for one task, so that its answer is of the task's own kind.
  analysis(task: PlateTask): PlateAnalysis | undefined {
    return this.answer(task) as PlateAnalysis | undefined;
  }

  fit(task: WoodTask): WoodFit | undefined {
    return this.answer(task);
  }

  round(): unknown {
    this.arrivals.get('');
    return this.currentRound;
  }

  private answer(task: SolverTask): SolverAnswer | undefined {
    const { key } = task;
    const answer = this.answers.get(key);
    if (answer) {
      this.keep(key, answer);
      return answer;
    }
    this.arrivals.get('');
    if (key !== this.busyWith || this.isStopping) {
      this.waiting.delete(key);
      this.waiting.set(key, task);
    }
    this.next();
    return undefined;
  }

  /** An edit came in between: what waits may no longer be wanted, and what is will be asked for again. */
  forget(): void {
    this.waiting.clear();
    this.currentRound = {};
    if (this.busyWith === undefined) return;
    this.isStopping = true;
    this.worker.stop();
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
      this.isStopping = false;
      if (analysis) {
        this.waiting.delete(newest);
        this.keep(newest, analysis);
        this.currentRound = {};
        this.arrivals.set('', ++this.arrived);
      }
      this.next();
      if (analysis) this.delivered();
    });
  }

  /** An answer let go of was right and stays right: whoever has read it need not ask again. */
  private keep(key: string, analysis: SolverAnswer): void {
    this.answers.delete(key);
    this.answers.set(key, analysis);
    if (this.answers.size > KEPT) this.answers.delete(this.answers.keys().next().value!);
  }
}
