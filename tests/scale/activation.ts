/**
 * How long VS Code's extension host is held up by activation: the bundle read and `activate` called, in a Node process
 * of its own, with a stand-in for VS Code whose every part can be called and does nothing. What the real host adds
 * (its own start, the server's) is not in it.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Row } from './row.js';

const BUNDLE = 'dist/extension.cjs';

const SCRIPT = `
const Module = require('node:module');
const anything = () => {
  const target = function () {};
  return new Proxy(target, {
    get: (_, key) => key === Symbol.toPrimitive ? () => 'x' : key === 'then' ? undefined : key === Symbol.iterator ? function* () {} : key === 'prototype' ? target.prototype : anything(),
    apply: () => anything(),
    construct: () => anything(),
  });
};
const load = Module._load;
Module._load = (name, ...rest) => name === 'vscode' ? anything() : load(name, ...rest);
process.on('uncaughtException', () => {});
process.on('unhandledRejection', () => {});
const start = performance.now();
const extension = require(process.argv[1]);
const read = performance.now();
const folder = require('node:path').dirname(require('node:path').dirname(process.argv[1]));
extension.activate({ ...{ subscriptions: [], extensionUri: anything(), extension: anything(), workspaceState: anything(), globalState: anything() }, asAbsolutePath: (path) => folder + '/' + path });
console.log(JSON.stringify([read - start, performance.now() - start]));
process.exit(0);
`;

/** Undefined when there is no bundle. */
export function activation(): Row | undefined {
  if (!existsSync(BUNDLE)) return undefined;
  const times = Array.from({ length: 15 }, () => {
    const run = spawnSync(process.execPath, ['-e', SCRIPT, resolve(BUNDLE)], { encoding: 'utf8' });
    if (run.status !== 0 || run.stdout === '') throw new Error(`activation failed: ${run.stderr}`);
    return (JSON.parse(run.stdout) as [number, number])[1];
  });
  return { what: 'extension: bundle read and activate called', aim: '300 ms', runs: [times] };
}

/** What the package carries to be run, by name, in bytes. */
export function bundleSizes(): readonly (readonly [string, number])[] {
  if (!existsSync('dist')) return [];
  return readdirSync('dist', { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(?:cjs|mjs|js)$/.test(name))
    .map((name) => [name, statSync(`dist/${name}`).size] as const);
}
