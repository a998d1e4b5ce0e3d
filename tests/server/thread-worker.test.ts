/** A solver thread that dies or falls silent: tried once more, then told; and the next plate is solved as ever. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { SolverAnswer, SolverTask } from '../../language/recipes/evaluation/analyst.js';
import { ThreadWorker } from '../../language/server/thread-worker.js';

const folder = mkdtempSync(join(tmpdir(), 'bookmatch-thread-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

/** A thread that does `what` with the words of a task: it has `port`, `task` and, across threads, a count of starts. */
function thread(name: string, what: string): string {
  const file = join(folder, `${name}.cjs`);
  const starts = JSON.stringify(join(folder, `${name}.starts`));
  writeFileSync(
    file,
    `const { parentPort: port } = require('node:worker_threads');
const fs = require('node:fs');
fs.appendFileSync(${starts}, 'x');
const starts = fs.readFileSync(${starts}, 'utf8').length;
const answer = () => port.postMessage({ analysis: { ok: false, problems: [], starts } });
port.on('message', ({ task }) => { ${what} });`,
  );
  return file;
}

function solved(worker: ThreadWorker, key: string): Promise<SolverAnswer | undefined> {
  return new Promise((resolve) => worker.solve({ key } as SolverTask, resolve));
}

const GIVEN_UP = { ok: false, problems: [{ severity: 'error', message: 'The solver gave up on this plate.' }] };

describe.each([
  ['ends', `if (task.key === 'bad') process.exit(0); answer();`],
  ['throws', `if (task.key === 'bad') throw new Error('thrown on purpose'); answer();`],
  ['never answers', `if (task.key !== 'bad') answer();`],
  ['is caught in a loop', `while (task.key === 'bad'); answer();`],
])('a thread that %s', (name, what) => {
  it('is given up after a second try, and the next plate is solved', async () => {
    const worker = new ThreadWorker(thread(name.replaceAll(' ', '-'), what), 1500);
    expect(await solved(worker, 'bad')).toMatchObject(GIVEN_UP);
    expect(await solved(worker, 'good')).toMatchObject({ problems: [] });
  });
});

it('one that fails once is asked once more', async () => {
  const worker = new ThreadWorker(thread('once', `if (starts === 1) process.exit(1); answer();`), 5000);
  expect(await solved(worker, 'any')).toMatchObject({ starts: 2 });
});

it('one that dies when told to stop is not asked again', async () => {
  const worker = new ThreadWorker(thread('stopped', `setTimeout(() => process.exit(1), 300);`), 5000);
  const answer = solved(worker, 'any');
  worker.stop();
  expect(await answer).toBeUndefined();
});
