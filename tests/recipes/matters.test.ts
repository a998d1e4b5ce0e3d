/** Whether a change matters is found with its first effect; it must be what all of them say. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { openWorkshop } from '../../language/shop.js';
import { isDiscernible } from '../../language/recipes/evaluation/effects.js';
import { readFile } from '../../language/recipes/shelf/reader.js';
import { ENGLISH } from '../../language/wording/wording.js';
import { madeShop } from '../scale/made-shop.js';

const EXAMPLE = 'examples/hollin-reach';

const SHOPS: readonly (readonly [string, ReadonlyMap<string, string>])[] = [
  ['the example shop', exampleShop()],
  ['chains of recipes', madeShop(2, 12)],
];

it.each(SHOPS)('in %s', (_, files) => {
  const { shelf, workshop, parser } = openWorkshop({ wording: ENGLISH });
  shelf.put(...[...files].map(([uri, text]) => readFile(uri, text, parser)));
  const variables = shelf.names('recipe').flatMap((name) => workshop.count(name).variables.map((one) => one.variable));
  const told = variables.map(({ label, matters }) => ({ label, matters }));
  expect(told).toEqual(variables.map(({ label, effects }) => ({ label, matters: effects.some(isDiscernible) })));
  // Both kinds are there, or it would have shown nothing.
  expect(new Set(told.map(({ matters }) => matters))).toEqual(new Set([true, false]));
});

function exampleShop(): ReadonlyMap<string, string> {
  const names = readdirSync(EXAMPLE).filter((name) => name.endsWith('.bookmatch'));
  return new Map(names.map((name) => [`file:///shop/${name}`, readFileSync(`${EXAMPLE}/${name}`, 'utf8')]));
}
