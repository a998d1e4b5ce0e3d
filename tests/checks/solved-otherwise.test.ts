/** What the solver says of a plate it did solve reaches the line it is about, and whoever looks at the figures. */
import { expect, it } from 'vitest';
import { bracedShop, OWN } from '../recipes/braced-shop.js';
import { tucked } from '../../language/recipes/derived/layout/tucked.js';

const HALF_OUTSIDE = `recipe v-2 from v-1 {
  because "A trial."
  add bracing.finger-9 { from: (60 mm, -60 mm)  to: (100 mm, -400 mm)  width: 6 mm  height: 6 mm }
  expect top.main-resonance: above 100 Hz
}`;

const notesIn = (text: string) => {
  const { checks } = bracedShop(text);
  return checks.file(OWN).filter(({ code }) => code === 'solved-otherwise');
};

it('stands as a hint at the brace it is about', () => {
  const [note, ...others] = notesIn(HALF_OUTSIDE);
  expect(others).toEqual([]);
  expect(note).toMatchObject({ severity: 'hint', place: { span: { start: { line: 2 } } } });
  expect(note!.message).toMatch(/^The finger-9 runs beyond the top; \d+ % of its length is counted\.$/);
});

it('stands among what is assumed of every figure of that plate', () => {
  const { workshop } = bracedShop(HALF_OUTSIDE);
  for (const path of ['top.main-resonance', 'top.effective-mass', 'bridge.rotation', 'resonance.air']) {
    const derived = workshop.inFull('v-2')!.derived(path);
    expect(derived?.known && derived.assumptions.filter((said) => said.startsWith('The finger-9')), path).toHaveLength(
      1,
    );
  }
});

it('is not told of braces that end in the lining, nor again of what came with the parent', () => {
  expect(notesIn('recipe v-2 from v-1 { because "A trial."  expect top.main-resonance: above 100 Hz }')).toEqual([]);
  const child = 'recipe v-3 from v-2 { because "On."  change bridge.mass: 27 g -> 25 g }';
  expect(notesIn(`${HALF_OUTSIDE}\n${child}`)).toHaveLength(1);
});

it('an end near the rim is carried on to it, and what is measured along the brace still starts where it is told', () => {
  const ring = [[0, -0.1], [0.5, -0.1], [0.5, 0.1], [0, 0.1]] as const; // prettier-ignore
  const near = tucked(ring, [[0.2, -0.09], [0.2, 0.0995]]); // prettier-ignore
  expect(near.points[0]![1]).toBeCloseTo(-0.1, 4);
  expect(near.points[1]![1]).toBeCloseTo(0.1, 4);
  expect(near.before).toBeCloseTo(0.01, 4);
  const free = tucked(ring, [[0.2, -0.05], [0.2, 0.1005]]); // prettier-ignore
  expect(free.points[0]).toEqual([0.2, -0.05]);
  expect(free.points[1]![1]).toBeCloseTo(0.1, 4);
  expect(free.before).toBe(0);
});
