/** With every translated letter marked, no plain English is left in anything the program says. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { rulePages } from '../../language/checks/manual.js';
import { openWorkshop } from '../../language/shop.js';
import { createParser, readFile } from '../../language/recipes/shelf/reader.js';
import { Wording } from '../../language/wording/wording.js';
import { THOROUGH } from '../thorough.js';
import { filesIn, type Said, saidInEditor, saidInTerminal, type Texts } from './everything-said.js';
import { COMMANDS, marked, Unmarked } from './marked-words.js';
import { translationsOf } from './translations.js';

const SHOP = filesIn('examples/hollin-reach');
const TOUR = { 'tour.bookmatch': readFileSync('tests/grammar/tour.bookmatch', 'utf8') };
const WORDS = marked(translationsOf('de'));

it('in the terminal', async () => {
  const commands = [
    '--help',
    ...COMMANDS.map((name) => `${name} --help`),
    ...['check --talk everything', 'check', 'rules', 'lineage', 'format --check', 'show six-1'],
    ...['sitka-33', 'sitka-spruce', 'light-12'].map((name) => `show ${name} --all`),
    'show sitka-33',
  ];
  // These ask the plate solver.
  const slow = [
    ...[
      'effects',
      'effects no-38',
      'effects --model vennick',
      'compare no-31 no-38',
      'compare vennick-31 vennick-40',
      'compare no-31 no-38 --all',
    ],
    ...['no-38', 'vennick', 'old-vennick'].flatMap((name) => [`show ${name}`, `show ${name} --all`]),
  ];
  const said = await saidInTerminal(SHOP, WORDS, THOROUGH ? [...commands, ...slow] : commands);
  // What was asked for is named in the complaint.
  expect(plainIn(said, { ...SHOP, asked: 'six-1' })).toEqual([]);
}, 300_000);

it('in an editor', async () => {
  const stride = THOROUGH ? 1 : 7;
  expect(plainIn(await saidInEditor(SHOP, WORDS, stride), SHOP)).toEqual([]);
  expect(plainIn(await saidInEditor(TOUR, WORDS, stride), TOUR)).toEqual([]);
}, 300_000);

it('in any finding', () => {
  const wording = new Wording(WORDS, 'de');
  const parser = createParser({ wording });
  for (const { code, bad } of rulePages()) {
    const { shelf, checks } = openWorkshop({ wording, parser });
    shelf.put(readFile('a', bad, parser));
    const said = checks
      .file('a')
      .flatMap(({ message, fixes, related }) => [
        message,
        ...fixes.map(({ title }) => title),
        ...related.map((each) => each.message),
      ]);
    expect(
      plainIn(
        said.map((text) => ({ where: code, text })),
        { bad },
      ),
    ).toEqual([]);
  }
}, 120_000);

it('would be found', async () => {
  const without = Object.fromEntries(
    Object.entries(WORDS).filter(([english]) => !english.startsWith('A substitution')),
  );
  const said = await saidInTerminal(SHOP, without, ['check --talk everything']);
  expect(plainIn(said, SHOP).join()).toContain('A substitution, not counted');
});

function plainIn(said: readonly Said[], texts: Texts): readonly string[] {
  const [unmarked, onPaper] = [false, true].map((forClients) => new Unmarked(Object.values(texts), { forClients }));
  const found = new Map<string, string>();
  for (const { where, text } of said) {
    const words = /^bookmatch\/sheet (client|care|papers) /.test(where) ? onPaper! : unmarked!;
    for (const run of words.in(text)) if (!found.has(run)) found.set(run, `${where}: ${run} (${text.slice(0, 200)})`);
  }
  return [...found.values()];
}
