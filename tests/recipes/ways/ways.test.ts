/** Ways to a wish: whatever is offered, written into the recipe, meets it. */
import { describe, expect, it } from 'vitest';
import { waysTo } from '../../../language/recipes/ways/ways.js';
import { wayEdits } from '../../../language/reports/ways/way-edits.js';
import { randomFrom } from '../builds/made-shops.js';
import { shopOf, TOPS, VENNICK } from '../shop-of.js';
import type { Edit } from '../../../language/checks/finding.js';

/** Ten recipes: a base, and nine that change one thing or another. */
const CHANGES = [
  'change top.thickness: 2.8 mm -> 2.6 mm',
  'change bridge.mass: 27 g -> 24 g',
  'change bracing.x-bass.height: 15.9 mm -> 15 mm  change bracing.x-treble.height: 15.9 mm -> 15 mm',
  'change soundhole.diameter: 101 mm -> 97 mm',
  'change saddle.protrusion: 3.3 mm -> 3.6 mm',
  'change body.depth.tail: 105 mm -> 108 mm',
  'change bracing.x-bass.width: 7.9 mm -> 7 mm',
  'change top.wood: sitka-31 -> sitka-32  hold top.stiffness.along by top.thickness',
  'change scale: 645 mm -> 640 mm',
];
const RECIPES = [
  'recipe v-0 for vennick { top { wood: sitka-31  thickness: 2.8 mm } }',
  ...CHANGES.map((change, i) => `recipe v-${i + 1} from v-0 { because "Another."\n  ${change}\n}`),
];
const QUANTITIES = [
  'top.mass',
  'top.stiffness.along',
  'body.volume',
  'bridge.torque',
  'bracing.mass',
  'strings.total-tension',
];

const text = (recipe: number, replaced: string) =>
  `${TOPS}${VENNICK}${RECIPES.map((each, i) => (i === recipe ? replaced : each)).join('\n')}`;

function applied(source: string, edits: readonly Edit[]): string {
  const at = ({ line, character }: { line: number; character: number }) =>
    source.split('\n').slice(0, line).reduce((sum, each) => sum + each.length + 1, character); // prettier-ignore
  return [...edits]
    .sort((a, b) => at(b.place.span.start) - at(a.place.span.start))
    .reduce(
      (now, { place, text: put }) => now.slice(0, at(place.span.start)) + put + now.slice(at(place.span.end)),
      source,
    );
}

describe('fifty wishes on ten recipes', () => {
  const random = randomFrom(11);
  const wishes = Array.from({ length: 50 }, (_, i) => ({
    recipe: i % 10,
    quantity: QUANTITIES[Math.floor(random() * QUANTITIES.length)]!,
    by: (random() < 0.5 ? -1 : 1) * (0.005 + 0.03 * random()),
  }));
  let [offered, answered] = [0, 0];

  it.each(wishes)('$quantity of v-$recipe by $by', ({ recipe, quantity, by }) => {
    const name = `v-${recipe}`;
    const { workshop } = shopOf(text(recipe, RECIPES[recipe]!));
    const instrument = workshop.instrument(name)!;
    const now = workshop.evaluation(name)!.number(quantity)!;
    const [low, high] = [now * (1 + by) - Math.abs(now * by) / 5, now * (1 + by) + Math.abs(now * by) / 5];
    const held = instrument.holds.map((hold) => hold.quantity);
    const found = waysTo(workshop, instrument.values, { quantity, low, high }, held);
    expect(found.isMet).toBe(false);
    if (found.ways.length > 0) answered += 1;
    for (const way of found.ways) {
      offered += 1;
      const { catalogue, wording } = workshop;
      const edits = wayEdits(instrument.definition, way, {
        catalogue,
        wording,
        instrument: (each) => workshop.instrument(each),
      });
      const rewritten = applied(RECIPES[recipe]!, edits);
      const after = shopOf(text(recipe, rewritten));
      expect(after.problems(), rewritten).toEqual([]);
      const came = after.workshop.evaluation(name)!.number(quantity)!;
      expect(came, rewritten).toBeGreaterThanOrEqual(low - 1e-9 * now);
      expect(came, rewritten).toBeLessThanOrEqual(high + 1e-9 * now);
      // The text has six digits.
      expect(came / way.after).toBeCloseTo(1, 4);
    }
  });

  it('find a way for most of them', () => {
    expect(answered).toBeGreaterThan(35);
    expect(offered).toBeGreaterThan(80);
  });
});

describe('a pair', () => {
  it('of legs counts as one and is offered as one, written as one tweak', () => {
    const { workshop } = shopOf(text(0, RECIPES[0]!));
    const { values, definition } = workshop.instrument('v-4')!;
    const now = workshop.evaluation('v-4')!.number('bracing.mass')!;
    const found = waysTo(workshop, values, { quantity: 'bracing.mass', low: now * 0.93, high: now * 0.95 });
    const legs = found.ways.filter(({ paths }) =>
      paths.some((path) => path.startsWith('bracing.x-') && path.endsWith('.height')),
    );
    expect(legs.map(({ paths }) => paths)).toEqual([['bracing.x-bass.height', 'bracing.x-treble.height']]);
    const { catalogue, wording } = workshop;
    const edits = wayEdits(definition, legs[0]!, {
      catalogue,
      wording,
      instrument: (each) => workshop.instrument(each),
    });
    const after = shopOf(text(4, applied(RECIPES[4]!, edits)));
    expect(after.workshop.count('v-4').total).toBe(workshop.count('v-4').total + 1);
  });

  it('made otherwise already is no pair any more', () => {
    const { workshop } = shopOf(text(0, RECIPES[0]!));
    const found = waysTo(workshop, workshop.instrument('v-7')!.values, { quantity: 'bracing.mass', high: 0.0255 });
    for (const { paths } of found.ways) if (paths[0]!.endsWith('.width')) expect(paths).toHaveLength(1);
  });
});

describe('a wish', () => {
  it('that is met has no ways, one that cannot be met by one change has none either', () => {
    const { workshop } = shopOf(text(0, RECIPES[0]!));
    const { values } = workshop.instrument('v-0')!;
    const now = workshop.evaluation('v-0')!.number('top.mass')!;
    expect(waysTo(workshop, values, { quantity: 'top.mass', high: now * 1.1 })).toMatchObject({
      isMet: true,
      ways: [],
    });
    expect(waysTo(workshop, values, { quantity: 'top.mass', high: now / 10 }).ways).toEqual([]);
    expect(waysTo(workshop, values, { quantity: 'top.colour', high: 1 }).now).toBeUndefined();
  });
});
