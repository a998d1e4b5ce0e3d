/** Where a line of recipes steps to the right. */
import { expect, it } from 'vitest';
import { drawnBelow, drawnInLine } from '../../extension/trees/single-descent.js';

interface Entry {
  readonly kind: 'model' | 'recipe' | 'build';
  readonly name: string;
  readonly children: readonly Entry[];
}

const recipe = (name: string, ...children: readonly Entry[]): Entry => ({ kind: 'recipe', name, children });
const build = (name: string): Entry => ({ kind: 'build', name, children: [] });

/** The tree as it is drawn. */
function drawn(entries: readonly Entry[], depth = 0): readonly string[] {
  return entries.flatMap((entry) => [`${'  '.repeat(depth)}${entry.name}`, ...drawn(drawnBelow(entry), depth + 1)]);
}

it('goes on below where one alone descends, and to the right where a line forks', () => {
  const line = recipe(
    'v-31',
    build('no-31'),
    recipe('v-32', recipe('v-33', recipe('v-34', recipe('v-35')), recipe('v-36'), build('no-33'))),
  );
  const model: Entry = { kind: 'model', name: 'vennick', children: [line] };
  expect(drawn([model])).toEqual([
    'vennick',
    '  v-31',
    '    no-31',
    '  v-32',
    '  v-33',
    '    v-34',
    '    v-35',
    '    v-36',
    '    no-33',
  ]);
});

it('a line of forty has the depth of one of two', () => {
  let last = recipe('r-40');
  for (let i = 39; i > 0; i--) last = recipe(`r-${i}`, last);
  expect(drawnInLine(last)).toHaveLength(40);
  expect(drawn(drawnInLine(last)).every((name) => !name.startsWith(' '))).toBe(true);
});
