// Runs the tests of a bundle against one mutant after another, in one process; told of and started by `mutate.ts`. Each mutant is
// named before it is tried, so that whoever waits knows which one it was that never ended.
import { pathToFileURL } from 'node:url';
import type { Listed } from './in-process.js';

interface Switch {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  hitCount?: number | undefined;
  hitLimit?: number;
  mutantCoverage?: {
    readonly static: Readonly<Record<string, number>>;
    readonly perTest: Readonly<Record<string, Readonly<Record<string, number>>>>;
  };
}

const board = ((globalThis as unknown as { __stryker__: Switch }).__stryker__ = {} as Switch);
const [file = '', ...ids] = process.argv.slice(2);
/** A mutant that is passed so many times as often as the plain program has run away. */
const RUNAWAY = 100;
let loads = 0;

const tell = (message: object) => void process.send?.(message);

async function load(): Promise<readonly Listed[]> {
  const bundle = (await import(`${pathToFileURL(file).href}?${loads++}`)) as { takeListed: () => readonly Listed[] };
  return bundle.takeListed();
}

async function fails(tests: readonly Listed[]): Promise<string | undefined> {
  for (const { name, run } of tests) {
    try {
      await run();
    } catch (error) {
      return `${name}: ${error instanceof Error ? error.message : String(error)}`;
    }
  }
  return undefined;
}

const tests = await load();
const times = new Map<Listed, number>();
for (const [i, test] of tests.entries()) {
  board.currentTestId = String(i);
  const start = performance.now();
  const failed = await fails([test]);
  if (failed !== undefined) throw new Error(`without any mutant: ${failed}`);
  times.set(test, performance.now() - start);
}
board.currentTestId = undefined;
const coverage = board.mutantCoverage ?? { static: {}, perTest: {} };
const perTest = new Map(Object.entries(coverage.perTest).map(([test, hits]) => [tests[Number(test)]!, hits]));
tell({ took: [...times.values()].reduce((sum, each) => sum + each, 0) });

for (const id of ids) {
  tell({ trying: id });
  const reached = tests.filter((test) => (perTest.get(test)?.[id] ?? 0) > 0);
  const hits = reached.reduce((sum, test) => sum + (perTest.get(test)?.[id] ?? 0), coverage.static[id] ?? 0);
  board.activeMutant = id;
  board.hitCount = 0;
  board.hitLimit = RUNAWAY * hits + 1000;
  let killed = (await fails([...reached].sort((a, b) => times.get(a)! - times.get(b)!))) !== undefined;
  // What is worked out once, while files are loaded, is worked out again.
  if (!killed && coverage.static[id] !== undefined) {
    try {
      killed = (await fails(await load())) !== undefined;
    } catch {
      killed = true;
    }
  }
  board.activeMutant = undefined;
  tell({ tried: id, killed });
}
tell({ done: true });
process.exit(0);
