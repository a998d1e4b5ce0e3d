/** The bundled program as a process of its own, on real files. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { demonstrate, EXAMPLE_SHOP } from '../../language/cli/demo.js';
import { bordered } from '../../language/cli/run.js';
import { ENGLISH } from '../../language/wording/wording.js';
import { GIT } from '../../language/disk/git-history.js';
import { DISK } from '../../language/cli/disk.js';

const ROOT = new URL('../../', import.meta.url).pathname.replace(/\/$/, '');

function program(...args: string[]): { code: number | null; out: string; err: string } {
  const run = spawnSync(process.execPath, ['esbuild.config.mjs', 'run', 'language/cli/main.ts', ...args], {
    cwd: ROOT,
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
  });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

describe('as a process', () => {
  it('check ends in 1 on a shop with slips', () => {
    const { code, out, err } = program('check', EXAMPLE_SHOP, '--format', 'json');
    expect(err).toBe('');
    const { findings } = JSON.parse(out) as { findings: { file: string; code: string; severity: string }[] };
    expect(findings.some(({ file }) => file === `${EXAMPLE_SHOP}/old-notebook.bookmatch`)).toBe(true);
    expect(findings.some(({ code: each }) => each === 'too-many-changes')).toBe(true);
    expect(code).toBe(1);
  });

  it('wrong use ends in 2 with one plain line', () => {
    const { code, out, err } = program('show', 'vennick-999', '--in', EXAMPLE_SHOP);
    expect(err).toMatch(/^There is nothing called vennick-999 in examples\/hollin-reach\. .*\n$/);
    expect(out).toBe('');
    expect(code).toBe(2);
  });
});

describe('the main job', () => {
  it('checks the example shop, lays two instruments side by side, and says how to go on', async () => {
    expect(existsSync(`${ROOT}/${EXAMPLE_SHOP}`)).toBe(true);
    let [out, err] = ['', ''];
    const code = await demonstrate(
      bordered(
        {
          write: (text) => void (out += text),
          complain: (text) => void (err += text),
          colour: false,
          columns: 100,
          busy: (_, work) => work(),
          cwd: ROOT,
          files: DISK,
          history: GIT,
          translations: () => Promise.resolve({}),
        },
        ENGLISH,
      ),
    );
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toMatch(/\d+ errors?, \d+ warnings?.* in \d+ files\./);
    expect(out).toMatch(/vennick-recipes\.bookmatch:\d+:\d+ {2}warning {2}too-many-changes/);
    expect(out).toContain('vennick-37 beside vennick-38');
    expect(out).toMatch(/top\.mass .*−4\.\d g/);
    expect(out).toContain('npm run try');
  }, 120_000);
});
