/** What the manifest offers somebody carries out, and what is carried out the manifest offers or an answer of the server names. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { COMMANDS } from '../../language/server/protocol.js';
import { contributes } from '../../package.json';

const REGISTERED = /\b(?:registerCommand|makerCommand)\(\s*(?:'([^']+)'|COMMANDS\.(\w+))/g;

const sources = readdirSync('extension', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => join('extension', name))
  .map((path) => ({ path, text: readFileSync(path, 'utf8') }));

/** By its id, the file that registers it. */
const registered = new Map(
  sources.flatMap(({ path, text }) =>
    [...text.matchAll(REGISTERED)].map(([, id, name]): [string, string] => [id ?? commandCalled(name!, path), path]),
  ),
);

function commandCalled(name: string, path: string): string {
  const id = new Map<string, string>(Object.entries(COMMANDS)).get(name);
  if (id === undefined)
    throw new Error(`${path} registers COMMANDS.${name}, which language/server/protocol.ts does not have.`);
  return id;
}

const offered = contributes.commands.map(({ command }) => command);

test('every command of the manifest is registered', () => {
  const left = offered.filter((id) => !registered.has(id));
  expect(left.map((id) => `${id} is in package.json, and no file of extension/ registers it`)).toEqual([]);
});

test('every command that the server names is registered', () => {
  const left = Object.entries(COMMANDS).filter(([, id]) => !registered.has(id));
  expect(
    left.map(([name, id]) => `COMMANDS.${name} (${id}) is named by answers, and no file of extension/ registers it`),
  ).toEqual([]);
});

test('every command that is registered is offered, named or used by an entry of ours', () => {
  const known = new Set<string>([...offered, ...Object.values(COMMANDS)]);
  const isUsed = (id: string) => sources.some(({ text }) => text.includes(`command: '${id}'`));
  const left = [...registered].filter(([id]) => !known.has(id) && !isUsed(id));
  expect(left.map(([id, path]) => `${path} registers ${id}, which neither package.json nor COMMANDS has`)).toEqual([]);
});
