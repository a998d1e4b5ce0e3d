/** What a small step in one number of a recipe does to what takes the solver, against the recipe solved with that step. */
import { describe, expect, it } from 'vitest';
import type { Held } from '../../language/recipes/instrument.js';
import { movesOf } from '../../language/editing/moves.js';
import { bracedShop } from './braced-shop.js';

const { workshop } = bracedShop(`recipe v-2 from v-1 { because "Thinned at the edge."  top.edge-thickness: 2.4 mm }`);

const QUANTITIES = [
  'top.main-resonance',
  'top.effective-mass',
  'top.effective-area',
  'bridge.rotation',
  'bridge.dip',
  'bridge.belly',
  'resonance.air',
  'resonance.top',
  'resonance.back',
];

function stepped(values: ReadonlyMap<string, Held>, path: string, step: number): ReadonlyMap<string, Held> {
  const held = values.get(path)!;
  if (held.value.kind !== 'quantity') throw new Error(path);
  const quantity = { ...held.value.quantity, si: held.value.quantity.si + step };
  return new Map(values).set(path, { ...held, value: { ...held.value, quantity } });
}

describe.each([
  ['v-1', ['top.thickness', 'back.thickness', 'bracing.x-bass.height', 'bracing.x-treble.width', 'bridge.height']],
  ['v-1', ['bridge.mass', 'body.depth.tail', 'soundhole.diameter']],
  ['v-2', ['top.thickness', 'top.edge-thickness']],
] as const)('of %s', (recipe, paths) => {
  const evaluation = workshop.inFull(recipe)!;
  const { values } = workshop.instrument(recipe)!;

  it.each(paths)('%s', (path) => {
    const leaf = evaluation.ground.leaf(path)!;
    const step = 1e-3 * leaf.si;
    const [more, less] = [step, -step].map((each) => workshop.evaluateInFull(stepped(values, path, each)));
    // A hole of another size is another mesh, which the plate's own slopes leave out: there the air alone is told.
    const told = path === 'soundhole.diameter' ? ['resonance.air'] : QUANTITIES;
    for (const quantity of told) {
      const difference = (more!.number(quantity)! - less!.number(quantity)!) / (2 * step);
      const slope = evaluation.gradient(quantity).get(leaf.id) ?? 0;
      // What ten per cent of the size move by less than a thousandth is nothing to a maker.
      const least = (0.01 * Math.abs(evaluation.number(quantity)!)) / leaf.si;
      const share = path === 'soundhole.diameter' ? 0.15 : 0.04;
      expect(Math.abs(slope - difference), quantity).toBeLessThanOrEqual(share * Math.max(Math.abs(difference), least));
    }
  });
});

describe('a hover', () => {
  it('has hertz, grams and degrees to say of a brace', () => {
    const moves = movesOf('bracing.x-bass.height', 1e-4, workshop.inFull('v-1')!).map(({ path }) => path);
    expect(moves).toEqual(expect.arrayContaining(['resonance.air', 'bracing.mass', 'bridge.rotation']));
  });

  it('has them for a string set and for the bridge, which pull at the top and weigh it down', () => {
    const evaluation = workshop.inFull('v-1')!;
    expect(movesOf('bridge.mass', 1e-3, evaluation).map(({ path }) => path)).toContain('resonance.top');
    const pull = [...evaluation.gradient('bridge.rotation')].filter(([id]) => id.startsWith('strings light-12: '));
    expect(pull.filter(([, slope]) => slope !== 0).length).toBeGreaterThan(5);
  });
});
