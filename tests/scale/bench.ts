/**
 * How long a maker waits, on a shop of 500 recipes in chains of twelve. Prints a table; asserts nothing, because a
 * machine's mood is not a defect. Run by `npm run bench:inside`; on a busy machine with
 * BENCH_CLOCK=cpu before it.
 */
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { lensesOf } from '../../language/editing/hints/lenses.js';
import { Publisher } from '../../language/server/publisher.js';
import { Session } from '../../language/server/session.js';
import { ThreadWorker } from '../../language/server/thread-worker.js';
import { activation, bundleSizes } from './activation.js';
import { latencies } from './latencies.js';
import { madeShop, uriOf } from './made-shop.js';
import { now, quietest, type Row } from './row.js';
import { benchTop } from './top.bench.js';

const CHAINS = 42;
const DEPTH = 12;
const KEYSTROKES = 100;
const SOLVER = 'dist/solver.cjs';

const files = madeShop(CHAINS, DEPTH);
const folder = {
  list: () => Promise.resolve([...files.keys()]),
  read: (uri: string) => Promise.resolve(files.get(uri)),
};

console.log(`${CHAINS * DEPTH} recipes in chains of ${DEPTH}, ${files.size} files\n`);
line('what', 'median', '95th', 'aim');
print(await coldLoad());
(await keystrokes()).forEach(print);
(await keystrokesWithLenses(false)).forEach(print);
if (existsSync(SOLVER)) (await keystrokesWithLenses(true)).forEach(print);
else console.log('solver: not built, so nothing with the solver at work; npm run package builds it');
(await latencies(folder, files, CHAINS)).forEach(print);
const activated = activation();
if (activated) print(activated);
else console.log('extension: not built, so neither its activation nor its size; npm run package builds it');
for (const { name, median, p95 } of benchTop()) line(`braced top: ${name}`, inMs(median), inMs(p95));
for (const [name, bytes] of bundleSizes()) line(`dist/${name}`, `${(bytes / 1000).toFixed(0)} kB`);

function print(row: Row): void {
  const { median, p95 } = quietest(row);
  line(row.what, inMs(median), inMs(p95), row.aim);
}

function line(what: string, ...figures: readonly string[]): void {
  console.log(what.padEnd(50), ...figures.map((figure) => figure.padStart(10)));
}

function inMs(time: number): string {
  return `${time.toFixed(1)} ms`;
}

/** From nothing to every finding of the folder. */
async function coldLoad(): Promise<Row> {
  const times: number[] = [];
  for (let run = 0; run < 7; run++) {
    const start = now();
    const session = new Session(folder);
    await session.load(['file:///made-shop']);
    for (const uri of session.uris()) session.findings(uri);
    times.push(now() - start);
  }
  return { what: 'cold load to all findings', aim: '1500 ms', runs: [times] };
}

/** One digit typed in a root recipe: its own file first, then every descendant and the whole folder. */
async function keystrokes(): Promise<readonly Row[]> {
  const runs: { read: number[]; own: number[]; all: number[] }[] = [];
  for (let run = 0; run < 3; run++) {
    const session = new Session(folder);
    await session.load(['file:///made-shop']);
    const [read, own, all]: [number[], number[], number[]] = [[], [], []];
    let sent = 0;
    const publisher = new Publisher(session, { send: () => sent++, versionOf: () => null, later: (work) => work() });
    publisher.refresh();
    for (let stroke = 0; stroke < KEYSTROKES; stroke++) {
      const uri = uriOf(`chain-${stroke % CHAINS}`);
      const text = files.get(uri)!.replace('thickness: 2.80 mm', `thickness: 2.${70 + (stroke % 20)} mm`);
      const start = now();
      session.type(uri, text);
      read.push(now() - start);
      session.findings(uri);
      own.push(now() - start);
      publisher.refresh();
      all.push(now() - start);
    }
    if (sent === 0) throw new Error('no findings were sent: the benchmark measures nothing');
    runs.push({ read, own, all });
  }
  return [
    { what: 'keystroke: reading the file', aim: '', runs: runs.map(({ read }) => read) },
    { what: 'keystroke to findings of the edited file', aim: '30 ms', runs: runs.map(({ own }) => own) },
    { what: 'keystroke to findings of all descendants', aim: '100 ms', runs: runs.map(({ all }) => all) },
  ];
}

/**
 * The same as an editor has it: after each stroke the lenses of the open file are asked for, which with a solver want the
 * resonances of its twelve recipes, and the next stroke comes while they are being worked out or have just arrived.
 */
async function keystrokesWithLenses(withSolver: boolean): Promise<readonly Row[]> {
  let delivered = 0;
  const worker = withSolver ? new ThreadWorker(resolve(SOLVER)) : undefined;
  const session = new Session(folder, worker && { worker, delivered: () => delivered++ });
  await session.load(['file:///made-shop']);
  const publisher = new Publisher(session, { send: () => undefined, versionOf: () => null, later: (work) => work() });
  publisher.refresh();
  const uri = uriOf('chain-0');
  const all: number[] = [];
  const lenses: number[] = [];
  for (let stroke = 0; stroke < KEYSTROKES; stroke++) {
    const text = files.get(uri)!.replace('thickness: 2.80 mm', `thickness: 2.${70 + (stroke % 20)} mm`);
    const start = now();
    session.type(uri, text);
    publisher.refresh();
    all.push(now() - start);
    const then = now();
    lensesOf(session.desk, uri);
    lenses.push(now() - then);
    await wait(150);
  }
  if (withSolver && delivered === 0) throw new Error('nothing was solved: the benchmark measures nothing');
  const solver = withSolver ? 'solver at work' : 'without a solver';
  return [
    { what: `keystroke to all findings, ${solver}`, aim: '', runs: [all] },
    { what: `lenses of the edited file, ${solver}`, aim: '', runs: [lenses] },
  ];
}
