/** What a person gets who installs the extension: the package itself, by the program that makes it. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { listFiles, PackageManager } from '@vscode/vsce';
import { afterAll, describe, expect, it } from 'vitest';
import manifest from '../../package.json';
import { THOROUGH } from '../thorough.js';

/** Pictures and pages the text of a page leads to, within the package. */
function leadsTo(markdown: string): readonly string[] {
  const all = [...markdown.matchAll(/!\[[^\]]*\]\(([^)\s]+)\)/g)].map(([, path = '']) => path);
  return all.filter((path) => !/^[a-z]+:/.test(path));
}

const README = readFileSync('README.md', 'utf8');

it('takes the pictures of the README along', async () => {
  const files = await listFiles({ cwd: process.cwd(), packageManager: PackageManager.None });
  expect(leadsTo(README).length).toBeGreaterThan(5);
  expect(leadsTo(README).filter((path) => !files.includes(path))).toEqual([]);
  expect(files).toEqual(expect.arrayContaining(['LICENSE', 'CHANGELOG.md', manifest.icon]));
  // Nothing of the tests, of the sources or of the tools.
  expect(files.filter((file) => /\.(ts|mjs|mts)$|node_modules|^language\//.test(file))).toEqual([]);
});

it('says what a gallery asks for, and nothing that is not so', () => {
  expect(manifest).toMatchObject({ license: 'MIT', preview: true, galleryBanner: { theme: 'light' }, qna: false });
  expect(manifest.categories.length * manifest.keywords.length).toBeGreaterThan(0);
  expect(existsSync(manifest.icon)).toBe(true);
});

it('has a heading in the changelog for its version, with the date as ISO 8601 has it', () => {
  const heads = [...readFileSync('CHANGELOG.md', 'utf8').matchAll(/^## \[(.+?)\](.*)$/gm)];
  const [first, ...versions] = heads.map(([, name, rest]) => ({ name, rest }));
  expect(first).toEqual({ name: 'Unreleased', rest: '' });
  for (const { rest } of versions) expect(rest).toMatch(/^ - \d{4}-\d{2}-\d{2}$/);
  expect(versions.map(({ name }) => name)).toContain(manifest.version);
});

describe.runIf(THOROUGH)('the package, opened', () => {
  const folder = mkdtempSync(join(tmpdir(), 'package-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  it('holds notices, bill of materials and pictures', { timeout: 300_000 }, () => {
    const made = spawnSync('npm', ['run', '--silent', 'package', '--', '--out', join(folder, 'a.vsix')], {
      encoding: 'utf8',
    });
    expect(made.status, made.stdout + made.stderr).toBe(0);
    const opened = spawnSync('unzip', ['-q', 'a.vsix', '-d', 'opened'], { cwd: folder, encoding: 'utf8' });
    expect([opened.status, opened.stderr]).toEqual([0, '']);
    const at = (path: string) => join(folder, 'opened/extension', path);
    const readme = readFileSync(at('readme.md'), 'utf8');
    expect(leadsTo(readme)).toEqual(leadsTo(README));
    expect(leadsTo(readme).filter((path) => !existsSync(at(path)))).toEqual([]);
    expect(readFileSync(at('dist/third-party-notices.txt'), 'utf8')).toMatch(
      /^vscode-languageclient [\d.]+\nLicence: MIT/m,
    );
    expect(JSON.parse(readFileSync(at('dist/bill-of-materials.cdx.json'), 'utf8'))).toMatchObject({
      bomFormat: 'CycloneDX',
    });
  });
});
