/**
 * How long a maker waits, on a shop of 500 recipes in chains of twelve. Prints a table; asserts nothing, because a
 * machine's mood is not a defect. Run by `npm run bench`.
 */
import { resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { lensesOf } from '../../language/editing/lenses.js';
import { Publisher } from '../../language/server/publisher.js';
import { Session } from '../../language/server/session.js';
import { ThreadWorker } from '../../language/server/thread-worker.js';
import { madeShop, uriOf } from './made-shop.js';
import { benchTop } from './top.bench.js';

interface Row {
  readonly what: string;
  readonly aim: string;
  readonly times: readonly number[];
}

const CHAINS = 42;
const DEPTH = 12;
const KEYSTROKES = 100;

const files = madeShop(CHAINS, DEPTH);
const folder = {
  list: () => Promise.resolve([...files.keys()]),
  read: (uri: string) => Promise.resolve(files.get(uri)),
};

const rows: Row[] = [
  await coldLoad(),
  ...(await keystrokes()),
  ...(await keystrokesWithLenses(false)),
  ...(await keystrokesWithLenses(true)),
];
console.log(`${CHAINS * DEPTH} recipes in chains of ${DEPTH}, ${files.size} files\n`);
console.log('what'.padEnd(44), 'median'.padStart(10), '95th'.padStart(10), 'aim'.padStart(10));
for (const { what, aim, times } of rows) {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) =>
    `${sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!.toFixed(1)} ms`;
  console.log(what.padEnd(44), at(0.5).padStart(10), at(0.95).padStart(10), aim.padStart(10));
}

for (const { name, median, p95 } of benchTop()) {
  console.log(
    `braced top: ${name}`.padEnd(44),
    `${median.toFixed(1)} ms`.padStart(10),
    `${p95.toFixed(1)} ms`.padStart(10),
  );
}

/** From nothing to every finding of the folder. */
async function coldLoad(): Promise<Row> {
  const times: number[] = [];
  for (let run = 0; run < 5; run++) {
    const start = performance.now();
    const session = new Session(folder);
    await session.load(['file:///made-shop']);
    for (const uri of session.uris()) session.findings(uri);
    times.push(performance.now() - start);
  }
  return { what: 'cold load to all findings', aim: '1500 ms', times };
}

/** One digit typed in a root recipe: its own file first, then every descendant and the whole folder. */
async function keystrokes(): Promise<readonly Row[]> {
  const session = new Session(folder);
  await session.load(['file:///made-shop']);
  const own: number[] = [];
  const all: number[] = [];
  const read: number[] = [];
  let sent = 0;
  const publisher = new Publisher(session, { send: () => sent++, versionOf: () => null, later: (work) => work() });
  publisher.refresh();
  for (let stroke = 0; stroke < KEYSTROKES; stroke++) {
    const uri = uriOf(`chain-${stroke % CHAINS}`);
    const text = files.get(uri)!.replace('thickness: 2.80 mm', `thickness: 2.${70 + (stroke % 20)} mm`);
    const start = performance.now();
    session.type(uri, text);
    read.push(performance.now() - start);
    session.findings(uri);
    own.push(performance.now() - start);
    publisher.refresh();
    all.push(performance.now() - start);
  }
  if (sent === 0) throw new Error('no findings were sent: the benchmark measures nothing');
  return [
    { what: 'keystroke: reading the file', aim: '', times: read },
    { what: 'keystroke to findings of the edited file', aim: '30 ms', times: own },
    { what: 'keystroke to findings of all descendants', aim: '100 ms', times: all },
  ];
}

/**
 * The same as an editor has it: after each stroke the lenses of the open file are asked for, which with a solver want the
 * resonances of its twelve recipes, and the next stroke comes while they are being worked out or have just arrived.
 */
async function keystrokesWithLenses(withSolver: boolean): Promise<readonly Row[]> {
  let delivered = 0;
  const worker = withSolver ? new ThreadWorker(resolve('dist/solver.cjs')) : undefined;
  const session = new Session(folder, worker && { worker, delivered: () => delivered++ });
  await session.load(['file:///made-shop']);
  const publisher = new Publisher(session, { send: () => undefined, versionOf: () => null, later: (work) => work() });
  publisher.refresh();
  const uri = uriOf('chain-0');
  const all: number[] = [];
  const lenses: number[] = [];
  for (let stroke = 0; stroke < KEYSTROKES; stroke++) {
    const text = files.get(uri)!.replace('thickness: 2.80 mm', `thickness: 2.${70 + (stroke % 20)} mm`);
    const start = performance.now();
    session.type(uri, text);
    publisher.refresh();
    all.push(performance.now() - start);
    const then = performance.now();
    lensesOf(session.desk, uri);
    lenses.push(performance.now() - then);
    await wait(150);
  }
  if (withSolver && delivered === 0) throw new Error('nothing was solved: the benchmark measures nothing');
  const solver = withSolver ? 'solver at work' : 'without a solver';
  return [
    { what: `keystroke to all findings, ${solver}`, aim: '', times: all },
    { what: `lenses of the edited file, ${solver}`, aim: '', times: lenses },
  ];
}
