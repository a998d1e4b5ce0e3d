/**
 * Every line of the examples, taken out and written again by accepting completions: only what the maker alone knows
 * (numbers, texts, dates, new names, comments) and signs are typed. So whatever the examples show can be found without
 * having learned it. A word counts as found when it is within the twelve rows an editor shows, after at most three letters.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openWorkshop } from '../../language/shop.js';
import { createParser, readFile } from '../../language/recipes/shelf/reader.js';
import { type Keyboard, type WordWritten, writeLine } from '../editing/hand.js';

const root = new URL('../../examples/', import.meta.url);
const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.bookmatch'))
  .map((name) => ({ name, text: readFileSync(new URL(name, root), 'utf8') }));
const parser = createParser();

/** Words that have to be spelled out, and why that is right. */
const EXCEPTIONS: readonly { readonly line: RegExp; readonly words: readonly string[]; readonly reason: string }[] = [
  { line: /resonance\.top: F#/, words: ['F#'], reason: 'a note heard by the maker, as free as a number' },
  {
    line: /\bbass: 6 {3}treble: 4/,
    words: ['treble'],
    reason: 'the unit of the number before is left out on purpose; behind a number its units are offered',
  },
  { line: /: \d+' /, words: ["'"], reason: 'the mark of feet is one key; `ft` is offered' },
];

/** The share of the words and units of all lines that came with a completion when this was written was 94 %. */
const LEAST_SHARE = 0.93;

const needed = new Set<string>();
const totals = new Map<string, { brought: number; all: number }>();

test.each(files)('$name can be written by accepting', ({ name, text }) => {
  const keyboard = shopWithKeyboard();
  const lines = text.split('\n');
  const starts = statementLines(name, text);
  const missing: string[] = [];
  let [brought, all] = [0, 0];
  for (const [at, line] of lines.entries()) {
    if (!starts.has(at)) continue;
    const words = writeLine(keyboard, name, without(lines, at), line);
    expect(words.map((word) => word.text).join(' ')).toBe(wordsOf(line));
    for (const [i, word] of words.entries()) {
      if (word.kind !== 'word' && word.kind !== 'unit') continue;
      all++;
      if (word.how === 'accepted') brought++;
      else if (!isNewName(words, i) && !isException(line, word)) missing.push(`${at + 1}: ${line.trim()} << ${word.text}`);
    }
  }
  totals.set(name, { brought, all });
  expect(missing).toEqual([]);
  expect(all).toBeGreaterThan(20);
});

test('nearly every word comes with a completion', () => {
  const sum = (of: 'brought' | 'all') => [...totals.values()].reduce((so, one) => so + one[of], 0);
  const share = sum('brought') / sum('all');
  console.log(`${sum('brought')} of ${sum('all')} words accepted, ${(100 * share).toFixed(1)} %; the rest are new names`);
  expect(totals.size).toBe(files.length);
  expect([...needed].sort(), 'an exception nobody needs any more').toEqual(EXCEPTIONS.map(({ reason }) => reason).sort());
  expect(share).toBeGreaterThan(LEAST_SHARE);
});

function shopWithKeyboard(): Keyboard {
  const { shelf, workshop, checks } = openWorkshop({ parser });
  const texts = new Map(files.map(({ name, text }) => [name, text]));
  shelf.put(...files.map(({ name, text }) => readFile(name, text, parser)));
  return {
    parser,
    desk: { shelf, workshop, checks, text: (uri) => texts.get(uri) },
    type: (name, text) => {
      texts.set(name, text);
      shelf.put(readFile(name, text, parser, shelf.file(name)));
    },
  };
}

/** Lines that say something: with a word in them that is no comment. */
function statementLines(name: string, text: string): ReadonlySet<number> {
  const lines = new Set<number>();
  for (const { image, startLine } of parser.cut(text).tokens) {
    if (!/^(\/\/|\/\*|[{}])/.test(image)) lines.add((startLine ?? 1) - 1);
  }
  if (lines.size === 0) throw new Error(`${name} says nothing`);
  return lines;
}

/** The text before and behind a line; a line that opens a block takes the block with it. */
function without(lines: readonly string[], at: number): readonly [string, string] {
  let depth = 0;
  let last = at;
  for (let i = at; i < lines.length; i++) {
    for (const { image } of parser.cut(lines[i]!).tokens) depth += image === '{' ? 1 : image === '}' ? -1 : 0;
    last = i;
    if (depth <= 0) break;
  }
  const head = lines.slice(0, at).map((line) => `${line}\n`);
  return [head.join(''), `\n${lines.slice(last + 1).join('\n')}`];
}

function wordsOf(line: string): string {
  return parser
    .cut(line)
    .tokens.map(({ image }) => image)
    .join(' ');
}

/** A word behind the word of a definition or a reading. */
function isNewName(words: readonly WordWritten[], at: number): boolean {
  const opening = /^(shop|rig|strings|appointments|model|wood|recipe|build|order|species|reading)$/;
  return at === 1 && words[2]?.text !== ':' && opening.test(words[0]!.text);
}

function isException(line: string, { text }: WordWritten): boolean {
  const found = EXCEPTIONS.find((exception) => exception.line.test(line) && exception.words.includes(text));
  if (found) needed.add(found.reason);
  return found !== undefined;
}
