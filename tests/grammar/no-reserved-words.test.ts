import { expect, test } from 'vitest';
import { DEFINITION_KINDS } from '../../language/facts/facts.js';
import { reader } from './facts-in-words.js';

const { says, file } = reader();

/** Every word the grammar gives a meaning, and some that sound as if it did. */
const WORDS = [
  ...DEFINITION_KINDS,
  ...['is', 'for', 'from', 'of', 'change', 'add', 'drop', 'together', 'hold', 'expect', 'with', 'because', 'note'],
  ...['allow', 'accept', 'vary', 'reading', 'request', 'at', 'most', 'by', 'per', 'below', 'above', 'x', 'to', 'and'],
  ...['back', 'use', 'on', 'in', 'mm', 'deg'],
];

test.each(WORDS)('%s may name a property, a value, a block, a member and a definition', (word) => {
  expect(says(`${word}: 3 mm`)).toEqual([`${word} = 0.003 length`]);
  expect(says(`${word}: "text"`)).toEqual([`${word} = "text"`]);
  expect(says(`${word}.${word}: 3`)).toEqual([`${word}.${word} = 3`]);
  expect(says(`p: ${word}`)).toEqual([`p = ${word}`]);
  expect(says(`p: ${word} ${word}: 3`)).toEqual([`p = ${word}`, `${word} = 3`]);
  expect(says(`p: ${word}, ${word}`)).toEqual([`p = [${word}, ${word}]`]);
  expect(says(`change ${word}: ${word} -> ${word}`)).toEqual([`change ${word} ${word} -> ${word}`]);
  expect(says(`add ${word}`)).toEqual([`add ${word} { }`]);
  expect(says(`drop ${word}\n${word}: 3`)).toEqual([`drop ${word}`, `${word} = 3`]);
  expect(says(`hold ${word} by ${word}`)).toEqual([`hold ${word} by ${word}`]);
  expect(says(`hold ${word} at ${word} by ${word}`)).toEqual([`hold ${word} at ${word} by ${word}`]);
  expect(says(`expect ${word}: ${word}`)).toEqual([`expect ${word} ${word}`]);
  expect(says(`with ${word}`)).toEqual([`with ${word}`]);
  expect(says(`a { ${word} { b: 1 } }`)).toEqual([expect.stringContaining('= 1')]);

  const { definition } = file(`recipe ${word} from ${word} { }`).definitions[0]!;
  expect(definition.problems).toEqual([]);
  expect([definition.name.text, definition.relation?.target.text]).toEqual([word, word]);
});

test('a property named like a definition does not start one, not even in the first column', () => {
  const facts = file('recipe a from b {\nwood: ebony\nstrings: light-12\nmodel { wood: x }\n}');
  expect(facts.problems).toEqual([]);
  expect(facts.definitions.map(({ definition }) => [definition.name.text, definition.statements.length])).toEqual([
    ['a', 3],
  ]);
});
