/** The weight test on the path of a build: two readings of one peak, and a known weight. */
import { expect, test } from 'vitest';
import { openWorkshop } from '../../../language/shop.js';
import { createParser, readFile } from '../../../language/recipes/shelf/reader.js';
import { weightTestOf } from '../../../language/recipes/builds/added-mass-test.js';

function testOf(readings: string) {
  const parser = createParser();
  const { shelf, workshop } = openWorkshop({ parser });
  shelf.put(
    readFile('a', `recipe om { scale: 645 mm }\nbuild no-1 of om {\n  reading free { ${readings} }\n}\n`, parser),
  );
  return weightTestOf(workshop.build('no-1')!.readings[0]!);
}

test('an oscillator of known mass and spring gives both back', () => {
  const [mass, spring, added] = [0.06, 76_000, 0.02];
  const peak = (m: number) => Math.sqrt(spring / m) / (2 * Math.PI);
  const found = testOf(
    `resonance.top: ${peak(mass).toFixed(4)} Hz  resonance.top-loaded: ${peak(mass + added).toFixed(4)} Hz  added-mass: 20 g`,
  )!;
  expect(found.mass).toBeCloseTo(mass, 5);
  expect(found.stiffness / spring).toBeCloseTo(1, 4);
  // Half a hertz in either peak, by moving each.
  const massFor = (before: number, after: number) => (added * after ** 2) / (before ** 2 - after ** 2);
  const [f, g] = [peak(mass), peak(mass + added)];
  const moved = [massFor(f + 0.5, g) - massFor(f - 0.5, g), massFor(f, g + 0.5) - massFor(f, g - 0.5)];
  expect(found.uncertainty).toBeCloseTo(Math.hypot(moved[0]!, moved[1]!) / 2 / mass, 3);
});

test('a reading short, or a weight that lowered nothing, tells nothing', () => {
  expect(testOf('resonance.top: 180 Hz  added-mass: 20 g')).toBeUndefined();
  expect(testOf('resonance.top: 180 Hz  resonance.top-loaded: 181 Hz  added-mass: 20 g')).toBeUndefined();
});
