/** Whatever is typed, half typed or dropped on the reader, it answers: no exception, no hang, no number that is none. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { FileFacts, Problem, Span } from '../../language/facts/facts.js';
import { createParser, readFile, readWords } from '../../language/recipes/shelf/reader.js';

const parser = createParser();
const TOUR = readFileSync(new URL('../grammar/tour.bookmatch', import.meta.url), 'utf8');
/** About 150 lines: the tour, and half of it again with other line ends. */
const SAMPLE = `${TOUR}\n${TOUR.slice(0, TOUR.length * 0.7)
  .replaceAll('\n', '\r\n')
  .replaceAll('tarn', 'dune')}`;

/** Reads a text and holds the answer to what every answer must be; what `before` already said was held to it before. */
function read(text: string, before?: FileFacts): FileFacts {
  const facts = readFile('fuzz.bookmatch', text, parser, before);
  const known = new Set(before?.definitions.map(({ definition }) => definition));
  const fresh = facts.definitions.filter(({ definition }) => !known.has(definition));
  const lines = text.split(/\r\n|\n|\r/);
  const problems: [Problem, number][] = facts.problems.map((problem) => [problem, 0]);
  for (const { definition, line } of fresh) {
    within(lines, definition.span, line);
    for (const problem of definition.problems) problems.push([problem, line]);
  }
  for (const [problem, line] of problems) {
    within(lines, problem.span, line);
    if (problem.message.trim() === '' || /undefined|NaN|\bToken\b|PATH|Expecting/.test(problem.message)) {
      throw new Error(`what is this message for: ${problem.message}`);
    }
  }
  JSON.stringify(fresh, (key, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${key} is ${value}`);
    return value;
  });
  return facts;
}

function within(lines: readonly string[], { start, end }: Span, firstLine: number): void {
  for (const { line, character } of [start, end]) {
    const length = lines[firstLine + line]?.length;
    if (length === undefined || character < 0 || character > length) {
      throw new Error(`no place ${firstLine + line}:${character}`);
    }
  }
  if (start.line > end.line || (start.line === end.line && start.character > end.character)) {
    throw new Error('a place that ends before it starts');
  }
}

test('every beginning of a file', () => {
  // What was read at the key before is taken over, as in an editor; so every definition is read at each of its lengths.
  let facts: FileFacts | undefined;
  for (let length = 0; length <= SAMPLE.length; length++) facts = read(SAMPLE.slice(0, length), facts);
  expect(facts?.definitions.length).toBeGreaterThan(15);
});

test('a beginning of a file costs few findings, and never the definitions before it', () => {
  const starts = [...TOUR.matchAll(/^[a-z]+ [a-z]/gm)].map(({ index }) => index);
  let facts: FileFacts | undefined;
  for (let length = 1; length <= TOUR.length; length += 3) {
    facts = read(TOUR.slice(0, length), facts);
    const whole = starts.filter((start) => start < length).length;
    expect(facts.definitions.length).toBeGreaterThanOrEqual(whole - 1);
    const count =
      facts.problems.length + facts.definitions.reduce((sum, one) => sum + one.definition.problems.length, 0);
    // One for the line, one for each block still open around it.
    expect(count, TOUR.slice(Math.max(0, length - 60), length)).toBeLessThanOrEqual(5);
  }
});

test('every single word or sign left out', () => {
  const words = parser.cut(SAMPLE).tokens;
  expect(words.length).toBeGreaterThan(700);
  const whole = read(SAMPLE);
  for (const word of words) {
    const end = word.startOffset + word.image.length;
    read(SAMPLE.slice(0, word.startOffset) + SAMPLE.slice(end), whole);
  }
});

test('leaving out one word or sign that is not a brace costs its definition alone', () => {
  const whole = read(TOUR);
  const sound = whole.definitions.map(({ definition }) => definition);
  for (const word of parser.cut(TOUR).tokens) {
    if (/^[{}]$|^\/\//.test(word.image) || word.startColumn === 1) continue;
    const end = word.startOffset + word.image.length;
    const facts = read(TOUR.slice(0, word.startOffset) + TOUR.slice(end), whole);
    expect(facts.problems).toEqual([]);
    const changed = facts.definitions.filter(({ definition }, i) => definition.source !== sound[i]!.source);
    expect(changed.length, word.image).toBeLessThanOrEqual(1);
    expect(
      changed.reduce((sum, one) => sum + one.definition.problems.length, 0),
      word.image,
    ).toBeLessThanOrEqual(2);
  }
});

const PIECES = [
  ...['{', '}', '(', ')', ',', ':', '->', '..', '±', '"', '"text"', '\n', '\n', ' ', '  ', '//', '/*', '*/', '.', ';'],
  ...['recipe', 'wood', 'from', 'is', 'change', 'add', 'drop', 'hold', 'by', 'at', 'with', 'because', 'note', 'per'],
  ...['top', 'a.b', 'x', '3', '2.85', '7/64', '1 3/4', '2,5', 'mm', 'kg/m³', '%', "'", '2026-03-14', '9-9-9', '\u0000'],
  ...['é', '🎸', '\u2028', '\uFEFF', '\r', '\\', '<<<<', '-', '−', '1e999', '0/0', '99999999999999999999', 'unknown'],
];

test('soups of words and signs', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...PIECES), { maxLength: 80 }), fc.boolean(), (pieces, spaced) => {
      const text = pieces.join(spaced ? ' ' : '');
      read(text);
      read(`recipe a from b {\n${text}\n}\nrecipe c from a {\n}`);
    }),
    { numRuns: 500 },
  );
});

const BLANK = /[\s\u200B]/g;

test('any characters at all', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 120 }), (text) => {
      read(text);
      if (text.includes('\u0000')) return;
      // Every sign is a word or part of one: nothing is passed over.
      const words = parser.cut(text).tokens;
      expect(
        words
          .map(({ image }) => image)
          .join('')
          .replace(BLANK, ''),
      ).toBe(text.replace(BLANK, ''));
      expect(readWords(text, parser)).toHaveLength(words.length);
    }),
    { numRuns: 300 },
  );
});

test('taking over earlier facts gives what a fresh reading gives, through a run of edits', () => {
  const edit = fc.tuple(fc.nat(), fc.nat(12), fc.constantFrom(...PIECES));
  fc.assert(
    fc.property(fc.array(edit, { maxLength: 12 }), (edits) => {
      let text = TOUR;
      let facts = readFile('a', text, parser);
      for (const [at, length, piece] of edits) {
        const from = at % (text.length + 1);
        text = text.slice(0, from) + piece + text.slice(from + length);
        facts = readFile('a', text, parser, facts);
      }
      expect(facts).toEqual(readFile('a', text, parser));
    }),
    { numRuns: 25 },
  );
});

test.each([
  ['opening braces', '{'.repeat(20_000)],
  ['closing braces', '}'.repeat(20_000)],
  ['nested blocks', `recipe a from b {${'x {'.repeat(20_000)}`],
  ['braces back and forth', `recipe a from b {${'} a {'.repeat(10_000)}`],
  ['closing too early', `recipe a from b {${'} a '.repeat(10_000)}`],
  ['points', `recipe a from b { p: ${'('.repeat(20_000)} }`],
  ['one long list', `recipe a from b { p: ${'3 mm, '.repeat(20_000)}4 mm }`],
  ['one long size', `recipe a from b { p: ${'3 mm x '.repeat(20_000)}4 mm }`],
  ['one long path', `recipe a from b { ${'a.'.repeat(20_000)}a: 3 }`],
  ['one long word', `recipe a from b { ${'a-'.repeat(20_000)}a: 3 ${'m'.repeat(20_000)} }`],
  ['one long number', `recipe a from b { p: ${'9'.repeat(20_000)} mm ${'1/'.repeat(20_000)} }`],
  ['one long unit', `recipe a from b { p: 3 ${'m/'.repeat(20_000)}m }`],
  ['broken lines', `recipe a from b {\n${'height:\n'.repeat(3_000)}}`],
  ['lines outside', 'height: 3 mm\n'.repeat(20_000)],
  ['heads', 'recipe a from b\n'.repeat(3_000)],
  ['quotes', '"'.repeat(20_001)],
  ['comments', '/*'.repeat(20_000)],
])('much of one thing takes no more than its time: %s', (_, text) => {
  const start = performance.now();
  const facts = read(text);
  expect(performance.now() - start).toBeLessThan(8_000);
  expect(facts.definitions.length).toBeLessThanOrEqual(3_000);
});
