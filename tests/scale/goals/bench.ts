/**
 * What the built programs take, against the goals set for them: `npm run bench`. Every server is a process of its own, and
 * what is told is its processor time, all threads, so that a busy machine lies less. With --peers other tools do what they can
 * of the same, turn about in the same run; they are fetched the first time. Words name the scenes to play; none: all of them.
 */
import { cpus } from 'node:os';
import { fetchPeers, versions } from './peers.js';
import { chainOf200, eightThousand, fiveHundred, oneFile, type Row, terminal } from './scenes.js';
import { solver } from './solver.js';

const words = process.argv.slice(2);
const withPeers = words.includes('--peers');
const strokes = Number(/--strokes=(\d+)/.exec(words.join(' '))?.[1] ?? 1000);

type Scene = () => readonly Row[] | Promise<readonly Row[]>;

const SCENES: ReadonlyMap<string, Scene> = new Map<string, Scene>([
  ['500', () => fiveHundred(withPeers, strokes)],
  ['chain', chainOf200],
  ['8000', eightThousand],
  ['one-file', oneFile],
  ['check', () => terminal(withPeers)],
  ['solver', solver],
]);

const chosen = words.filter((word) => !word.startsWith('--'));
const unknown = chosen.filter((word) => !SCENES.has(word));
if (unknown.length > 0)
  throw new Error(`No scene is called ${unknown.join(', ')}; there are ${[...SCENES.keys()].join(', ')}.`);
if (withPeers) fetchPeers();

const { model } = cpus()[0]!;
console.log(
  `${new Date().toISOString().slice(0, 10)}, ${model}, ${cpus().length} processors, Node ${process.versions.node}`,
);
if (withPeers) console.log(versions());
console.log('\n| processor time | goal | Bookmatch, median | 95th | peer, median | ratio |');
console.log('|---|---|---|---|---|---|');
for (const [name, play] of SCENES) {
  if (chosen.length > 0 && !chosen.includes(name)) continue;
  for (const row of await play()) console.log(lineOf(row));
}

function lineOf({ figure, goal, unit, ours, peer, note }: Row): string {
  const middle = shareOf(ours, 0.5);
  const theirs = peer && shareOf(peer, 0.5);
  const beside = theirs === undefined ? ['', ''] : [`${written(theirs)} ${unit}`, `${(middle / theirs).toFixed(1)} ×`];
  const last = ours.length < 10 ? '' : `${written(shareOf(ours, 0.95))} ${unit}`;
  const what = note === undefined ? figure : `${figure} (${note})`;
  return `| ${[what, goal, `${written(middle)} ${unit}`, last, ...beside].join(' | ')} |`;
}

function written(figure: number): string {
  return figure >= 100 ? figure.toFixed(0) : figure.toPrecision(2);
}

function shareOf(figures: readonly number[], share: number): number {
  const sorted = figures.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}
