/**
 * What of others the bundles really carry, by esbuild's own account of them: notices for those who receive a bundle, and a bill
 * of materials (CycloneDX, as npm writes it, cut down to what is in the bundles).
 */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';

/** Folders of the packages of which at least one byte is in an output, sorted. `metafiles`: one of esbuild for each bundle. */
export function packagesIn(metafiles) {
  const folders = new Set();
  for (const { outputs } of metafiles) {
    for (const { inputs = {} } of Object.values(outputs)) {
      for (const [input, { bytesInOutput }] of Object.entries(inputs)) {
        const folder = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0];
        if (folder !== undefined && bytesInOutput > 0) folders.add(folder);
      }
    }
  }
  return [...folders].sort();
}

/** The licence of each as it came with it. Throws for one without, since it could not be passed on. */
export function noticesFor(folders) {
  const seen = new Map();
  for (const folder of folders) {
    const { name, version, license } = manifestOf(folder);
    if (license === undefined) throw new Error(`${name} says nothing of its licence; it cannot go into a bundle.`);
    seen.set(
      `${name} ${version}`,
      `${name} ${version}\nLicence: ${license}\n\n${licenceText(folder, name, license)}\n\n${CARRIED.get(name) ?? ''}`,
    );
  }
  const head = `Bookmatch carries parts of these packages. Each stands under its own licence, given below.\n`;
  return [head, ...[...seen.values()].map((notice) => `${'='.repeat(78)}\n${notice.trim()}\n`)].join('\n');
}

/** CycloneDX by `npm sbom`, with no component but those in the bundles and no dependency but between them. */
export function billFor(folders) {
  const run = spawnSync('npm', ['sbom', '--sbom-format', 'cyclonedx', '--sbom-type', 'application'], {
    encoding: 'utf8',
    maxBuffer: 1e8,
    shell: process.platform === 'win32',
  });
  if (run.status !== 0) throw new Error(`npm could not write the bill of materials:\n${run.stderr}`);
  const bill = JSON.parse(run.stdout);
  const inBundles = new Set(folders.map((folder) => `${manifestOf(folder).name}@${manifestOf(folder).version}`));
  const components = bill.components.filter((each) => inBundles.has(fullName(each)));
  const missing = [...inBundles].filter((name) => !components.some((each) => fullName(each) === name));
  if (missing.length > 0) throw new Error(`The bill of materials of npm lacks ${missing.join(', ')}.`);
  const root = bill.metadata.component['bom-ref'];
  // Npm names the program after the folder it lies in, which is anything.
  const { name, version } = manifestOf('.');
  const own = `${name}@${version}`;
  Object.assign(bill.metadata.component, { 'bom-ref': own, name, version, purl: `pkg:npm/${own}` });
  const known = new Set([root, ...components.map((each) => each['bom-ref'])]);
  const dependencies = bill.dependencies
    .filter(({ ref }) => known.has(ref))
    .map(({ ref, dependsOn = [] }) => ({
      ref: ref === root ? own : ref,
      dependsOn: dependsOn.filter((each) => known.has(each)),
    }));
  // Npm marks what is built in as a tool of development; within a bundle it is part of the program.
  for (const each of components)
    each.properties = each.properties?.filter(({ name }) => !name.endsWith(':development'));
  return `${JSON.stringify({ ...bill, components, dependencies }, null, 2)}\n`;
}

function fullName({ group, name, version }) {
  return `${group ? `${group}/` : ''}${name}@${version}`;
}

function manifestOf(folder) {
  return JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
}

/** What a package was itself bundled with, as its source map says; it has no folder of its own here. */
const CARRIED = new Map([
  [
    'vscode-uri',
    'It carries path-browserify (https://github.com/browserify/path-browserify), Copyright (c) 2013 James Halliday, MIT.',
  ],
]);

/** What counts as one by the habit of packages. */
const LICENCE_FILE = /^(licen[cs]e|copying|notice|ofl)\b/i;

function licenceText(folder, name, license) {
  const files = readdirSync(folder).filter((file) => LICENCE_FILE.test(file) && !/\.[cm]?[jt]s$/.test(file));
  if (files.length > 0) return files.map((file) => readFileSync(join(folder, file), 'utf8').trim()).join('\n\n');
  const readme = readdirSync(folder).find((file) => /^readme/i.test(file));
  const section = readme && /^#+ *licen[cs]e[\s\S]*$/im.exec(readFileSync(join(folder, readme), 'utf8'))?.[0];
  if (section) return section.trim();
  const { author, repository } = manifestOf(folder);
  const by = typeof author === 'string' ? author : author?.name;
  if (by === undefined)
    throw new Error(`${name} (${license}) has no licence text and no author; it cannot go into a bundle.`);
  const from = typeof repository === 'string' ? repository : repository?.url;
  return `By ${by}${from === undefined ? '' : `, ${from}`}. The package comes without the text of its licence, ${license}.`;
}
