/** Runs the outside program in a folder of its own and reads what it prints. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Printed {
  /** Hz */
  readonly frequencies: readonly number[];
  /** kg, per mode: effective modal mass for movement along z. */
  readonly effectiveMassUp: readonly number[];
  /** Movement of the printed nodes, one block per mode and then per static step: node number → u, v, w. */
  readonly blocks: readonly ReadonlyMap<number, readonly [number, number, number]>[];
  readonly seconds: number;
}

/** The version line of the program, or undefined where it is not installed. */
export function installedVersion(): string | undefined {
  const { stdout, error } = spawnSync('ccx', ['-v'], { encoding: 'utf8' });
  return error ? undefined : /Version\s+(\S+)/.exec(stdout)?.[1];
}

export function runProgram(deck: string): Printed {
  const folder = mkdtempSync(join(tmpdir(), 'solid-top-'));
  try {
    writeFileSync(join(folder, 'top.inp'), deck);
    const start = Date.now();
    const run = spawnSync('nice', ['-n', '10', 'ccx', 'top'], {
      cwd: folder,
      encoding: 'utf8',
      env: { ...process.env, OMP_NUM_THREADS: '1' },
      maxBuffer: 1 << 28,
    });
    const problem = /\*ERROR.*(\n.*){0,3}/.exec(run.stdout)?.[0];
    if (run.status !== 0 || problem)
      throw new Error(problem ?? `ccx ended with ${run.status}: ${run.stdout.slice(-500)}`);
    return { ...readPrinted(readFileSync(join(folder, 'top.dat'), 'utf8')), seconds: (Date.now() - start) / 1000 };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Reads the text of a `.dat` file. */
export function readPrinted(text: string): Omit<Printed, 'seconds'> {
  const frequencies: number[] = [];
  const effectiveMassUp: number[] = [];
  const blocks: Map<number, readonly [number, number, number]>[] = [];
  let table = '';
  for (const line of text.split('\n')) {
    // Headings are printed with a space after each letter.
    if (line.includes('  E I G E N') || line.includes('  P A R T') || /\bE F F E C T I V E\b/.test(line))
      table = line.replace(/ /g, '');
    if (line.includes('displacements')) {
      table = 'displacements';
      blocks.push(new Map());
      continue;
    }
    const numbers = line.trim().split(/\s+/).map(Number);
    if (numbers.length < 4 || numbers.some(Number.isNaN)) continue;
    const [first, second, third, fourth] = numbers as [number, number, number, number];
    if (table === 'displacements') blocks[blocks.length - 1]!.set(first, [second, third, fourth]);
    else if (table.startsWith('EIGENVALUEOUTPUT')) frequencies.push(fourth);
    else if (table.startsWith('EFFECTIVEMODALMASS')) effectiveMassUp.push(fourth);
  }
  return { frequencies, effectiveMassUp, blocks };
}
