/** A shop to start from: whatever is answered, every line is valid, finds nothing to complain of, and is laid out. */
import { describe, expect, it } from 'vitest';
import { formatted } from '../../language/editing/formatting/formatting.js';
import { nameFor, type StarterAnswers, starterShop } from '../../language/editing/starter/starter-shop.js';
import { createParser } from '../../language/grammar/parse.js';
import { deskOf } from './desk-of.js';

const parser = createParser();

const NAMES = [
  { shop: 'Hollin Reach Instruments', model: 'Concert' },
  { shop: '', model: '' },
  { shop: '  “Zur Fichte”\n& Söhne, 3/4" \\ ', model: 'Größe 00 (neu)' },
  { shop: 'recipe', model: 'from' },
  { shop: 'shop', model: 'shop' },
  { shop: '12', model: '12' },
  { shop: 'Гитары', model: 'first-top' },
  { shop: 'top', model: 'sitka-spruce' },
] as const;

const ALL: readonly StarterAnswers[] = (['metric', 'inch'] as const).flatMap((units) =>
  (['steel-string', 'classical'] as const).flatMap((kind) => NAMES.map((names) => ({ ...names, units, kind }))),
);

describe.each(ALL)('a shop to start from: $shop, $units, $kind, $model', (answers) => {
  const files = starterShop(answers, parser);
  const desk = deskOf(...files.map(({ text }) => text));

  it('gives nothing to complain of', () => {
    const found = files.flatMap((_, i) => desk.checks.file(`file:${i}`));
    const complaints = found.filter(({ severity }) => severity === 'error' || severity === 'warning');
    expect(complaints.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
  });

  it('is laid out already', () => {
    for (const { text } of files) expect(formatted(text, parser)).toBe(text);
  });

  it('computes: the expectation is met, the hold solved, one change counted', () => {
    const model = nameFor(answers.model, 'first-model');
    const { workshop } = desk;
    expect(workshop.expectations(`${model}-1`).map(({ outcome }) => outcome)).toEqual(['met']);
    expect(workshop.instrument(`${model}-2`)?.solvedHolds.map(({ outcome }) => outcome.kind)).toEqual(['solved']);
    expect(workshop.count(`${model}-2`).total).toBe(0);
    expect(workshop.count(`${model}-3`).total).toBe(1);
  });

  it('has three files of different names', () => {
    const names = files.map(({ name }) => name);
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(3);
    for (const name of names) expect(name).toMatch(/^[\p{Ll}\p{Lo}\d-]+\.bookmatch$/u);
  });
});
