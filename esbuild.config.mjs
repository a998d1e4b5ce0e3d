// node esbuild.config.mjs [--minify]        bundles into dist/ and reports their sizes
// node esbuild.config.mjs terminal          the command by itself, as a package of npm, into dist/terminal/
// node esbuild.config.mjs run FILE [ARG…]   bundles one script into .cache/ and runs it with this Node
import { build } from 'esbuild';
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { writeTerminalPackage } from './extension/packaging/terminal-package.mjs';
import { billFor, noticesFor, packagesIn } from './extension/packaging/third-party.mjs';
import { freshGrammar } from './fresh-grammar.mjs';

freshGrammar();

/** Langium groups with `Object.groupBy`, which Node 20 and the editors built on it lack. */
const GROUP_BY =
  'Object.groupBy??=(items,keyOf)=>{const groups=Object.create(null);let i=0;' +
  'for(const item of items)(groups[keyOf(item,i++)]??=[]).push(item);return groups};';

/** A module written in CommonJS may ask for Node's own parts by `require`, which an ES module does not have. */
const REQUIRE =
  "import{createRequire as createRequire_}from'node:module';const require=createRequire_(import.meta.url);";

/** The species library and other texts travel inside the bundle: `import text from './species.bookmatch'`. */
const TEXTS = {
  name: 'texts',
  setup(context) {
    context.onResolve({ filter: /\?raw$/ }, ({ path, resolveDir }) => ({
      path: resolve(resolveDir, path.replace(/\?raw$/, '')),
      namespace: 'text',
    }));
    context.onLoad({ filter: /./, namespace: 'text' }, ({ path }) => ({
      contents: readFileSync(path, 'utf8'),
      loader: 'text',
      watchFiles: [path],
    }));
  },
};

/**
 * How much a bundle may grow beyond `needs`, its size when somebody last looked at what is in it: room for a season's work, too
 * little for a library that came in by one careless import. Size is what an editor reads and compiles at each start.
 */
const GROWTH = 1.15;

/** A page of a panel, with the stylesheet it imports beside it. It runs in the editor's own browser. */
const page = (name, needs) => ({
  entry: `extension/panels/page/${name}.ts`,
  file: `dist/panels/${name}.js`,
  needs,
  options: {
    ...{ platform: 'browser', target: 'es2022', format: 'iife', banner: {}, plugins: [TEXTS] },
    ...{ mainFields: ['browser', 'module', 'main'], conditions: ['browser', 'import', 'production'] },
  },
});

// prettier-ignore
const BUNDLES = [
  // Nine tenths are the language client, whole and as it is published.
  { entry: 'extension/main-node.ts', file: 'dist/extension.cjs', needs: 487_000, options: { external: ['vscode'] } },
  // Half of it our own; 240 kB the parser, 180 kB the protocol, 92 kB the species as their text, which the editor can open.
  { entry: 'language/server/main-node.ts', file: 'dist/server.cjs', needs: 1_360_000, options: {} },
  { entry: 'language/server/solver-thread.ts', file: 'dist/solver.cjs', needs: 115_000, options: {} },
  { entry: 'extension/main-browser.ts', file: 'dist/web/extension.js', needs: 452_000, options: inBrowser('cjs') },
  { entry: 'language/server/main-browser.ts', file: 'dist/web/server.js', needs: 1_345_000, options: inBrowser('iife') },
  { entry: 'language/server/solver-worker.ts', file: 'dist/web/solver.js', needs: 115_000, options: inBrowser('iife') },
  // 500 kB of it write PDF and DXF, and are begun with by `plan` alone.
  { entry: 'language/cli/main.ts', file: 'dist/bookmatch.mjs', needs: 1_890_000, options: {} },
  // The libraries that write PDF and DXF, read by the server when somebody saves a file.
  { entry: 'language/reports/plan/write/plan-files.ts', file: 'dist/plan-files.cjs', needs: 520_000, options: {} },
  // 8 kB of it a mode as a relief.
  page('drawing', 73_000),
  page('side-by-side', 103_000),
  page('sheet', 17_000),
  page('effects', 65_000),
];

/** VS Code in the browser loads the extension as CommonJS and workers as plain scripts. */
function inBrowser(format) {
  return {
    platform: 'browser',
    target: 'es2022',
    format,
    external: ['vscode'],
    mainFields: ['browser', 'module', 'main'],
    conditions: ['browser', 'import'],
  };
}

function options(file) {
  const isModule = file.endsWith('.mjs');
  const shebang = file.endsWith('bookmatch.mjs') ? '#!/usr/bin/env node\n' : '';
  return {
    bundle: true,
    platform: 'node',
    // The oldest Node that runs it: an editor's own, or the one of a maker at the command line.
    target: 'node20',
    format: isModule ? 'esm' : 'cjs',
    // Packages offer both forms; the ES one can be trimmed to what is used.
    mainFields: ['module', 'main'],
    conditions: ['node', 'import'],
    outfile: file,
    banner: { js: shebang + (isModule ? REQUIRE : '') + GROUP_BY },
    loader: { '.bookmatch': 'text' },
    plugins: [TEXTS],
    logLevel: 'warning',
    legalComments: 'none',
    metafile: true,
  };
}

async function bundleAll({ minify, complete }) {
  writeTranslations();
  let tooLarge = false;
  const metafiles = [];
  for (const { entry, file, needs, options: own } of BUNDLES) {
    if (!existsSync(entry)) {
      if (complete) throw new Error(`${entry} is missing; the package cannot be made without it.`);
      rmSync(file, { force: true });
      console.log(`  ${file.padEnd(20)} skipped: ${entry} is not written yet`);
      continue;
    }
    const result = await build({ ...options(file), ...own, entryPoints: [entry], minify, sourcemap: !minify });
    metafiles.push(result.metafile);
    const bytes = result.metafile.outputs[file].bytes;
    const limit = needs * GROWTH;
    const over = minify && bytes > limit;
    tooLarge ||= over;
    const note = minify ? ` of at most ${kilobytes(limit)}${over ? ': too large' : ''}` : ' (not minified)';
    console.log(`  ${file.padEnd(20)} ${kilobytes(bytes).padStart(8)}${note}`);
    if (process.argv.includes('--largest')) largest(result.metafile.outputs[file]);
  }
  const others = packagesIn(metafiles);
  writeFileSync('dist/third-party-notices.txt', noticesFor(others));
  // Npm takes some seconds for it, and only a package is handed on.
  if (complete) writeFileSync('dist/bill-of-materials.cdx.json', billFor(others));
  if (tooLarge)
    throw new Error(
      'A bundle is over its limit. See what is in it with --largest; what it does not need goes, else `needs` is to be raised.',
    );
}

/** The translations, kept in files by area, as one table for each language beside the programs that read it. */
function writeTranslations() {
  for (const [language, folder] of Object.entries({ de: 'language/wording/german' })) {
    const areas = readdirSync(folder).sort();
    const tables = areas.map((file) => JSON.parse(readFileSync(join(folder, file), 'utf8')));
    mkdirSync('dist/wording', { recursive: true });
    writeFileSync(`dist/wording/${language}.json`, JSON.stringify(Object.assign({}, ...tables)));
  }
}

/** The command by itself: one program with every language in it, its licence and those of what it carries. */
async function bundleTerminal() {
  const folder = 'dist/terminal';
  const file = `${folder}/bookmatch.mjs`;
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  writeTranslations();
  const { metafile } = await build({
    ...{ ...options(file), plugins: [TEXTS, CARRIES_TRANSLATIONS] },
    ...{ entryPoints: ['language/cli/main.ts'], minify: true },
  });
  writeFileSync(`${folder}/third-party-notices.txt`, noticesFor(packagesIn([metafile])));
  const manifest = JSON.parse(readFileSync('package.json', 'utf8'));
  writeTerminalPackage(folder, manifest);
  console.log(`  ${file.padEnd(20)} ${kilobytes(metafile.outputs[file].bytes).padStart(8)}`);
}

/** Tables of translations within the program, in place of files beside it. */
const CARRIES_TRANSLATIONS = {
  name: 'translations',
  setup(context) {
    context.onResolve({ filter: /\/translation-files\.js$/ }, () => ({ path: 'translations', namespace: 'carried' }));
    context.onLoad({ filter: /./, namespace: 'carried' }, () => {
      const tables = { de: JSON.parse(readFileSync('dist/wording/de.json', 'utf8')) };
      return {
        contents: `const tables = new Map(Object.entries(${JSON.stringify(tables)}));
export const translationsIn = () => async (language) => tables.get(language) ?? {};`,
        loader: 'js',
      };
    });
  },
};

function largest(output) {
  const byPackage = new Map();
  for (const [input, { bytesInOutput }] of Object.entries(output.inputs)) {
    const name = /node_modules\/((?:@[^/]+\/)?[^/]+)(?!.*node_modules)/.exec(input)?.[1] ?? dirname(input);
    byPackage.set(name, (byPackage.get(name) ?? 0) + bytesInOutput);
  }
  const rows = [...byPackage].sort((a, b) => b[1] - a[1]).slice(0, 12);
  for (const [name, bytes] of rows) console.log(`    ${name.padEnd(36)} ${kilobytes(bytes).padStart(8)}`);
}

const kilobytes = (bytes) => `${(bytes / 1000).toFixed(0)} kB`;

/** Packages stay outside; only our own files are bundled, so this takes a fraction of a second. */
async function runScript(file, args) {
  const out = join('.cache/run', `${basename(dirname(file))}-${basename(file, '.ts')}.mjs`);
  await build({ ...options(out), entryPoints: [file], packages: 'external', sourcemap: 'inline', banner: { js: '' } });
  const node = spawnSync(process.execPath, ['--enable-source-maps', out, ...args], { stdio: 'inherit' });
  return node.status ?? 1;
}

try {
  const [mode, file, ...args] = process.argv.slice(2);
  if (mode === 'run') process.exit(await runScript(file, args));
  if (mode === 'terminal') {
    await bundleTerminal();
    process.exit(0);
  }
  const minify = process.argv.includes('--minify');
  await bundleAll({ minify, complete: minify });
} catch (error) {
  // esbuild has already said where; anything else is said here.
  if (!error.errors) console.error(error.message);
  process.exit(1);
}
