/**
 * What is written and cannot be used is unknown, and so is everything computed from it: never zero, never the usual. Every
 * quantity that is known, and every value it reads, as its own inputs tell; what is new is tried by itself.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { concretePaths } from '../../language/recipes/evaluation/effects.js';
import type { Evaluation } from '../../language/recipes/evaluation/evaluation.js';
import type { Value } from '../../language/facts/facts.js';
import type { Held } from '../../language/recipes/instrument/instrument.js';
import type { Workshop } from '../../language/recipes/workshop.js';
import { deskOf, VENNICK } from '../editing/desk-of.js';

const SHOP = new URL('../../examples/hollin-reach/', import.meta.url);
const TEXTS = readdirSync(SHOP)
  .filter((name) => name.endsWith('.bookmatch'))
  .map((name) => readFileSync(new URL(name, SHOP), 'utf8'));
const SPAN = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/** Ways in which a value is there and of no use. */
const SPOILT: readonly (readonly [string, (value: Value) => Value])[] = [
  ['without a unit', (value) => withDimension(value, 'number')],
  ['in a unit of something else', (value) => withDimension(value, 'luminous nonsense')],
  ['unknown', () => ({ kind: 'unknown', span: SPAN })],
  ['unreadable', () => ({ kind: 'unreadable', written: '2,6,9', span: SPAN })],
];

function withDimension(value: Value, name: string): Value {
  if (value.kind !== 'quantity') return { kind: 'unreadable', written: '?', span: SPAN };
  const { quantity } = value;
  const exponents = quantity.dimension.exponents.map((each, i) => (name === 'number' ? 0 : i === 0 ? each + 7 : each));
  return {
    ...value,
    quantity: { ...quantity, unit: undefined, dimension: { ...quantity.dimension, name, exponents } },
  };
}

/** The path under which the value stands that an input was read from. */
function whereWritten(path: string, values: ReadonlyMap<string, Held>): string | undefined {
  const whole = path.slice(0, Math.max(path.lastIndexOf('.'), 0));
  return values.has(path) ? path : values.has(whole) && values.get(whole)!.value.kind !== 'name' ? whole : undefined;
}

/** For each value, the quantities that read it. */
function readersIn(evaluation: Evaluation, values: ReadonlyMap<string, Held>): ReadonlyMap<string, readonly string[]> {
  const readers = new Map<string, string[]>();
  for (const path of concretePaths(evaluation.derivations.all, evaluation)) {
    const answer = evaluation.derived(path);
    if (!answer?.known || answer.given) continue;
    for (const input of answer.inputs) {
      const written = whereWritten(input.path, values);
      if (written === undefined || !isPlain(values.get(written)!.value)) continue;
      readers.set(written, [...(readers.get(written) ?? []), path]);
    }
  }
  return readers;
}

/** A number of its own dimension would be as good without a unit: counts and shares are left out. */
function isPlain(value: Value): boolean {
  return value.kind !== 'quantity' || value.quantity.dimension.exponents.some((each) => each !== 0);
}

function expectUnknown(workshop: Workshop, recipe: string): number {
  const { values } = workshop.instrument(recipe)!;
  const evaluationOf = workshop.evaluation(recipe)!;
  const readers = readersIn(evaluationOf, values);
  let tried = 0;
  for (const [written, quantities] of readers) {
    for (const [how, spoil] of SPOILT) {
      // Said to be unknown, it may still be computed.
      if (how === 'unknown' && evaluationOf.derivations.find(written)) continue;
      const held = values.get(written)!;
      const spoilt = new Map(values).set(written, { ...held, value: spoil(held.value) });
      const evaluation = workshop.evaluate(spoilt);
      for (const path of quantities) {
        tried++;
        const answer = evaluation.derived(path)!;
        const said = `${recipe}: ${path} with ${written} ${how}`;
        expect(answer.known, said).toBe(false);
        if (!answer.known) expect(answer.missing.join() + (answer.trouble ?? ''), said).not.toBe('');
      }
    }
  }
  return tried;
}

describe('a value that cannot be used', () => {
  const { workshop, shelf } = deskOf(...TEXTS);
  // One recipe of each model, the last of its line, which has most behind it.
  const recipes = shelf.names('model').flatMap((model) => {
    const ofModel = shelf.names('recipe').filter((name) => workshop.lineage(name).model?.name.text === model);
    return ofModel.slice(-1);
  });

  it.each(recipes)('makes unknown what is computed from it in %s', (recipe) => {
    expect(expectUnknown(workshop, recipe)).toBeGreaterThan(100);
  });

  it('makes unknown what is computed from it on a plain steel-string', () => {
    expect(expectUnknown(deskOf(VENNICK).workshop, 'v-31')).toBeGreaterThan(100);
  });
});

it('a size with a number that has no unit is not used at all', () => {
  const { workshop } = deskOf('wood w is sitka-spruce { blank: 22" x 8 1/4" x .170  mass: 400 g }');
  expect(workshop.wood('w')!.number('blank.thickness')).toBeUndefined();
  expect(workshop.wood('w')!.number('blank.length')).toBeUndefined();
  expect(workshop.wood('w')!.derived('density')).toMatchObject({ known: false });
});

it('a thickness that lost its unit is no step of the volume', () => {
  const { workshop } = deskOf(`${VENNICK} recipe v-32 from v-31 { change top.thickness: 2.80 mm -> 2.6 }`);
  expect(workshop.evaluation('v-31')!.derived('body.volume')).toMatchObject({ known: true });
  expect(workshop.evaluation('v-32')!.derived('body.volume')).toMatchObject({
    known: false,
    missing: ['top.thickness'],
  });
});

it('what silence means stands in the catalogue, not in the formulas', () => {
  const derived = new URL('../../language/recipes/derived/', import.meta.url);
  const files = readdirSync(derived, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
  expect(files.length).toBeGreaterThan(10);
  for (const name of files) {
    expect(readFileSync(new URL(name, derived), 'utf8'), name).not.toMatch(/numberIf\([^\n]*\) \?\? -?[\d.]/);
  }
});
