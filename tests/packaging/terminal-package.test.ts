/** The command by itself: packed by npm, installed offline into an empty folder, and used there. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import manifest from '../../package.json';

const folder = mkdtempSync(join(tmpdir(), 'terminal-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** As a machine that builds runs it: into a pipe, which wants no colours. */
function does(command: string, args: readonly string[], cwd = process.cwd()) {
  return spawnSync(command, args, { cwd, encoding: 'utf8', env: { ...process.env, CI: '1' } });
}

it('is one program with its notices, and works where nothing else is', { timeout: 180_000 }, () => {
  const made = does(process.execPath, ['esbuild.config.mjs', 'terminal']);
  expect(made.status, made.stderr).toBe(0);
  const packed = does('npm', ['pack', resolve('dist/terminal'), '--json', '--pack-destination', folder]);
  expect(packed.status, packed.stderr).toBe(0);
  const [{ filename, files }] = JSON.parse(packed.stdout) as [{ filename: string; files: { path: string }[] }];
  expect(files.map(({ path }) => path).filter((path) => !path.startsWith('schemas/'))).toEqual([
    'LICENSE',
    'README.md',
    'bookmatch.mjs',
    'package.json',
    'third-party-notices.txt',
  ]);
  expect(files.length).toBeGreaterThan(10);

  const shop = join(folder, 'shop');
  mkdirSync(shop);
  writeFileSync(join(shop, 'package.json'), '{ "private": true }');
  const installed = does('npm', ['install', '--offline', '--no-audit', '--no-fund', join(folder, filename)], shop);
  expect(installed.status, installed.stderr).toBe(0);
  const at = (path: string) => join(shop, 'node_modules/bookmatch', path);
  expect(JSON.parse(readFileSync(at('package.json'), 'utf8'))).toMatchObject({ version: manifest.version });
  expect(readFileSync(at('third-party-notices.txt'), 'utf8')).toMatch(/^langium [\d.]+\nLicence: MIT/m);

  writeFileSync(join(shop, 'tarn.bookmatch'), 'model tarn { top.thickness: .110 }\nrecipe tarn-1 for tarn { }\n');
  const run = (...args: readonly string[]) => does(join(shop, 'node_modules/.bin/bookmatch'), args, shop);
  const checked = run('check');
  expect([checked.status, checked.stderr]).toEqual([1, '']);
  expect(checked.stdout).toContain('.110 has no unit. Did you mean 0.110 in = 2.79 mm?');
  expect(run('check', '--language', 'de').stdout).toContain('1 Fehler in 1 Datei');
  expect(run('show', 'tarn-1').stdout).toContain('recipe tarn-1 for tarn');
  expect(run('--version').stdout.trim()).toBe(manifest.version);
});
