// `npm run mutate`: makes mistakes on purpose in what everything stands on and sees whether a test notices. The mistakes are those
// of StrykerJS; the tests are run in one warm process, only those that reach a mutant, so that all of it takes a minute or two.
// A mutant that lives is a gap in the tests, or changes nothing anybody could see; then explained.json says why, and an
// explanation of one that is noticed, or is no more, fails here.
//
//   npm run mutate                               all of it, and the page score.md
//   npm run mutate -- --files memo,counting.ts   some targets or files
//   npm run mutate -- --share 0.1 --seed 5       a tenth of the declarations, drawn by that seed
import { fork } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { build } from 'esbuild';
import { parseArgs } from 'node:util';
import { bundle, type Mutant } from './bundle.js';
import { type Outcome, outcomeOf } from './outcome.js';
import { declarationsOf, drawn } from './pieces.js';
import { type Target, TARGETS } from './targets.js';

const CACHE = '.cache/mutation';
const GOAL = 0.85;
/** A mutant that takes so much longer than all tests as they are never ends; ms, and times. */
const PATIENCE = { least: 20_000, times: 10 };

interface Explanation {
  readonly file: string;
  readonly why: string;
  readonly mutants: readonly string[];
}

const { values: asked } = parseArgs({
  options: {
    files: { type: 'string', default: '' },
    share: { type: 'string', default: '1' },
    seed: { type: 'string', default: String(1 + Math.floor(Math.random() * 1e9)) },
  },
});
const share = Number(asked.share);
if (share < 1) console.log(`seed ${asked.seed}`);
const words = asked.files.split(',').filter((word) => word !== '');
const explained = JSON.parse(readFileSync('tests/mutation/explained.json', 'utf8')) as readonly Explanation[];
const SCORE = 'tests/mutation/score.md';
/** By file, as on the page: what is not tried now keeps what was found last. */
const rows = new Map<string, string>(
  (existsSync(SCORE) ? readFileSync(SCORE, 'utf8') : '').split('\n').flatMap((line) => {
    const file = /^\| `([^`]+)`/.exec(line)?.[1];
    return file === undefined ? [] : [[file, line] as const];
  }),
);
/** Files in which something is open. */
const open: string[] = [];

mkdirSync(CACHE, { recursive: true });
const WORKER = `${CACHE}/worker.mjs`;
await build({
  entryPoints: ['tests/mutation/worker.ts'],
  outfile: WORKER,
  bundle: true,
  platform: 'node',
  format: 'esm',
});

for (const target of TARGETS) {
  const wanted = target.files.filter(
    (file) => words.length === 0 || words.some((word) => word === target.name || file.endsWith(word)),
  );
  if (wanted.length === 0) continue;
  const file = `${CACHE}/${target.name}.mjs`;
  const mutants = (
    await bundle(
      target,
      target.tests.filter((test) => existsSync(test)),
      file,
    )
  ).filter(({ fileName }) => wanted.includes(fileName));
  const tried = share < 1 ? wanted.flatMap((each) => shareOf(each, mutants)) : mutants;
  const started = performance.now();
  const killed = await tryAll(target, file, tried);
  console.log(`${target.name}: ${tried.length} mutants in ${((performance.now() - started) / 1000).toFixed(0)} s`);
  for (const each of wanted) {
    const source = readFileSync(each, 'utf8');
    const own = tried.filter(({ fileName }) => fileName === each);
    if (own.length > 0)
      judge(
        each,
        own.map((mutant) => outcomeOf(mutant, source, killed.has(mutant.id))),
      );
  }
}
if (share >= 1) writeScore();
process.exit(open.length > 0 ? 1 : 0);

function shareOf(file: string, mutants: readonly Mutant[]): readonly Mutant[] {
  const pieces = drawn(declarationsOf(file), share, Number(asked.seed));
  return mutants.filter(
    ({ fileName, location: { start, end } }) =>
      fileName === file && pieces.some(({ from, to }) => from <= start.line && end.line <= to),
  );
}

/** The mutants that were noticed. A process that does not come back is ended, which counts as noticed, and another goes on. */
async function tryAll(target: Target, file: string, mutants: readonly Mutant[]): Promise<ReadonlySet<string>> {
  const killed = new Set<string>();
  let left = mutants.map(({ id }) => id);
  while (left.length > 0) {
    const stuck = await tryIn(file, left, (id, isKilled) => {
      left = left.filter((each) => each !== id);
      if (isKilled) killed.add(id);
    });
    if (stuck === undefined) break;
    console.log(`${target.name}: mutant ${stuck} never ends`);
    killed.add(stuck);
    left = left.filter((each) => each !== stuck);
  }
  return killed;
}

/** Undefined when all were tried; otherwise the one at which the process stopped or went away. */
function tryIn(
  file: string,
  ids: readonly string[],
  tried: (id: string, isKilled: boolean) => void,
): Promise<string | undefined> {
  return new Promise((go, fail) => {
    const env = { ...process.env, BOOKMATCH_SEED: '7', BOOKMATCH_THOROUGH: '0' };
    const child = fork(WORKER, [file, ...ids], { env, execArgv: ['--max-old-space-size=2000'] });
    let trying: string | undefined;
    let isDone = false;
    let patience = Infinity;
    let alarm: ReturnType<typeof setTimeout> | undefined;
    const wait = () => {
      clearTimeout(alarm);
      alarm = setTimeout(() => child.kill('SIGKILL'), patience);
    };
    child.on(
      'message',
      (message: { took?: number; trying?: string; tried?: string; killed?: boolean; done?: boolean }) => {
        if (message.took !== undefined) patience = PATIENCE.least + PATIENCE.times * message.took;
        if (message.trying !== undefined) {
          trying = message.trying;
          wait();
        } else if (message.tried !== undefined) tried(message.tried, message.killed === true);
        isDone ||= message.done === true;
      },
    );
    child.on('exit', () => {
      clearTimeout(alarm);
      if (isDone) go(undefined);
      else if (trying === undefined) fail(new Error('The tests do not pass as they are; see above.'));
      else go(trying);
    });
  });
}

/** Every mutant that lived is explained, and what is explained did live. */
function judge(file: string, outcomes: readonly Outcome[]): void {
  const lived = outcomes.filter(({ killed }) => !killed);
  const reasons = explained.filter((each) => each.file === file).flatMap(({ mutants }) => mutants);
  const unexplained = lived.filter(({ change }) => !reasons.includes(change));
  for (const { line, change } of unexplained) console.log(`${file}:${line} lived: ${change}`);
  const idle = share < 1 ? [] : reasons.filter((reason) => !lived.some(({ change }) => change === reason));
  for (const reason of idle) console.log(`${file}: explained, and did not live: ${reason}`);
  const killed = outcomes.length - lived.length;
  const score = killed / outcomes.length;
  console.log(
    `${file}: ${killed} of ${outcomes.length} noticed, ${percent(score)}; ${unexplained.length} to be explained`,
  );
  rows.set(
    file,

    `| \`${file}\` | ${outcomes.length} | ${killed} | ${percent(score)} | ${lived.length - unexplained.length} |`,
  );
  if (unexplained.length > 0 || idle.length > 0 || (share >= 1 && score < GOAL)) open.push(file);
}

function percent(part: number): string {
  return `${(100 * part).toFixed(1)} %`;
}

function writeScore(): void {
  const head = [
    '# Mutants noticed',
    '',
    '`npm run mutate` writes this page: mistakes made on purpose in what everything stands on, by StrykerJS, and how many of them a',
    `test notices. At least ${100 * GOAL} % in each file; each of the others is explained in \`explained.json\`, or the run fails.`,
    '',
    '| file | mutants | noticed | share | explained |',
    '| --- | ---: | ---: | ---: | ---: |',
  ];
  const files = TARGETS.flatMap((target) => target.files);
  const found = files.flatMap((file) => rows.get(file) ?? []);
  writeFileSync(SCORE, `${[...head, ...found].join('\n')}\n`);
}
