/** Limits that speak: what goes beyond one is named, and everything else is there as ever. */
import { describe, expect, it } from 'vitest';
import { LIMITS } from '../../language/facts/limits.js';
import { check } from './marked-text.js';

const many = (count: number, text: (i: number) => string) =>
  Array.from({ length: count }, (_, i) => text(i)).join('\n');
const FINE = 'recipe fine { top.thickness: 2.8 mm }\n';

/** What goes beyond each limit, with words of the finding that says so. */
const BEYOND: readonly (readonly [keyof typeof LIMITS, string, string])[] = [
  ['fileCharacters', `// ${'x'.repeat(LIMITS.fileCharacters)}`, '5.0 million characters'],
  ['definitions', many(LIMITS.definitions + 1, (i) => `rig s-${i} { }`), 'more than 2000 definitions'],
  [
    'fileWords',
    many(50, (i) => `model m-${i} { ${'note "a" '.repeat(LIMITS.words / 2 - 10)} }`),
    'more than 200000 words',
  ],
  ['words', `model m { ${'note "a" '.repeat(LIMITS.words / 2)} }`, 'more than 10000 words'],
  ['pathCharacters', `model m { ${'a.'.repeat(50_000)}b: 3 mm }`, 'more than 200 are not read'],
  ['textCharacters', `model m { note "${'x'.repeat(1_000_000)}" }`, 'more than 10000 are not read'],
  ['blocks', `model m ${'{ a '.repeat(1000)}${'}'.repeat(1000)}`, 'more than 100 deep'],
  ['words', `model m ${'{ a '.repeat(100_000)}${'}'.repeat(100_000)}`, 'more than'],
  ['generations', many(300, (i) => `recipe r-${i + 1} from r-${i} { }`), 'more than 250 recipes'],
  ['findings', many(LIMITS.findings + 1, (i) => `recipe r-${i} { }`), 'This file has'],
  ['alike', `model m { ${many(60, (i) => `nosuch-${i}: 3 mm`)} }`, 'more of the same: 50 are told'],
];

describe.each(BEYOND)('%s', (limit, text, words) => {
  it('is named where it is met', () => {
    const messages = check(text).findings.map(({ message }) => message);
    expect(
      messages.some((message) => message.includes(words)),
      messages.slice(0, 5).join('\n'),
    ).toBe(true);
    for (const message of messages) expect(message.length, message.slice(0, 200)).toBeLessThan(1000);
  });

  // A file that is not read at all has nothing else in it.
  it.skipIf(limit === 'fileCharacters')('costs nothing that stands before it', () => {
    const { findings } = check(FINE + text);
    const codes = findings.filter(({ place }) => 'definition' in place && place.definition.name.text === 'fine');
    expect(codes.map(({ code }) => code)).toEqual(['no-parent']);
  });
});

it('ordinary texts of a length just below go through', () => {
  expect(check(`model m { note "${'x'.repeat(LIMITS.textCharacters)}" }`).findings).toEqual([]);
  expect(check(many(LIMITS.definitions, (i) => `rig s-${i} { }`)).findings.map(({ code }) => code)).not.toContain(
    'too-long',
  );
});
