/** A traced outline in the text of a recipe: area, girth, plan and plate follow it, and what is written beside it agrees or is told. */
import { describe, expect, it } from 'vitest';
import { boutOutline } from '../../language/mechanics/body/bout-outline.js';
import { bracedShop, OWN } from './braced-shop.js';

const drawn = boutOutline({
  length: 0.489,
  lowerBout: { width: 0.381, station: 0.112 },
  waist: { width: 0.241, station: 0.29 },
  upperBout: { width: 0.286, station: 0.415 },
});
const STATIONS = [0, 4, ...Array.from({ length: 23 }, (_, i) => 20 * (i + 1)), 475, 485, 489];

/** As read off with a rule: to the tenth of a millimetre. */
function table(shoulder = 0): (readonly [number, number])[] {
  return STATIONS.map((x) => {
    const width = 1e3 * drawn.halfWidth(x / 1e3);
    return [x, Number(Math.max(x > 440 ? shoulder : 0, width).toFixed(1))] as const;
  });
}
const written = (points: readonly (readonly [number, number])[]) =>
  points.map(([x, y]) => `(${x} mm, ${y} mm)`).join(', ');
const recipe = (points: readonly (readonly [number, number])[], more = '') =>
  `recipe v-2 from v-1 { because "As the mould has it."  body.outline: ${written(points)}  ${more} }`;

describe('a trace of the outline the widths give', () => {
  const shop = bracedShop(recipe(table()));
  const [before, after] = ['v-1', 'v-2'].map((name) => shop.workshop.inFull(name)!);
  it.each([
    ['body.top-area', 1e-3],
    ['body.perimeter', 1e-3],
    ['body.volume', 1e-3],
    ['top.main-resonance', 5e-3],
    ['bridge.rotation', 2e-2],
  ])('leaves %s as it is', (path, within) => {
    expect(after!.number(path)).toBeGreaterThan(0);
    expect(Math.abs(after!.number(path)! / before!.number(path)! - 1)).toBeLessThan(within);
  });
  it('has nothing to complain of', () => {
    expect(shop.checks.file(OWN).map(({ code }) => code)).not.toContain('outline-disagrees');
  });
});

it('flat shoulders: the area is that of the strips between the stations, the girth gains the shoulder', () => {
  const points = table(60);
  const { workshop } = bracedShop(recipe(points));
  const evaluation = workshop.inFull('v-2')!;
  // A little more plate past the upper bout is worth no more than a few per cent of the main resonance.
  const [round, flat] = ['v-1', 'v-2'].map((name) => workshop.inFull(name)!.number('top.main-resonance')!);
  expect(Math.abs(flat! / round! - 1)).toBeLessThan(0.05);
  const strips = points.slice(1).reduce((sum, [x, y], i) => sum + (x - points[i]![0]) * (y + points[i]![1]) * 1e-6, 0);
  expect(Math.abs(evaluation.number('body.top-area')! / strips - 1)).toBeLessThan(0.005);
  const sides = points
    .slice(1)
    .reduce((sum, [x, y], i) => sum + 2e-3 * Math.hypot(x - points[i]![0], y - points[i]![1]), 0);
  expect(Math.abs(evaluation.number('body.perimeter')! / (sides + 0.12) - 1)).toBeLessThan(0.01);
});

it('a width changed beside it is told: the trace counts', () => {
  const shop = bracedShop(recipe(table(), 'change body.waist.width: 241 mm -> 230 mm'));
  const found = shop.checks.file(OWN).filter(({ code }) => code === 'outline-disagrees');
  expect(found.map(({ message }) => message)).toEqual([
    'At 290 mm from the tail the traced outline is 241 mm wide, body.waist.width says 230 mm. The traced one counts.',
  ]);
});

it.each([
  ['(0 mm, 0 mm), (100 mm, 150 mm), (90 mm, 150 mm), (489 mm, 0 mm)', 'rise from 0'],
  ['(0 mm, 0 mm), (100 mm, 150 mm)', 'four points'],
])('points that are no outline: nothing is drawn in their place (%s)', (points, why) => {
  const { workshop } = bracedShop(`recipe v-2 from v-1 { because "x"  body.outline: ${points} }`);
  expect(workshop.evaluation('v-2')!.derived('body.top-area')).toMatchObject({
    known: false,
    trouble: expect.stringContaining(why) as string,
  });
});

it('a number that lost its unit is unknown, not guessed', () => {
  const { workshop } = bracedShop(recipe(table()).replaceAll(' mm', ''));
  expect(workshop.evaluation('v-2')!.derived('body.top-area')).toMatchObject({ known: false });
});
