/**
 * General-purpose tools that do a part of what ours does, to hold ours against: they check words and the form of values, and
 * compute nothing. They are fetched for the bench alone, into a folder that is no part of the project.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Program } from './timed-server.js';

const FOLDER = resolve('.cache/peers');

/** All MIT licence. */
const PACKAGES = ['yaml-language-server@2.0.0', 'js-yaml@4.3.2', 'ajv@8.20.0'] as const;

/** Fetches them where they are not there yet. */
export function fetchPeers(): void {
  if (PACKAGES.every((name) => existsSync(join(FOLDER, 'node_modules', nameOf(name), 'package.json')))) return;
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(join(FOLDER, 'package.json'), '{ "private": true }\n');
  const { status } = spawnSync('npm', ['install', '--no-audit', '--no-fund', ...PACKAGES], {
    cwd: FOLDER,
    stdio: 'inherit',
  });
  if (status !== 0) throw new Error('The peers could not be fetched: --peers wants the network the first time.');
}

export function versions(): string {
  return PACKAGES.map((name) => {
    const { version } = JSON.parse(
      readFileSync(join(FOLDER, 'node_modules', nameOf(name), 'package.json'), 'utf8'),
    ) as { version: string };
    return `${nameOf(name)} ${version}`;
  }).join(', ');
}

export function yamlServer(schema: string): Program {
  return {
    name: 'yaml-language-server',
    arguments: [join(FOLDER, 'node_modules/yaml-language-server/bin/yaml-language-server')],
    languageId: 'yaml',
    settings: {
      yaml: {
        validate: true,
        hover: true,
        completion: true,
        schemas: { [schema]: '*.yaml' },
        schemaStore: { enable: false },
      },
    },
  };
}

/** A program that reads every YAML file of a folder and holds it against the schema, as `bookmatch check` does with recipes. */
export function yamlCheck(folder: string): readonly string[] {
  const program = join(FOLDER, 'check.cjs');
  writeFileSync(program, CHECK);
  return [program, folder];
}

const CHECK = `
const { readdirSync, readFileSync } = require('node:fs');
const { load } = require('js-yaml');
const Ajv = require('ajv');
const [, , folder] = process.argv;
const check = new Ajv({ strict: false, allErrors: true }).compile(JSON.parse(readFileSync(folder + '/recipe.schema.json', 'utf8')));
let wrong = 0;
for (const name of readdirSync(folder)) {
  if (!name.endsWith('.yaml')) continue;
  if (!check(load(readFileSync(folder + '/' + name, 'utf8')))) { wrong++; console.log(name, check.errors); }
}
console.log(wrong + ' wrong');
`;

function nameOf(name: string): string {
  return name.slice(0, name.lastIndexOf('@'));
}
