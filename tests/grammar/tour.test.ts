import { readFileSync } from 'node:fs';
import { expect, test, vi } from 'vitest';
import { createParser } from '../../language/recipes/shelf/reader.js';
import { allProblems, reader, tellStatement } from './facts-in-words.js';

const TOUR = readFileSync(new URL('tour.bookmatch', import.meta.url), 'utf8');

test('the tour of the language reads without a problem', () => {
  const facts = reader().file(TOUR);
  expect(allProblems(facts)).toEqual([]);
  expect(facts.definitions.map(({ definition: { kind, name } }) => `${kind} ${name.text}`)).toEqual([
    'shop marram-lane',
    'wood sitka-118',
    'wood walnut-22',
    'model tarn',
    'recipe tarn-1',
    'recipe tarn-7',
    'recipe tarn-8',
    'appointments ember',
    'build no-31',
    'rig long-span',
    'order c-07',
  ]);
  const order = facts.definitions.at(-1)!.definition;
  expect(order.statements.map(tellStatement)).toEqual([
    'agreed = date 2026-02-03',
    'with ember',
    'request 2026-04-28 { add cutaway { cutaway.style = florentine }; nut.width = 0.046 length }',
  ]);
});

/** Texts that lean on every place where one word could be read in two ways. */
const TIGHT = [
  'recipe from from from { from: from }',
  'recipe a { change change: change -> change change: by by: by change by: by 3 mm change a: by -> by }',
  'recipe a { hold hold at at by by hold by at: 3 hold a by: 3 hold a by by at: 3 hold a at 3 mm by b }',
  'recipe a { mode: 3 mode (2,1): mode mode { mode (1,2): mode per "x" mode: 1 mode { } } mode: 2 }',
  'recipe a { add add drop drop with with add: 3 drop: 3 with: 3 add add { add { } } drop { } with { } }',
  'recipe a { together "x" { } together { } reading { } reading reading { } request { } request 2026-01-01 { } }',
  'recipe a { p: below below: 3 p: below 3 p: above, above above { } note: "x" note "x" because "x" because: "x" }',
  'recipe a { p: a per "x" per: 3 p: 3 per: 3 per { } p: a, b per "y" allow 2 because "x" accept a because "x" }',
  'recipe a { p: 5 ft 3 in ± 1 mm x: 3 p: 1..2 mm, 3 x 4 x 5 mm, (1, 2 mm) q: 1 r: 2 vary at most 1 vary { } vary: 3 }',
  'recipe a { expect expect: expect expect { } expect: 3 accept accept allow 1 allow: 2 at { } most: at }',
];

test('the grammar checks itself and finds no place with two readings', () => {
  const said = vi.spyOn(console, 'log').mockImplementation(() => undefined);
  const warned = vi.spyOn(console, 'warn').mockImplementation(() => undefined);
  const erred = vi.spyOn(console, 'error').mockImplementation(() => undefined);
  try {
    const { file } = reader(createParser({ selfCheck: true }));
    expect(allProblems(file(TOUR))).toEqual([]);
    for (const text of TIGHT) expect(allProblems(file(text)).map(({ message }) => `${text}: ${message}`)).toEqual([]);
    expect([...said.mock.calls, ...warned.mock.calls, ...erred.mock.calls]).toEqual([]);
  } finally {
    vi.restoreAllMocks();
  }
});
