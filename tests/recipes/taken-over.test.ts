/**
 * What is taken over from the evaluation before an edit, or from that of the parent, is what would have been worked out anew: to
 * the last digit, answers and slopes. Held against evaluations that know of no other.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createParser } from '../../language/grammar/parse.js';
import { concretePaths } from '../../language/recipes/evaluation/effects.js';
import { Evaluation } from '../../language/recipes/evaluation/evaluation.js';
import { Leanings } from '../../language/recipes/evaluation/leanings.js';
import { NO_ANALYST } from '../../language/recipes/evaluation/analyst.js';
import { Traces } from '../../language/recipes/evaluation/traces.js';
import { readFile } from '../../language/recipes/shelf/reader.js';
import { openWorkshop, type OpenWorkshop } from '../../language/shop.js';
import { madeShop } from '../scale/made-shop.js';
import { SEEDS } from '../seed.js';
import { Dice } from '../soak/dice.js';
import { numberChanged, rewritten } from '../soak/typing.js';

const EXAMPLE = 'examples/hollin-reach';
const parser = createParser();

function exampleShop(): Map<string, string> {
  const names = readdirSync(EXAMPLE).filter((name) => name.endsWith('.bookmatch'));
  return new Map(names.map((name) => [name, readFileSync(`${EXAMPLE}/${name}`, 'utf8')]));
}

/** Everything that can be asked of a recipe, or why it cannot be told. */
function told(evaluation: Evaluation) {
  return concretePaths(evaluation.derivations.all, evaluation).map((path) => {
    const answer = evaluation.derived(path);
    return [path, answer, evaluation.uncertainty(path), [...evaluation.gradient(path)].sort()];
  });
}

function put({ shelf }: OpenWorkshop, uri: string, text: string): void {
  shelf.put(readFile(uri, text, parser, shelf.file(uri)));
}

const EDITS = 12;

describe.each([
  ['the example shop', exampleShop()],
  ['chains of recipes', new Map(madeShop(2, 6, 'by recipe'))],
])('%s', (_, files) => {
  it.each(SEEDS)('after any edits, drawn by %i', (seed) => {
    const dice = new Dice(seed);
    const shop = openWorkshop({ parser });
    const texts = new Map(files);
    for (const [uri, text] of texts) put(shop, uri, text);
    const traces = new Traces();
    let compared = 0;
    for (let edit = 0; edit < EDITS; edit++) {
      const uri = dice.one([...texts.keys()]);
      // Mostly a number, now and then the whole of a text, and back again.
      const how = dice.below(5);
      const text =
        how === 0
          ? rewritten(texts.get(uri)!, dice)
          : how === 1
            ? files.get(uri)!
            : numberChanged(texts.get(uri)!, dice);
      texts.set(uri, text);
      put(shop, uri, text);
      // Some are looked at each time, so that others have an older one to take over from.
      for (const name of shop.shelf.names('recipe').filter(() => dice.below(4) === 0)) {
        const evaluation = shop.workshop.evaluation(name);
        if (!evaluation) continue;
        const alone = new Evaluation(evaluation.derivations, evaluation.ground, traces, NO_ANALYST);
        if (evaluation.analyst !== NO_ANALYST) continue;
        expect(told(evaluation)).toEqual(told(alone));
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(EDITS / 2);
  });
});

it('when there were too many words to remember, it begins anew', () => {
  const leanings = new Leanings();
  for (let i = 0; i < 5002; i++) leanings.note(`bracing.x-${i}.mass`, []);
  expect(leanings.era).toBe(1);
});
