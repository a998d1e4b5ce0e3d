import { expect, test } from 'vitest';
import { allProblems, reader, tellStatement } from './facts-in-words.js';

const { file } = reader();

/** Each line is put between two sound ones and before a sound definition; all of those must keep their meaning. */
const BROKEN: readonly (readonly [line: string, message: RegExp, suggestions?: readonly string[]])[] = [
  ['height:', /after `height:` a value such as 15 mm is expected/i],
  ['height: width: 5 mm', /after `height:` a value/i],
  ['height', /after `height` a colon and a value/i],
  ['height 15 mm', /after `height` a colon is expected/i, ['height:']],
  ['height "tall"', /after `height` a colon is expected/i, ['height:']],
  ['height = 15 mm', /a colon instead of `=`/i, ['height: 15 mm']],
  ['height: 15 mm;', /a line ends without a `;`/i, ['height: 15 mm']],
  [': 15 mm', /a line says what it is about/i],
  ['15 mm', /starts with what it is about/i],
  ['"top"', /starts with what it is about/i],
  ['2026-03-14', /starts with what it is about/i],
  ['cut: quarter sawn', /joined by hyphens: `quarter-sawn`/i, ['quarter-sawn', '"quarter sawn"']],
  ['lower bout: 390 mm', /joined by hyphens: `lower-bout`/i, ['lower-bout: 390 mm']],
  ['lower bout { width: 390 mm }', /joined by hyphens: `lower-bout`/i, ['lower-bout']],
  ['top: { thickness: 3 mm }', /a block has no colon: `top \{ … \}`/i, ['top']],
  ['{ thickness: 3 mm }', /a block needs a name/i],
  ['from: (78 mm -150 mm)', /a point is written \(78 mm, -150 mm\)/i],
  ['from: (78 mm, -150 mm', /a point is written/i],
  ['from: (78 mm,', /a point is written/i],
  ['from: 78 mm, -150 mm)', /a point is written/i],
  ['notes: E4,', /after the comma another value/i],
  ['air: 170..', /after `\.\.` the upper end/i],
  ['top.wood: sitka–118', /joined by a hyphen/i, ['-']],
  ['thickness: 2.85 mm ±', /after `±` the tolerance/i],
  ["kind: 'parabolic'", /double quotes/i],
  ['price: €300', /the sign `€` means nothing here/i],
  ['emoji: 🎸', /the sign `🎸` means nothing here/i],
  ['change', /a change is written `change top\.thickness: 2\.85 mm -> 2\.7 mm`/i],
  ['change top.thickness', /after `change top\.thickness` a colon/i],
  ['change top.thickness 3 mm -> 2 mm', /after `change top\.thickness` a colon/i],
  ['change top.thickness:', /the old and the new value are expected/i],
  ['change top.thickness: 3 mm', /the old and the new value, `15 mm -> 14 mm`, or a step/i],
  ['change top.thickness: 3 mm ->', /after `->` the new value/i],
  ['change top.thickness: by', /the old and the new value/i],
  ['add', /after `add` the part/i],
  ['drop', /after `drop` the part/i],
  ['hold', /a hold is written/i],
  ['hold top.mass at', /a hold is written/i],
  ['expect top.mass below 190 g', /an expectation is written/i],
  ['with', /after `with` the name/i],
  ['because', /after `because` a text in double quotes/i],
  ['because quicker', /after `because` a text in double quotes/i],
  ['note', /after `note` a text in double quotes/i],
  ['allow because "x"', /an allowance is written/i],
  ['allow two because "x"', /an allowance is written/i],
  ['accept', /an acceptance is written/i],
  ['vary at 1', /the limit is written `vary at most 1`/i],
  ['together "lighter" change a: 1 mm -> 2 mm', /after `together` say why/i],
  ['density: 400 kg/m³ per', /after `per`/i],
  ['a..b: 3', /does not read/i],
  ['-> 3 mm', /does not read|`->`/i],
  ['top { thickness }', /after `thickness` a colon/i],
  ['top { thickness: }', /after `thickness:` a value/i],
  ['???', /the sign `\?` means nothing/i],
];

test.each(BROKEN.map((row) => ({ line: row[0], message: row[1], suggestions: row[2] })))(
  '$line',
  ({ line, message, suggestions }) => {
    const facts = file(`recipe a from b {\n  before: 1 mm\n  ${line}\n  after: 2 mm\n}\nrecipe c from a { c: 3 mm }\n`);
    const problems = allProblems(facts);
    expect(problems.map((problem) => [problem.code, problem.span.start.line])).toEqual([['unreadable-line', 2]]);
    expect(problems[0]!.message).toMatch(message);
    if (suggestions) expect(problems[0]!.suggestions).toEqual(suggestions);
    const [a, c] = facts.definitions.map(({ definition }) => definition.statements.map(tellStatement));
    expect(a).toContain('before = 0.001 length');
    expect(a).toContain('after = 0.002 length');
    expect(c).toEqual(['c = 0.003 length']);
  },
);

test('only the statement at fault is lost when a line holds several', () => {
  const facts = file(
    'model m {\n  x-bass { from: (78 mm, -150 mm)  to: (405 mm 92 mm)  width: 8 mm  height 15 mm  profile: parabolic }\n}',
  );
  expect(allProblems(facts)).toHaveLength(1);
  expect(facts.definitions[0]!.definition.statements.map(tellStatement)).toEqual([
    'x-bass { x-bass.from = (0.078 length, -0.15 length); unreadable: to: (405 mm 92 mm); x-bass.width = 0.008 length; unreadable: height 15 mm; x-bass.profile = parabolic }',
  ]);
  const one = file('model m {\n  x-bass { to: (405 mm 92 mm)  width: 8 mm  profile: parabolic }\n}');
  expect(one.definitions[0]!.definition.statements.map(tellStatement)).toEqual([
    'x-bass { unreadable: to: (405 mm 92 mm); x-bass.width = 0.008 length; x-bass.profile = parabolic }',
  ]);
});

test('a block keeps its lines when its own head does not read but names one part', () => {
  const facts = file('model m {\n  top ) {\n    thickness: 3 mm\n  }\n  after: 1 mm\n}');
  expect(allProblems(facts)).toHaveLength(1);
  expect(facts.definitions[0]!.definition.statements.map(tellStatement)).toEqual([
    'top { top.thickness = 0.003 length }',
    'after = 0.001 length',
  ]);
});

test('every broken line is told once, however many there are', () => {
  const lines = Array.from({ length: 300 }, (_, i) => (i % 2 === 0 ? 'height:' : `width: ${i} mm`));
  const facts = file(`model m {\n${lines.join('\n')}\n}`);
  expect(allProblems(facts)).toHaveLength(150);
  expect(facts.definitions[0]!.definition.statements.filter(({ kind }) => kind === 'property')).toHaveLength(150);
});

test.each([
  ['note "abc', ['note "abc"']],
  ['note "abc // not a comment', ['note "abc // not a comment"']],
  ['top { note "abc }', ['top { note "abc" }']],
  ['top { kind: "abc } ', ['top { top.kind = "abc" }']],
])('an unclosed text costs one finding: %s', (line, told) => {
  const facts = file(`recipe a from b {\n  ${line}\n  after: 2 mm\n}\nrecipe c from a { }`);
  expect(allProblems(facts).map(({ code }) => code)).toEqual(['unclosed-text']);
  expect(facts.definitions[0]!.definition.statements.map(tellStatement)).toEqual([...told, 'after = 0.002 length']);
  expect(facts.definitions).toHaveLength(2);
});

test('an unclosed comment costs its line', () => {
  const facts = file('recipe a from b {\n  /* so far\n  after: 2 mm\n}');
  expect(allProblems(facts).map(({ code, suggestions }) => [code, suggestions])).toEqual([
    ['unclosed-text', ['/* so far */']],
  ]);
  expect(facts.definitions[0]!.definition.statements).toHaveLength(1);
});

test.each([
  ['recpie c from a { x: 3 mm }', /did you mean recipe/, ['recipe']],
  ['recpie c from a {\n  x: 3 mm\n}', /did you mean recipe/, ['recipe']],
  ['thickness: 3 mm', /belongs to no definition/, []],
  ['wood: ebony', /belongs to no definition/, []],
  ['hello', /belongs to no definition/, []],
])('outside a definition: %s', (line, message, suggestions) => {
  const facts = file(`recipe a from b { }\n${line}\nrecipe d from a { }`);
  expect(facts.problems.map(({ code, span }) => [code, span.start.line])).toEqual([['unreadable-line', 1]]);
  expect(facts.problems[0]!.message).toMatch(message);
  expect(facts.problems[0]!.suggestions).toEqual(suggestions);
  expect(facts.definitions.map(({ definition }) => definition.name.text)).toEqual(['a', 'd']);
});

test.each([
  ['recipe { x: 3 mm }', 'missing-name', '', undefined],
  ['recipe from a { x: 3 mm }', 'missing-name', '', 'a'],
  ['recipe c from { x: 3 mm }', 'missing-name', 'c', undefined],
  ['recipe tarn 8 from a { x: 3 mm }', 'unreadable-line', 'tarn 8', 'a'],
  ['recipe c.d from a { x: 3 mm }', 'unreadable-line', 'c.d', 'a'],
  ['recipe c of a { x: 3 mm }', 'unreadable-line', 'c', 'a'],
  ['recipe "c d" from a { x: 3 mm }', 'unreadable-line', '', 'a'],
  ['recipe c = a { x: 3 mm }', 'unreadable-line', 'c a', undefined],
  ['recipe c from a', 'unreadable-line', 'c', 'a'],
])('a head half typed keeps its body: %s', (head, code, name, target) => {
  const facts = file(`recipe a from b { }\n${head}\nrecipe d from a { }`);
  expect(allProblems(facts).map((problem) => problem.code)).toEqual([code]);
  const [, { definition }] = facts.definitions as [unknown, (typeof facts.definitions)[number]];
  expect([definition.name.text, definition.relation?.target.text]).toEqual([name, target]);
  if (head.includes('{')) expect(definition.statements.map(tellStatement)).toEqual(['x = 0.003 length']);
});
