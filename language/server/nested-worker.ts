/**
 * A solver in a browser, a worker of the server's own. Browsers share no memory between workers unless the page is set up
 * for it, so that one is told to stop by ending it; the next plate gets a new one.
 */
import type { SolverAnswer, SolverTask } from '../recipes/evaluation/analyst.js';
import type { PlateWorker } from '../recipes/evaluation/deferred-analyst.js';

/** How long a plate may take, ms; the heaviest that is built takes some two seconds. */
const PATIENCE = 60_000;

export class NestedWorker implements PlateWorker {
  private worker: Promise<Worker> | undefined;
  private watch: ReturnType<typeof setTimeout> | undefined;
  private done: ((analysis: SolverAnswer | undefined) => void) | undefined;

  constructor(
    /** Where the script lies. Asked once for each worker started. */
    private readonly address: () => Promise<string>,
    private readonly patience: number = PATIENCE,
  ) {}

  solve(task: SolverTask, done: (analysis: SolverAnswer | undefined) => void): void {
    this.done = done;
    this.watch = setTimeout(() => this.giveUp(), this.patience);
    this.worker ??= this.start();
    const { worker } = this;
    worker.then(
      // Stopped before it was there: the task has been let go of.
      (started) => worker === this.worker && started.postMessage(task),
      () => worker === this.worker && this.giveUp(),
    );
  }

  stop(): void {
    this.end();
    this.finish(undefined);
  }

  private async start(): Promise<Worker> {
    const script = `importScripts(${JSON.stringify(await this.address())})`;
    // An extension may come from another address than the page, and a worker may not: so it fetches the script itself.
    const own = URL.createObjectURL(new Blob([script], { type: 'text/javascript' }));
    const worker = new Worker(own, { name: 'Bookmatch solver' });
    worker.onmessage = ({ data }: MessageEvent<SolverAnswer>) => this.finish(data);
    worker.onerror = (event) => {
      // Left alone, it would count as an error of the server itself, and the editor would end that.
      event.preventDefault();
      this.giveUp();
    };
    return worker;
  }

  private giveUp(): void {
    this.end();
    const problem = { severity: 'error', path: '', message: 'The solver gave up on this plate.' } as const;
    this.finish({ ok: false, problems: [problem] });
  }

  private end(): void {
    this.worker?.then(
      (started) => {
        started.onmessage = null; // an answer may be on its way already
        // Ended while it still loads, it says that it could not: nobody is to hear of that.
        started.onerror = (event) => event.preventDefault();
        started.terminate();
      },
      () => undefined, // it never started
    );
    this.worker = undefined;
  }

  private finish(analysis: SolverAnswer | undefined): void {
    clearTimeout(this.watch);
    const { done } = this;
    this.done = undefined;
    done?.(analysis);
  }
}
