// `npm run mutate`: makes mistakes on purpose in what everything stands on and sees whether a test notices. The mistakes are those
// of StrykerJS. A mutant that lives is a gap in the tests, or changes nothing anybody could see; then explained.json says why, and
// an explanation of one that dies or is no more fails here.
//
//   npm run mutate                               all of it; what was found before for the same text and tests is not tried again
//   npm run mutate -- --files memo,counting.ts   some targets or files
//   npm run mutate -- --minutes 4                begins nothing new after that; run it again to go on
//   npm run mutate -- --share 0.1 --seed 5       a tenth of the declarations, drawn by that seed
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { basename } from 'node:path';
import { type Outcome, outcomesOf, type Report } from './outcome.js';
import { declarationsOf, drawn, type Piece, piecesOf } from './pieces.js';
import { type Target, TARGETS } from './targets.js';

const CACHE = '.cache/mutation';
const GOAL = 0.85;
/** Lines of one go, so that what was found is kept often. */
const PIECE = 70;

interface Explanation {
  readonly file: string;
  readonly why: string;
  readonly mutants: readonly string[];
}

const { values: asked } = parseArgs({
  options: {
    files: { type: 'string', default: '' },
    minutes: { type: 'string', default: 'Infinity' },
    share: { type: 'string', default: '1' },
    seed: { type: 'string', default: String(1 + Math.floor(Math.random() * 1e9)) },
  },
});
const until = Date.now() + 60_000 * Number(asked.minutes);
const share = Number(asked.share);
if (share < 1) console.log(`seed ${asked.seed}`);
mkdirSync(CACHE, { recursive: true });

const words = asked.files.split(',').filter((word) => word !== '');
const isWanted = (target: Target, file: string) =>
  words.length === 0 || words.some((word) => word === target.name || file.endsWith(word));
const explained = JSON.parse(readFileSync('tests/mutation/explained.json', 'utf8')) as readonly Explanation[];
const rows: string[] = [];
let isFine = true;

for (const target of TARGETS) {
  for (const file of target.files.filter((each) => isWanted(target, each))) {
    const outcomes = share < 1 ? sample(target, file) : whole(target, file);
    if (outcomes === undefined) console.log(`${file}: not finished; run this again to go on`);
    else if (outcomes.length > 0) judge(file, outcomes, share >= 1);
    isFine &&= outcomes !== undefined;
  }
}
if (share >= 1 && words.length === 0 && isFine) writeScore();
process.exit(isFine ? 0 : 1);

/** Every mutant of a file; undefined where time ran out. */
function whole(target: Target, file: string): readonly Outcome[] | undefined {
  const all: Outcome[] = [];
  for (const piece of piecesOf(file, PIECE)) {
    const kept = `${CACHE}/${basename(file, '.ts')}-${piece.from}-${fingerprint(target)}.json`;
    if (!existsSync(kept)) {
      if (Date.now() > until) return undefined;
      writeFileSync(kept, JSON.stringify(run(target, [piece])));
    }
    all.push(...(JSON.parse(readFileSync(kept, 'utf8')) as Outcome[]));
  }
  return all;
}

function sample(target: Target, file: string): readonly Outcome[] {
  const pieces = drawn(declarationsOf(file), share, Number(asked.seed));
  return pieces.length === 0 ? [] : run(target, pieces);
}

/** Of what is mutated and all that judges it. */
function fingerprint({ files, tests }: Target): string {
  const hash = createHash('sha256');
  for (const file of [...files, ...tests.filter((each) => existsSync(each)), 'tests/mutation/vitest.config.mts'])
    hash.update(readFileSync(file));
  return hash.digest('hex').slice(0, 12);
}

function run({ name, tests }: Target, pieces: readonly Piece[]): readonly Outcome[] {
  const [config, report] = [`${CACHE}/${name}.config.json`, `${CACHE}/${name}.report.json`];
  const settings = {
    testRunner: 'vitest',
    vitest: { configFile: 'tests/mutation/vitest.config.mts', related: false },
    mutate: pieces.map(({ file, from, to }) => `${file}:${from}-${to}`),
    ignorePatterns: ['dist', '.cache', 'extension'],
    // Linked packages must be found beside it, so it may not lie in `.cache`, which is left out of the copy.
    tempDirName: '.stryker-tmp',
    coverageAnalysis: 'perTest',
    concurrency: 1,
    reporters: ['json'],
    jsonReporter: { fileName: report },
    timeoutMS: 4000,
    timeoutFactor: 3,
    allowEmpty: true,
  };
  writeFileSync(config, JSON.stringify(settings));
  const env = { ...process.env, BOOKMATCH_MUTATION_TESTS: tests.join(',') };
  const ran = spawnSync('stryker', ['run', config], { encoding: 'utf8', env });
  if (ran.status !== 0) throw new Error(`stryker: ${ran.stdout}${ran.stderr}`);
  const spots = pieces.map(({ file, from, to }) => `${basename(file)}:${from}-${to}`).join(' ');
  const outcomes = outcomesOf(JSON.parse(readFileSync(report, 'utf8')) as Report);
  console.log(`${spots}: ${outcomes.filter(({ killed }) => killed).length} of ${outcomes.length} noticed`);
  return outcomes;
}

/** Every mutant that lived is explained, and what is explained did live. */
function judge(file: string, outcomes: readonly Outcome[], isWhole: boolean): void {
  const lived = outcomes.filter(({ killed }) => !killed);
  const reasons = explained.filter((each) => each.file === file).flatMap(({ mutants }) => mutants);
  const open = lived.filter(({ change }) => !reasons.includes(change));
  for (const { line, change } of open) console.log(`${file}:${line} lived: ${change}`);
  const idle = isWhole ? reasons.filter((reason) => !lived.some(({ change }) => change === reason)) : [];
  for (const reason of idle) console.log(`${file}: explained, and did not live: ${reason}`);
  const killed = outcomes.length - lived.length;
  const score = killed / outcomes.length;
  console.log(`${file}: ${killed} of ${outcomes.length} noticed, ${percent(score)}; ${open.length} to be explained`);
  rows.push(`| \`${file}\` | ${outcomes.length} | ${killed} | ${percent(score)} | ${lived.length - open.length} |`);
  if (open.length > 0 || idle.length > 0 || (isWhole && score < GOAL)) isFine = false;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

function writeScore(): void {
  const head = [
    '# Mutants noticed',
    '',
    '`npm run mutate` writes this page: mistakes made on purpose in what everything stands on, by StrykerJS, and how many of them a',
    `test notices. At least ${100 * GOAL} % in each file; each of the others is explained in \`explained.json\`, or the run fails.`,
    '',
    '| file | mutants | noticed | | explained |',
    '| --- | ---: | ---: | ---: | ---: |',
  ];
  writeFileSync('tests/mutation/score.md', `${[...head, ...rows].join('\n')}\n`);
}
