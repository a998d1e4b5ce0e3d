/** The program killed while it writes: whatever the moment, the file is the old one or the new one, whole. */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, watch, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { THOROUGH } from '../thorough.js';

const ROOT = new URL('../../', import.meta.url).pathname;
const PROGRAM = join(ROOT, '.cache/run/cli-killed-program.mjs');
const IN_PLACE = join(ROOT, '.cache/run/cli-killed-in-place-program.mjs');
const folder = mkdtempSync(join(tmpdir(), 'killed-'));
const file = join(folder, 'big.bookmatch');
const KILLS = THOROUGH ? 200 : 10;

/** Two megabytes, most of them remarks, so that most of the time goes into starting and writing. */
const OLD = Array.from(
  { length: 20 },
  (_, i) => `// ${'x'.repeat(100_000)}\nwood w${i} is sitka-spruce {use:top  density:  421 kg/m³}\n`,
).join('');
let whole: string;
/** ms, undisturbed. */
let duration: number;

beforeAll(() => {
  for (const program of ['killed-program', 'killed-in-place-program']) {
    const args = ['esbuild.config.mjs', 'run', `tests/cli/${program}.ts`, '--version'];
    const built = spawnSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8' });
    expect([built.status, built.stderr]).toEqual([0, '']);
  }
  writeFileSync(file, OLD);
  const started = Date.now();
  expect(spawnSync(process.execPath, [PROGRAM, 'format', file], { encoding: 'utf8' }).stderr).toBe('');
  duration = Date.now() - started;
  whole = readFileSync(file, 'utf8');
  expect(whole).not.toBe(OLD);
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true }));

it(`${KILLS} times`, { timeout: 900_000 }, async () => {
  const ends = { old: 0, new: 0 };
  const moment = fc.record({
    signal: fc.constantFrom<NodeJS.Signals>('SIGKILL', 'SIGKILL', 'SIGKILL', 'SIGINT'),
    // Anywhere, or within the few milliseconds after something first stirs in the folder: while it writes.
    from: fc.constantFrom<Moment['from']>('start', 'stir', 'stir'),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
  });
  for (const each of fc.sample(moment, KILLS)) {
    const before = readdirSync(folder);
    writeFileSync(file, OLD);
    await killedAt(PROGRAM, each);
    const now = readFileSync(file, 'utf8');
    // Not compared by `toBe`, which would print two megabytes.
    const is = now === OLD ? 'old' : now === whole ? 'new' : `${now.length} characters of neither`;
    expect(['old', 'new'], JSON.stringify(each)).toContain(is);
    ends[is as 'old' | 'new']++;
    if (each.signal === 'SIGINT') expect(readdirSync(folder)).toEqual(before);
  }
  // Both have been seen, or the moments were not where it writes.
  if (THOROUGH) expect([ends.old > 10, ends.new > 10], JSON.stringify(ends)).toEqual([true, true]);
});

/** The check can fail: by the same kills a writer that writes into the file is found out. */
it('a writer in place is caught', { timeout: 300_000 }, async () => {
  const isWhole = () => [OLD, whole].includes(readFileSync(file, 'utf8'));
  for (let i = 0; i < 60; i++) {
    writeFileSync(file, OLD);
    await killedAt(IN_PLACE, { signal: 'SIGKILL', from: 'stir', share: (i % 20) / 20 });
    if (!isWhole()) return;
  }
  expect.unreachable('none of sixty kills damaged the file: the moments are not where it writes');
});

interface Moment {
  readonly signal: NodeJS.Signals;
  readonly from: 'start' | 'stir';
  readonly share: number;
}

/** ms: how long two megabytes take to be written, flushed and put in their place, generously. */
const WRITING = 25;

function killedAt(program: string, { signal, from, share }: Moment): Promise<void> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [program, 'format', file], { stdio: 'ignore' });
    const timers: NodeJS.Timeout[] = [];
    const killIn = (ms: number) => void timers.push(setTimeout(() => child.kill(signal), ms));
    const watcher = watch(folder, () => {
      if (from === 'stir' && timers.length === 0) killIn(share * WRITING);
    });
    if (from === 'start') killIn(share * duration);
    child.on('exit', () => {
      watcher.close();
      timers.forEach(clearTimeout);
      resolve();
    });
  });
}
