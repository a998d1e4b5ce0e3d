/** A solver thread as the analyst sees it. It is started with the first plate and ends with the server. */
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { SolverAnswer, SolverTask } from '../recipes/evaluation/analyst.js';
import type { PlateWorker } from '../recipes/evaluation/deferred-analyst.js';

export interface SolverMessage {
  readonly task: SolverTask;
  /** One number, not zero when the thread is to give up. */
  readonly stop: SharedArrayBuffer;
}

export interface SolverReply {
  /** Undefined: given up. */
  readonly analysis: SolverAnswer | undefined;
}

/** How long a plate may take, ms; the heaviest that is built takes some two seconds. */
const PATIENCE = 60_000;

/** A thread that ends, fails or falls silent is started anew once for its task; then the task has no answer, and that is one. */
export class ThreadWorker implements PlateWorker {
  private thread: Worker | undefined;
  private readonly stopFlag = new Int32Array(new SharedArrayBuffer(4));
  private asked: { readonly task: SolverTask; readonly done: (analysis: SolverAnswer | undefined) => void } | undefined;
  private isSecondTry = false;
  private watch: NodeJS.Timeout | undefined;

  constructor(
    private readonly script: string = join(__dirname, 'solver.cjs'),
    private readonly patience: number = PATIENCE,
  ) {}

  solve(task: SolverTask, done: (analysis: SolverAnswer | undefined) => void): void {
    this.asked = { task, done };
    this.isSecondTry = false;
    this.send(task);
  }

  stop(): void {
    Atomics.store(this.stopFlag, 0, 1);
  }

  private send(task: SolverTask): void {
    Atomics.store(this.stopFlag, 0, 0);
    const stop = this.stopFlag.buffer;
    this.watch = setTimeout(() => this.lose(this.thread), this.patience);
    this.watch.unref();
    this.start().postMessage({ task, stop } satisfies SolverMessage);
  }

  private start(): Worker {
    if (this.thread) return this.thread;
    const thread = new Worker(this.script);
    thread.on('message', ({ analysis }: SolverReply) => thread === this.thread && this.finish(analysis));
    thread.on('error', () => this.lose(thread));
    thread.on('exit', () => this.lose(thread));
    // Last, because listening to a thread keeps the process alive for it.
    thread.unref();
    this.thread = thread;
    return thread;
  }

  /** A thread is of no more use. What it was at is tried once more, unless nobody wants it any longer. */
  private lose(thread: Worker | undefined): void {
    if (thread !== this.thread) return;
    this.thread = undefined;
    void thread?.terminate();
    clearTimeout(this.watch);
    if (!this.asked) return;
    if (Atomics.load(this.stopFlag, 0) !== 0) this.finish(undefined);
    else if (this.isSecondTry) {
      const problem = { severity: 'error', path: '', message: 'The solver gave up on this plate.' } as const;
      this.finish({ ok: false, problems: [problem] });
    } else {
      this.isSecondTry = true;
      this.send(this.asked.task);
    }
  }

  private finish(analysis: SolverAnswer | undefined): void {
    clearTimeout(this.watch);
    const { asked } = this;
    this.asked = undefined;
    asked?.done(analysis);
  }
}
