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

export class ThreadWorker implements PlateWorker {
  private thread: Worker | undefined;
  private readonly stopFlag = new Int32Array(new SharedArrayBuffer(4));
  private done: ((analysis: SolverAnswer | undefined) => void) | undefined;

  constructor(private readonly script: string = join(__dirname, 'solver.cjs')) {}

  solve(task: SolverTask, done: (analysis: SolverAnswer | undefined) => void): void {
    this.done = done;
    Atomics.store(this.stopFlag, 0, 0);
    const stop = this.stopFlag.buffer;
    this.start().postMessage({ task, stop } satisfies SolverMessage);
  }

  stop(): void {
    Atomics.store(this.stopFlag, 0, 1);
  }

  private start(): Worker {
    if (this.thread) return this.thread;
    const thread = new Worker(this.script);
    thread.on('message', ({ analysis }: SolverReply) => this.finish(analysis));
    // A thread that dies takes its plate with it, no more: the next plate gets a new one.
    thread.on('error', () => {
      this.thread = undefined;
      this.finish({
        ok: false,
        problems: [{ severity: 'error', path: '', message: 'The solver gave up on this plate.' }],
      });
    });
    // Last, because listening to a thread keeps the process alive for it.
    thread.unref();
    this.thread = thread;
    return thread;
  }

  private finish(analysis: SolverAnswer | undefined): void {
    const done = this.done;
    this.done = undefined;
    done?.(analysis);
  }
}
