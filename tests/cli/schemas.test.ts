/** What the commands print as JSON, against the schemas a reader of it is given (JSON Schema 2020-12, checked by Ajv). */
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { History } from '../../language/disk/git-history.js';
import { THOROUGH } from '../thorough.js';
import { filesIn } from '../wording/everything-said.js';
import { bookmatchIn } from './terminal.js';

const FOLDER = 'language/cli/json/schemas';
const SHOP = filesIn('examples/hollin-reach');
const TOUR = { 'tour.bookmatch': readFileSync('tests/grammar/tour.bookmatch', 'utf8') };
const NAMES = readdirSync(FOLDER).map((file) => file.replace('.schema.json', ''));

const ajv = new Ajv2020({ allErrors: true, strict: true, strictRequired: false, allowUnionTypes: true });
const validators = new Map<string, ValidateFunction>(
  NAMES.map((name) => [
    name,
    ajv.compile(JSON.parse(readFileSync(join(FOLDER, `${name}.schema.json`), 'utf8')) as object),
  ]),
);

/** The folder as it is, and before a plate was thinned. */
const history: History = {
  commit: () => Promise.resolve({ id: 'one' }),
  texts: () =>
    Promise.resolve(
      new Map(
        Object.entries(SHOP)
          .filter(([path]) => path !== 'six-tops.bookmatch')
          .map(([path, text]) => [path, text.replaceAll('2.61 mm', '2.7 mm').replace('density: 419', 'density: 425')]),
      ),
    ),
};

async function printed(files: Readonly<Record<string, string>>, ...args: readonly string[]): Promise<unknown> {
  const { out, err } = await bookmatchIn({ history }, files, ...args, '--format', 'json');
  expect(err).toBe('');
  return JSON.parse(out) as unknown;
}

/** The solver takes its time; without leisure some names stand for the others. */
const some = <T>(all: readonly T[], most: number) => (THOROUGH ? all : all.slice(0, most));

const COMMANDS: Readonly<Record<string, readonly (readonly string[])[]>> = {
  check: [['check']],
  show: some(
    [
      'no-38',
      'sitka-31',
      'light-12',
      'hollin-reach',
      'no-14',
      'r2',
      'sitka-spruce',
      'vennick',
      'vennick-38',
      'old-vennick',
    ],
    7,
  ).map((name) => ['show', name]),
  compare: [
    ['compare', 'vennick-31', 'vennick-40'],
    ['compare', 'vennick', 'no-38'],
  ],
  lineage: [['lineage'], ['lineage', 'vennick-42']],
  effects: [['effects']],
  'model-effects': [['effects', '--model', 'vennick']],
  ways: [['ways', 'vennick-31', 'top.mass: 150 g']],
  sheet: some(['bench', 'papers', 'client', 'care'], 2).map((kind) => ['sheet', 'vennick-38', '--kind', kind]),
  changes: [['changes']],
};

describe('what is printed as JSON', () => {
  it.each(Object.entries(COMMANDS))('%s', { timeout: 240_000 }, async (name, commands) => {
    const validate = validators.get(name)!;
    for (const command of commands) {
      const value = await printed(SHOP, ...command);
      expect([command.join(' '), validate(value), validate.errors ?? []]).toEqual([command.join(' '), true, []]);
    }
  });

  it('of a text that uses everything the language has', { timeout: 120_000 }, async () => {
    const validate = validators.get('check')!;
    expect([validate(await printed(TOUR, 'check')), validate.errors ?? []]).toEqual([true, []]);
  });

  it('each has a schema, and each schema is of one of them', () => {
    expect(Object.keys(COMMANDS).sort()).toEqual([...NAMES].sort());
  });

  it('a schema lets nothing pass that is not so', async () => {
    const told = (await printed(SHOP, 'lineage')) as { lineage: { name: unknown }[] };
    const validate = validators.get('lineage')!;
    expect(validate({ lineage: [{ ...told.lineage[0], name: 7 }] })).toBe(false);
    expect(validate({ lineage: told.lineage, more: 1 })).toBe(false);
    expect(validate({})).toBe(false);
  });
});
