/** The solver in a browser's worker: answers, a plate given up, and a worker that never comes up. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { NestedWorker } from '../../language/server/nested-worker.js';
import type { PlateAnalysis, PlateTask } from '../../language/recipes/evaluation/analyst.js';

class FakeWorker {
  static readonly all: FakeWorker[] = [];
  readonly asked: unknown[] = [];
  ended = false;
  onmessage: ((event: { data: unknown }) => void) | null = null;
  onerror: ((event: { preventDefault: () => void }) => void) | null = null;

  constructor() {
    FakeWorker.all.push(this);
  }

  postMessage(task: unknown): void {
    this.asked.push(task);
  }

  terminate(): void {
    this.ended = true;
  }
}

const TASK = { parameters: [] } as unknown as PlateTask;
const ANSWER = { ok: false, problems: [] } as PlateAnalysis;
const soon = () => new Promise((later) => setTimeout(later, 0));

describe('the solver in a worker of the browser', () => {
  beforeEach(() => {
    FakeWorker.all.length = 0;
    vi.stubGlobal('Worker', FakeWorker);
  });
  afterEach(() => vi.unstubAllGlobals());

  it('answers, and serves the next plate too', async () => {
    const worker = new NestedWorker(() => Promise.resolve('http://localhost/solver.js'));
    for (let plate = 1; plate <= 2; plate += 1) {
      const done = vi.fn();
      worker.solve(TASK, done);
      await soon();
      FakeWorker.all[0]!.onmessage!({ data: ANSWER });
      expect(done.mock.calls).toEqual([[ANSWER]]);
    }
    expect(FakeWorker.all).toHaveLength(1);
    expect(FakeWorker.all[0]!.asked).toHaveLength(2);
  });

  it('is ended to be stopped, and another takes the next plate', async () => {
    const worker = new NestedWorker(() => Promise.resolve('http://localhost/solver.js'));
    const done = vi.fn();
    worker.solve(TASK, done);
    await soon();
    worker.stop();
    expect(done.mock.calls).toEqual([[undefined]]);
    worker.solve(TASK, done);
    await soon();
    expect(FakeWorker.all.map(({ ended }) => ended)).toEqual([true, false]);
    expect(FakeWorker.all[1]!.asked).toEqual([TASK]);
    // The first one was ended while it loaded, and says so afterwards.
    const preventDefault = vi.fn();
    FakeWorker.all[0]!.onerror!({ preventDefault });
    expect(preventDefault).toHaveBeenCalled();
    expect(done).toHaveBeenCalledTimes(1);
    expect(FakeWorker.all[1]!.ended).toBe(false);
  });

  it('is told nothing when it is stopped before it was there', async () => {
    const worker = new NestedWorker(() => soon().then(() => 'http://localhost/solver.js'));
    worker.solve(TASK, () => undefined);
    worker.stop();
    await soon();
    await soon();
    expect(FakeWorker.all.flatMap(({ asked }) => asked)).toEqual([]);
    expect(FakeWorker.all.every(({ ended }) => ended)).toBe(true);
  });

  it('that falls silent is ended, and another takes the next plate', async () => {
    const worker = new NestedWorker(() => Promise.resolve('http://localhost/solver.js'), 20);
    const done = vi.fn();
    worker.solve(TASK, done);
    await vi.waitFor(() => expect(done).toHaveBeenCalledTimes(1));
    expect(done.mock.calls[0]![0]).toMatchObject({ ok: false });
    expect(FakeWorker.all[0]!.ended).toBe(true);
    worker.solve(TASK, done);
    await soon();
    FakeWorker.all[1]!.onmessage!({ data: ANSWER });
    expect(done.mock.calls[1]).toEqual([ANSWER]);
    // Long past its time, what was answered is not given up.
    await new Promise((later) => setTimeout(later, 40));
    expect(done).toHaveBeenCalledTimes(2);
    expect(FakeWorker.all[1]!.ended).toBe(false);
  });

  it('says so when it cannot be started or breaks', async () => {
    const lost = new NestedWorker(() => Promise.reject(new Error('no address')));
    const done = vi.fn();
    lost.solve(TASK, done);
    await soon();
    expect(done.mock.calls[0]![0]).toMatchObject({ ok: false });

    const broken = new NestedWorker(() => Promise.resolve('http://localhost/solver.js'));
    broken.solve(TASK, done);
    await soon();
    const preventDefault = vi.fn();
    FakeWorker.all[0]!.onerror!({ preventDefault });
    expect(preventDefault).toHaveBeenCalled();
    expect(done.mock.calls[1]![0]).toMatchObject({ ok: false });
  });
});
