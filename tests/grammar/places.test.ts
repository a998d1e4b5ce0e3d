import { expect, test } from 'vitest';
import type { Span } from '../../language/facts/facts.js';
import { createParser, readFile, readWords } from '../../language/recipes/shelf/reader.js';

const parser = createParser();
const read = (text: string) => readFile('a.bookmatch', text, parser);

/** The text a span covers, lines counted from `firstLine`. */
function at(text: string, { start, end }: Span, firstLine = 0): string {
  const lines = text.split('\n').slice(firstLine + start.line, firstLine + end.line + 1);
  lines[lines.length - 1] = lines[lines.length - 1]!.slice(0, end.character);
  lines[0] = lines[0]!.slice(start.character);
  return lines.join('\n');
}

const TEXT = `// a comment before

recipe tarn-7 from tarn-6 {
  top { edge.thickness: 2.45 mm ± 0.05 mm }
  change bracing.x-bass.height: 15 mm -> 14 mm   // why
  hold top.mass by top.thickness
}   rig r { span: 500 mm }
`;

test('every word is found where it stands, lines counted from the definition', () => {
  const [{ definition, line }, rig] = read(TEXT).definitions as [Entry, Entry];
  const covered = (span: Span): string => at(TEXT, span, line);
  expect(line).toBe(2);
  expect(definition.span.start).toEqual({ line: 0, character: 0 });
  expect(covered(definition.span)).toBe(definition.source);
  expect(definition.source).toMatch(/^recipe tarn-7[^]*\}$/);
  expect(covered(definition.head)).toBe('recipe tarn-7 from tarn-6');
  expect(covered(definition.name.span)).toBe('tarn-7');
  expect(covered(definition.relation!.target.span)).toBe('tarn-6');

  const [block, change, hold] = definition.statements;
  if (block?.kind !== 'block' || change?.kind !== 'change' || hold?.kind !== 'hold')
    throw new Error('other statements');
  expect(covered(block.span)).toBe('top { edge.thickness: 2.45 mm ± 0.05 mm }');
  const [property] = block.statements;
  if (property?.kind !== 'property' || property.value.kind !== 'quantity') throw new Error('other statement');
  expect(property.path.text).toBe('top.edge.thickness');
  expect(covered(property.path.span)).toBe('edge.thickness');
  expect(property.path.segments.map((word) => [word.text, covered(word.span)])).toEqual([
    ['edge', 'edge'],
    ['thickness', 'thickness'],
  ]);
  expect(property.value.written).toBe('2.45 mm ± 0.05 mm');
  expect(covered(property.value.span)).toBe('2.45 mm ± 0.05 mm');
  expect(covered(property.value.unitSpan!)).toBe('mm');
  expect(covered(change.span)).toBe('change bracing.x-bass.height: 15 mm -> 14 mm');
  expect(covered(change.new!.span)).toBe('14 mm');
  expect(covered(hold.by!.span)).toBe('top.thickness');

  expect(rig.line).toBe(6);
  expect(at(TEXT, rig.definition.span, rig.line)).toBe('rig r { span: 500 mm }');
});

type Entry = ReturnType<typeof read>['definitions'][number];

test('a definition that moved down the file says the very same', () => {
  const moved = read(`\n\n// more\n${TEXT}`);
  const before = read(TEXT);
  expect(moved.definitions.map(({ definition }) => definition)).toEqual(
    before.definitions.map(({ definition }) => definition),
  );
  expect(moved.definitions.map(({ line }) => line)).toEqual(before.definitions.map(({ line }) => line + 3));
});

test('problems inside a definition move with it, those outside count from the file', () => {
  const facts = read('\nfoo\nrecipe a from b {\n  height:\n  note "abc\n}\n}');
  expect(facts.problems.map(({ code, span }) => [code, span.start.line])).toEqual([
    ['unreadable-line', 1],
    ['stray-brace', 6],
  ]);
  expect(facts.definitions[0]!.definition.problems.map(({ code, span }) => [code, span.start.line])).toEqual([
    ['unreadable-line', 1],
    ['unclosed-text', 2],
  ]);
});

test('what was read before is taken over when its text is the same, and the result is that of a fresh reading', () => {
  const before = read(TEXT);
  const edited = `\n${TEXT.replace('500 mm', '600 mm')}`;
  const after = readFile('a.bookmatch', edited, parser, before);
  expect(after).toEqual(read(edited));
  expect(after.definitions[0]!.definition).toBe(before.definitions[0]!.definition);
  expect(after.definitions[1]!.definition).not.toBe(before.definitions[1]!.definition);
});

test('two definitions with one text stay two', () => {
  const twice = 'rig r { }\nrig r { }';
  const before = read('rig r { }');
  const after = readFile('a.bookmatch', twice, parser, before);
  expect(after.definitions[0]!.definition).not.toBe(after.definitions[1]!.definition);
  expect(after).toEqual(read(twice));
});

test('words are marked by what they are where they stand', () => {
  const text =
    'recipe with from a { // why\n  with with change with: with -> 3 mm note "text" day: 2026-01-01 top {\n note ? } }';
  const marked = readWords(text, parser);
  expect(marked.map((word) => word.text)).toEqual(marked.map((word) => at(text, word.span)));
  expect(marked.map((word) => `${word.text} ${word.kind}`)).toEqual([
    'recipe keyword',
    'with name',
    'from keyword',
    'a name',
    '{ sign',
    '// why comment',
    'with keyword',
    'with name',
    'change keyword',
    'with path',
    ': sign',
    'with choice',
    '-> sign',
    '3 number',
    'mm unit',
    'note keyword',
    '"text" text',
    'day path',
    ': sign',
    '2026-01-01 date',
    'top path',
    '{ sign',
    'note unreadable',
    '? unreadable',
    '} sign',
    '} sign',
  ]);
});
