/** Notices and bill of materials against the bundle itself: its source map says, independently, which files went into it. */
import { build } from 'esbuild';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { billFor, noticesFor, packagesIn } from '../../extension/packaging/third-party.mjs';

const folder = mkdtempSync(join(tmpdir(), 'bundle-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('what a bundle carries of others', async () => {
  const outfile = join(folder, 'out.mjs');
  const { metafile } = await build({
    ...{ entryPoints: ['language/recipes/shelf/reader.ts'], bundle: true, metafile: true, sourcemap: true, outfile },
    ...{ format: 'esm', platform: 'node', loader: { '.bookmatch': 'text' }, logLevel: 'silent' },
  });
  const packages = packagesIn([metafile]);
  const { sources } = JSON.parse(readFileSync(`${outfile}.map`, 'utf8')) as { sources: string[] };
  // Bundled before it was published: such a source has an address in place of a path.
  const carried = sources.flatMap((source) => /webpack:.*node_modules\/([^/]+)/.exec(source)?.[1] ?? []);
  const manifests = sources
    .filter((source) => source.includes('node_modules/') && !source.includes('webpack:'))
    .map((source) => manifestAbove(resolve(folder, source)));
  // Such an address does not say of which package it is a part; there is one that is made so.
  if (carried.length > 0) manifests.push(manifestAbove(resolve('node_modules/vscode-uri/package.json')));
  const names = [...new Set(manifests.map(({ name, version }) => `${name} ${version}`))].sort();

  it('is in the notices, with its licence', () => {
    const notices = noticesFor(packages);
    expect(names.length).toBeGreaterThan(3);
    for (const name of names) expect(notices).toContain(`\n${name}\nLicence: `);
    for (const name of carried) expect(notices).toContain(name);
    expect(notices.match(/^={78}$/gm)).toHaveLength(names.length);
    expect(notices).toMatch(/^langium [\d.]+\nLicence: MIT\n\n[\s\S]*?Permission is hereby granted/m);
  });

  it('is in the bill of materials, and nothing else is', { timeout: 120_000 }, () => {
    const bill = JSON.parse(billFor(packages)) as Bill;
    expect([bill.bomFormat, bill.metadata.component.name]).toEqual(['CycloneDX', 'bookmatch']);
    const listed = bill.components.map(({ group, name, version }) => `${group ? `${group}/` : ''}${name} ${version}`);
    expect([...new Set(listed)].sort()).toEqual(names);
    expect(bill.components.filter(({ licenses }) => licenses.length === 0)).toEqual([]);
  });

  it('cannot go in without a licence', () => {
    const stray = join(folder, 'node_modules/stray');
    const manifest = (more: object) => {
      rmSync(join(folder, 'node_modules'), { recursive: true, force: true });
      put(join(stray, 'package.json'), JSON.stringify({ name: 'stray', version: '1.0.0', ...more }));
    };
    manifest({});
    expect(() => noticesFor([stray])).toThrow('stray says nothing of its licence');
    manifest({ license: 'MIT' });
    expect(() => noticesFor([stray])).toThrow('no licence text and no author');
    manifest({ license: 'MIT', author: 'A. Maker' });
    expect(noticesFor([stray])).toContain('By A. Maker. The package comes without the text of its licence, MIT.');
  });
});

interface Bill {
  readonly bomFormat: string;
  readonly metadata: { readonly component: { readonly name: string } };
  readonly components: readonly {
    readonly group?: string;
    readonly name: string;
    readonly version: string;
    readonly licenses: readonly object[];
  }[];
}

function manifestAbove(file: string): { name: string; version: string } {
  for (let at = dirname(file); at !== dirname(at); at = dirname(at)) {
    const path = join(at, 'package.json');
    const found = existsSync(path)
      ? (JSON.parse(readFileSync(path, 'utf8')) as { name?: string; version?: string })
      : {};
    if (found.name !== undefined && found.version !== undefined) return { name: found.name, version: found.version };
  }
  throw new Error(`no package above ${file}`);
}

function put(path: string, text: string): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
}
