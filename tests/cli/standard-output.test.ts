/** What leaves the process arrives whole, or the process says that it did not; a reader that goes away is no fault. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import { aFolder, IS_ROOT } from '../disk/a-folder.js';

const ROOT = new URL('../../', import.meta.url).pathname;
const PROGRAM = join(ROOT, '.cache/run/cli-piped-program.mjs');
const folder = aFolder('output');
const FULL = 'What was asked for could not be written out whole: the disk is full.\n';

beforeAll(() => {
  const arguments_ = ['esbuild.config.mjs', 'run', 'tests/cli/piped-program.ts', '--version'];
  expect(spawnSync(process.execPath, arguments_, { cwd: ROOT }).status).toBe(0);
}, 60_000);

/** In a shell, since what is tried is a matter between processes. `bookmatch` is the program. */
function inShell(script: string): { readonly code: number | null; readonly out: string; readonly err: string } {
  const whole = `bookmatch() { "${process.execPath}" "${PROGRAM}" "$@"; }\n${script}`;
  const run = spawnSync('bash', ['-c', whole], { cwd: ROOT, encoding: 'utf8', env: { ...process.env, LC_ALL: 'C' } });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

it.runIf(existsSync('/dev/full'))('a device that is full', () => {
  expect(inShell('bookmatch rules > /dev/full')).toEqual({ code: 2, out: '', err: FULL });
  expect(inShell('bookmatch --help > /dev/full').code).toBe(2);
});

it.runIf(IS_ROOT)('a disk that takes a part and no more', () => {
  const small = join(folder.path, 'small');
  mkdirSync(small);
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=4k', 'tmpfs', small]).status !== 0) return;
  try {
    expect(inShell(`bookmatch rules > ${small}/rules.txt`)).toEqual({ code: 2, out: '', err: FULL });
    expect(statSync(`${small}/rules.txt`).size).toBe(4096);
  } finally {
    spawnSync('umount', [small]);
  }
});

it('a file that has room', () => {
  const file = join(folder.path, 'rules.txt');
  const { code, out } = inShell(`bookmatch rules | cat; bookmatch rules > ${file}`);
  expect([code, readFileSync(file, 'utf8')]).toEqual([0, out]);
});

it('a reader that has seen enough, or never looked', () => {
  expect(inShell('bookmatch rules | head -1; echo "${PIPESTATUS[0]}"')).toMatchObject({ code: 0, err: '' });
  expect(inShell('bookmatch rules | true; echo "${PIPESTATUS[0]}"')).toEqual({ code: 0, out: '0\n', err: '' });
  expect(inShell('bookmatch rules >&-').code).toBe(0);
  expect(inShell('bookmatch show nothing-such --in examples/hollin-reach 2>&-').code).toBe(2);
});
