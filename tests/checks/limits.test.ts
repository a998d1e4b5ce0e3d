/** Limits that speak: what goes beyond one is named, and everything else is there as ever. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { LIMITS } from '../../language/facts/limits.js';
import { PLATE_LIMITS } from '../../language/mechanics/plate/index.js';
import { bracedShop, OWN } from '../recipes/braced-shop.js';
import { check } from './marked-text.js';

const many = (count: number, text: (i: number) => string) =>
  Array.from({ length: count }, (_, i) => text(i)).join('\n');
const members = (part: string, count: number) =>
  `model m { ${part} { ${many(count, (i) => (part.endsWith('map') ? `p-${i}.thickness: 2.8 mm` : `b-${i}.width: 5 mm`))} } }`;
const FINE = 'recipe fine { top.thickness: 2.8 mm }\n';

/** What goes beyond each limit, with words of the finding that says so. */
const BEYOND: readonly (readonly [keyof typeof LIMITS | keyof typeof PLATE_LIMITS, string, string])[] = [
  ['fileCharacters', `// ${'x'.repeat(LIMITS.fileCharacters)}`, '5.0 million characters'],
  ['definitions', many(LIMITS.definitions + 1, (i) => `rig s-${i} { }`), 'more than 2000 definitions'],
  [
    'fileWords',
    many(50, (i) => `model m-${i} { ${'note "a" '.repeat(LIMITS.words / 2 - 10)} }`),
    'more than 100000 words',
  ],
  ['words', `model m { ${'note "a" '.repeat(LIMITS.words / 2)} }`, 'more than 10000 words'],
  ['pathCharacters', `model m { ${'a.'.repeat(50_000)}b: 3 mm }`, 'more than 200 are not read'],
  ['textCharacters', `model m { note "${'x'.repeat(1_000_000)}" }`, 'more than 10000 are not read'],
  ['blocks', `model m ${'{ a '.repeat(1000)}${'}'.repeat(1000)}`, 'more than 100 deep'],
  ['words', `model m ${'{ a '.repeat(100_000)}${'}'.repeat(100_000)}`, 'more than'],
  ['generations', many(300, (i) => `recipe r-${i + 1} from r-${i} { }`), 'more than 250 recipes'],
  ['braces', members('bracing', PLATE_LIMITS.braces + 1), 'The top has 61 braces'],
  ['braces', members('back-bracing', 300), 'The back has 300 braces'],
  ['mapPoints', members('top.map', PLATE_LIMITS.mapPoints + 1), 'of the top is given at 201 points'],
  ['mapPoints', members('back.map', 300), 'of the back is given at 300 points'],
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

describe('every limit', () => {
  const sources = readdirSync('language', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.includes('generated'))
    .map((name) => readFileSync(join('language', name), 'utf8'));

  it.each([
    ...Object.keys(LIMITS).map((limit) => ['LIMITS', limit] as const),
    ...Object.keys(PLATE_LIMITS).map((limit) => ['PLATE_LIMITS', limit] as const),
  ])('%s.%s is kept by somebody, and met by a text above', (table, limit) => {
    const reads = new RegExp(`\\b${table}\\.${limit}\\b`);
    expect(sources.some((text) => reads.test(text))).toBe(true);
    expect(BEYOND.map(([met]) => met)).toContain(limit);
  });
});

it('a plate beyond the limits has its mass, and says of its resonances why they are not there; its siblings have theirs', () => {
  const braces = many(PLATE_LIMITS.braces, (i) => {
    const at = 60 + i;
    return `add bracing.b-${i} { from: (${at} mm, -40 mm)  to: (${at} mm, 40 mm)  width: 5 mm  height: 8 mm }`;
  });
  const points = many(PLATE_LIMITS.mapPoints + 1, (i) => `p-${i} { at: (${60 + i} mm, 0 mm)  thickness: 2.8 mm }`);
  const { workshop, checks } = bracedShop(
    `recipe v-2 from v-1 { ${braces} }\nrecipe v-3 from v-1 { top.map { ${points} } }`,
  );
  for (const [name, words] of [
    ['v-2', 'No more than 60 braces'],
    ['v-3', 'No more than 200 points'],
  ] as const) {
    const started = performance.now();
    const evaluation = workshop.inFull(name)!;
    const resonance = evaluation.derived('top.main-resonance');
    expect(resonance?.known === false && resonance.trouble).toContain(words);
    expect(evaluation.number('top.mass')).toBeGreaterThan(0);
    // The solver has not begun: it would take some seconds.
    expect(performance.now() - started, name).toBeLessThan(1000);
  }
  expect(checks.file(OWN).filter(({ code }) => code === 'too-many-parts')).toHaveLength(2);
  expect(workshop.inFull('v-1')!.derived('top.main-resonance')?.known).toBe(true);
});
