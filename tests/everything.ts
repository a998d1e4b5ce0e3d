// `npm test`: the checks one after the other, and how many passed. With `-- --thorough`, as CI runs it, nothing is sampled, and
// the packaged extension is tried in a real VS Code as well, which takes some minutes more.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { findChromium, HOW_TO_GET_CHROMIUM } from './workbench/host/chromium.js';

interface Count {
  passed: number;
  failed: number;
}

const RESULTS = '.cache/results';
/** By kind of journey, the files that were flaky when last run. Outlives the run. */
const FLAKY = '.cache/flaky.json';
const flakyFiles: string[] = [];
const total: Count = { passed: 0, failed: 0 };
const failedSteps: string[] = [];

rmSync(RESULTS, { recursive: true, force: true });
mkdirSync(RESULTS, { recursive: true });

step('grammar', 'npm', ['run', '--silent', 'generate']);
step('types', 'tsc', ['-p', '.']);
step('lint', 'eslint', ['.']);
step('import directions', 'depcruise', ['--output-type', 'err', 'language', 'extension', 'syntaxes']);
// Some tests speak to the server as a process of its own.
step('bundles', 'node', ['esbuild.config.mjs']);
const isThorough = process.argv.includes('--thorough');
// Read by `tests/thorough.ts`, in the processes started here.
process.env['BOOKMATCH_THOROUGH'] ??= isThorough ? '1' : '0';
tests('tests', []);
if (isThorough) workbench();
else console.log('\n== workbench: not asked for; `npm run workbench` tries the extension in a real VS Code.');

for (const name of failedSteps) console.log(`failed: ${name}`);
for (const file of flakyFiles) console.log(`flaky: ${file} passed at the second try only`);
if (flakyFiles.length > 0) console.log(`${flakyFiles.length} flaky`);
console.log(`${total.passed} passed, ${total.failed} failed`);
process.exit(total.failed > 0 ? 1 : 0);

function workbench(): void {
  if (findChromium() === undefined) {
    console.log(`\n== workbench: left out, since there is no Chromium on this machine. ${HOW_TO_GET_CHROMIUM}`);
    // Where everything must have run, leaving something out is a failure.
    if (process.env['CI']) fail('workbench: no Chromium');
    return;
  }
  if (step('package', 'npm', ['run', '--silent', 'package'])) {
    journeys('workbench', 'tests/workbench/vitest.config.mts');
    journeys('workbench of a newcomer', 'tests/workbench/newcomer/vitest.config.mts');
    journeys('workbench in German', 'tests/workbench/german/vitest.config.mts');
    journeys('workbench in the browser alone', 'tests/workbench/web/vitest.config.mts');
  }
}

/** A check that passes or fails as a whole; only a failure is counted. */
function step(name: string, command: string, args: readonly string[]): boolean {
  const fine = run(name, command, args);
  if (!fine) fail(name);
  return fine;
}

function tests(name: string, args: readonly string[]): void {
  settle(name, attempt(name, args));
}

/**
 * Journeys in a real editor. Files in which one failed are tried once more, in an editor and a page started anew: one that got stuck
 * is no fault of the extension. What fails twice has failed.
 */
function journeys(name: string, config: string): void {
  const first = attempt(name, ['--config', config]);
  if (first.failedFiles.length === 0) {
    noteFlaky(name, []);
    settle(name, first);
    return;
  }
  const second = attempt(`${name}, once more`, ['--config', config, ...first.failedFiles]);
  const flaky = first.failedFiles.filter((file) => !second.failedFiles.includes(file));
  settle(name, { ...second, passed: first.passedElsewhere + second.passed });
  for (const file of noteFlaky(name, flaky)) fail(`${file}: flaky twice in a row`);
}

/**
 * What passed at the second try only is counted as flaky and remembered; answers what was flaky the last time too, which counts as
 * failed: a test that passes every other time says nothing.
 */
function noteFlaky(name: string, files: readonly string[]): readonly string[] {
  const all = existsSync(FLAKY) ? (JSON.parse(readFileSync(FLAKY, 'utf8')) as Record<string, readonly string[]>) : {};
  const before = new Map(Object.entries(all)).get(name) ?? [];
  writeFileSync(FLAKY, JSON.stringify({ ...all, [name]: files }));
  flakyFiles.push(...files);
  return files.filter((file) => before.includes(file));
}

interface Attempt extends Count {
  readonly fine: boolean;
  readonly failedFiles: readonly string[];
  /** Tests passed in files in which none failed. */
  readonly passedElsewhere: number;
}

function attempt(name: string, args: readonly string[]): Attempt {
  const file = join(RESULTS, `${name}.json`);
  const reporters = ['--reporter=dot', '--reporter=json', `--outputFile.json=${file}`];
  const fine = run(name, 'vitest', ['run', ...args, ...reporters]);
  if (!existsSync(file)) return { fine, passed: 0, failed: 0, failedFiles: [], passedElsewhere: 0 };
  const { testResults, ...all } = JSON.parse(readFileSync(file, 'utf8')) as Report;
  const failed = testResults.filter(({ status }) => status === 'failed');
  const passedThere = failed
    .flatMap(({ assertionResults }) => assertionResults)
    .filter((one) => one.status === 'passed');
  return {
    fine,
    passed: all.numPassedTests,
    failed: all.numFailedTests,
    failedFiles: failed.map((one) => one.name),
    passedElsewhere: all.numPassedTests - passedThere.length,
  };
}

interface Report {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
}

function settle(name: string, { fine, passed, failed }: Attempt): void {
  total.passed += passed;
  total.failed += failed;
  if (failed > 0) failedSteps.push(`${name} (${failed})`);
  // A file that cannot be loaded, or a crash, fails without any test of it failing.
  else if (!fine || passed === 0) fail(name);
}

function fail(name: string): void {
  total.failed += 1;
  failedSteps.push(name);
}

function run(name: string, command: string, args: readonly string[]): boolean {
  console.log(`\n== ${name}`);
  const started = Date.now();
  const { status, error } = spawnSync(command, args, { stdio: 'inherit' });
  if (error) console.error(`${command} could not be started: ${error.message}`);
  console.log(`== ${name}: ${status === 0 ? 'fine' : 'failed'}, ${((Date.now() - started) / 1000).toFixed(1)} s`);
  return status === 0;
}
