// node esbuild.config.mjs [--minify]        bundles into dist/ and reports their sizes
// node esbuild.config.mjs run FILE [ARG…]   bundles one script into .cache/ and runs it with this Node
import { build } from 'esbuild';
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { billFor, noticesFor, packagesIn } from './extension/packaging/third-party.mjs';

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

/** A page of a panel, with the stylesheet it imports beside it. It runs in the editor's own browser. */
const page = (name) => ({
  entry: `extension/panels/page/${name}.ts`,
  file: `dist/panels/${name}.js`,
  limit: 120_000,
  options: {
    ...{ platform: 'browser', target: 'es2022', format: 'iife', banner: {}, plugins: [TEXTS] },
    ...{ mainFields: ['browser', 'module', 'main'], conditions: ['browser', 'import', 'production'] },
  },
});

const BUNDLES = [
  { entry: 'extension/main-node.ts', file: 'dist/extension.cjs', limit: 400_000, options: { external: ['vscode'] } },
  { entry: 'language/server/main-node.ts', file: 'dist/server.cjs', limit: 1_200_000, options: {} },
  { entry: 'language/server/solver-thread.ts', file: 'dist/solver.cjs', limit: 300_000, options: {} },
  { entry: 'extension/main-browser.ts', file: 'dist/web/extension.js', limit: 400_000, options: inBrowser('cjs') },
  {
    entry: 'language/server/main-browser.ts',
    file: 'dist/web/server.js',
    limit: 1_200_000,
    options: inBrowser('iife'),
  },
  { entry: 'language/server/solver-worker.ts', file: 'dist/web/solver.js', limit: 300_000, options: inBrowser('iife') },
  { entry: 'language/cli/main.ts', file: 'dist/bookmatch.mjs', limit: 1_900_000, options: {} },
  page('drawing'),
  page('side-by-side'),
  page('sheet'),
  page('effects'),
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

/** The language client's packages carry TypeScript's own helpers anew in every file, 36 kB in all; here they share them. */
const SHARED_HELPERS = {
  name: 'shared-helpers',
  setup(context) {
    const written =
      /^var (__createBinding|__setModuleDefault|__importStar|__exportStar) = \(this[\s\S]*?^\}\)*(?:\(\))?;\n/gm;
    context.onLoad({ filter: /node_modules[\\/]vscode-.*\.js$/ }, ({ path }) => ({
      contents: readFileSync(path, 'utf8').replace(written, (_, name) =>
        name.endsWith('Star') ? `var ${name} = require('shared:helpers').${name};\n` : '',
      ),
    }));
    context.onResolve({ filter: /^shared:helpers$/ }, ({ path }) => ({ path, namespace: 'shared' }));
    context.onLoad({ filter: /./, namespace: 'shared' }, () => ({
      contents: `
        const bind = (to, from, name) => Object.defineProperty(to, name, { enumerable: true, get: () => from[name] });
        exports.__exportStar = (from, to) => {
          for (const name in from) if (name !== 'default' && !Object.hasOwn(to, name)) bind(to, from, name);
        };
        exports.__importStar = (module) => {
          if (module?.__esModule) return module;
          const copy = { default: module };
          for (const name of Object.getOwnPropertyNames(module ?? {})) if (name !== 'default') bind(copy, module, name);
          return copy;
        };`,
    }));
  },
};

/** The client compares VS Code's version with the one it needs; our manifest's `engines` has VS Code do so already. */
const NO_VERSION_CHECK = {
  name: 'no-version-check',
  setup(context) {
    context.onResolve({ filter: /^semver\// }, ({ path, importer }) =>
      importer.includes('vscode-languageclient') ? { path, namespace: 'version' } : undefined,
    );
    context.onLoad({ filter: /./, namespace: 'version' }, () => ({ contents: 'module.exports = () => true;' }));
  },
};

/**
 * What our server has no use for is left out of the client: 75 kB. A test sees to it that the server offers none of it.
 * Each of these modules registers features; in their place stands one that does nothing.
 */
const WITHOUT =
  /^\.\/(notebook|diagnostic|fileOperations|colorProvider|inlineValue|inlineCompletion|linkedEditingRange|textDocumentContent)$/;

const NO_UNUSED_FEATURES = {
  name: 'no-unused-features',
  setup(context) {
    context.onResolve({ filter: WITHOUT }, ({ importer }) =>
      /vscode-languageclient[\\/]lib[\\/]common/.test(importer) ? { path: 'feature', namespace: 'unused' } : undefined,
    );
    context.onLoad({ filter: /./, namespace: 'unused' }, () => ({
      contents: `class Unused {
          fillClientCapabilities() {}
          initialize() {}
          getState() { return { kind: 'static' }; }
          clear() {}
        }
        module.exports = new Proxy({}, { get: () => Unused });`,
    }));
  },
};

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
    plugins: [TEXTS, SHARED_HELPERS, NO_VERSION_CHECK, NO_UNUSED_FEATURES],
    logLevel: 'warning',
    legalComments: 'none',
    metafile: true,
  };
}

async function bundleAll({ minify, complete }) {
  writeTranslations();
  let tooLarge = false;
  const metafiles = [];
  for (const { entry, file, limit, options: own } of BUNDLES) {
    if (!existsSync(entry)) {
      if (complete) throw new Error(`${entry} is missing; the package cannot be made without it.`);
      rmSync(file, { force: true });
      console.log(`  ${file.padEnd(20)} skipped: ${entry} is not written yet`);
      continue;
    }
    const result = await build({ ...options(file), ...own, entryPoints: [entry], minify, sourcemap: !minify });
    metafiles.push(result.metafile);
    const bytes = result.metafile.outputs[file].bytes;
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
  if (tooLarge) throw new Error('A bundle is over its limit; see which parts are largest with --largest.');
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
  const minify = process.argv.includes('--minify');
  await bundleAll({ minify, complete: minify });
} catch (error) {
  // esbuild has already said where; anything else is said here.
  if (!error.errors) console.error(error.message);
  process.exit(1);
}
