import { expect, test } from 'vitest';
import { allProblems, reader, tellStatement } from './facts-in-words.js';

const { file } = reader();

function told(text: string): { problems: [string, number][]; says: string[] } {
  const facts = file(text);
  return {
    problems: [
      ...facts.problems.map(({ code, span }): [string, number] => [code, span.start.line + 1]),
      ...facts.definitions.flatMap(({ definition, line }) =>
        definition.problems.map(({ code, span }): [string, number] => [code, line + span.start.line + 1]),
      ),
    ],
    says: facts.definitions.map(
      ({ definition }) => `${definition.name.text}: ${definition.statements.map(tellStatement).join('; ')}`,
    ),
  };
}

test('a block never closed: the next definition stands, the finding is at the brace that was left open', () => {
  expect(told('recipe a from b {\n  top {\n    x: 1 mm\n  y: 2 mm\n}\n\nrecipe c from a {\n  z: 3 mm\n}')).toEqual({
    problems: [['unclosed-block', 2]],
    says: ['a: top { top.x = 0.001 length }; y = 0.002 length', 'c: z = 0.003 length'],
  });
});

test('indentation tells which block was left open', () => {
  expect(
    told(
      'model m {\n  body {\n    waist {\n      width: 1 mm\n    depth { neck: 2 mm }\n  }\n  scale: 3 mm\n}\nrig r { }',
    ),
  ).toEqual({
    problems: [['unclosed-block', 3]],
    says: [
      'm: body { body.waist { body.waist.width = 0.001 length }; body.depth { body.depth.neck = 0.002 length } }; scale = 0.003 length',
      'r: ',
    ],
  });
});

test('a definition left open at the end of the file', () => {
  expect(told('recipe a from b {\n  x: 1 mm\n')).toEqual({
    problems: [['unclosed-block', 1]],
    says: ['a: x = 0.001 length'],
  });
  expect(told('recipe a from b {\n  top {').problems).toEqual([
    ['unclosed-block', 1],
    ['unclosed-block', 2],
  ]);
});

test('an indented definition is found as well when its head is plain', () => {
  expect(told('  recipe a from b {\n    x: 1 mm\n\n  recipe c from a {\n  }')).toEqual({
    problems: [['unclosed-block', 1]],
    says: ['a: x = 0.001 length', 'c: '],
  });
});

test('a statement that only looks like a definition does not end one', () => {
  expect(told('recipe a from b {\n  wood sitka-118\n  x: 1 mm\n}')).toEqual({
    problems: [['unreadable-line', 2]],
    says: ['a: unreadable: wood sitka-118; x = 0.001 length'],
  });
});

test('a closing brace too many', () => {
  expect(told('recipe a from b { }\n}\nrecipe c from a { }')).toEqual({
    problems: [['stray-brace', 2]],
    says: ['a: ', 'c: '],
  });
  expect(told('recipe a from b { }}\nrecipe c from a { }')).toEqual({
    problems: [['stray-brace', 1]],
    says: ['a: ', 'c: '],
  });
  expect(told('recipe a from b {\n  top { x: 1 mm } }\n  y: 2 mm\n}\nrecipe c from a { }')).toEqual({
    problems: [['stray-brace', 2]],
    says: ['a: top { top.x = 0.001 length }; y = 0.002 length', 'c: '],
  });
});

test('blocks nested beyond reason are not read, and nothing breaks', () => {
  const deep = `model m {\n${'a {\n'.repeat(5000)}${'}\n'.repeat(5000)}}\nrig r { }`;
  const facts = file(deep);
  expect(allProblems(facts).map(({ code }) => code)).toEqual(['unreadable-line']);
  expect(facts.definitions.map(({ definition }) => definition.name.text)).toEqual(['m', 'r']);
});

test('text that is no text, or far too long, is one finding and no reading', () => {
  expect(allProblems(file('recipe a from b { \u0000 }')).map(({ code }) => code)).toEqual(['bad-character']);
  expect(allProblems(file('note "x"\n'.repeat(600_000))).map(({ code }) => code)).toEqual(['too-large']);
});

test('byte order mark and Windows line ends change nothing', () => {
  expect(told('\uFEFFrecipe a from b {\r\n  x: 1 mm\r\n  y:\r\n}\r\n')).toEqual({
    problems: [['unreadable-line', 3]],
    says: ['a: x = 0.001 length; unreadable: y:'],
  });
});

test('an empty file, and one of comments, says nothing', () => {
  expect(told('')).toEqual({ problems: [], says: [] });
  expect(told('// nothing\n/* at\n all */\n')).toEqual({ problems: [], says: [] });
});
