/** Whatever is said to weigh something is in the mass of the instrument, and pulls its balance to where it is. */
import { describe, expect, it, test } from 'vitest';
import { catalogue } from '../../language/catalogue/catalogue.js';
import { DIMENSION, sameDimension } from '../../language/quantities/dimension.js';
import { bracedShop } from './braced-shop.js';

const WHOLE = `finish { system: nitrocellulose  film: 0.08 mm }
  lining { width: 6 mm  height: 15 mm  wood: maple-1 }  back-lining { width: 6 mm  height: 15 mm  wood: maple-1 }
  neck-block.mass: 100 g  tail-block.mass: 100 g  neck.mass: 100 g  tuners.mass: 100 g  bridge.mass: 100 g
  bridge.plate.mass: 100 g  saddle.mass: 100 g  bridge.pins.mass: 100 g  nut.mass: 100 g  rim.added-mass: 100 g`;

function evaluated(more: string) {
  const { workshop } = bracedShop(`recipe v-2 from v-1 { because "Weighed."  ${more} }`);
  return workshop.evaluate(workshop.instrument('v-2')!.values);
}
const whole = evaluated(WHOLE);
const stated = catalogue.all.filter(
  ({ path, where, kind, ...rest }) =>
    kind === 'quantity' &&
    where.includes('recipe') &&
    path !== 'top.mass-limit' &&
    path !== 'back.mass-limit' &&
    'dimension' in rest &&
    rest.dimension !== undefined &&
    sameDimension(rest.dimension, DIMENSION.mass),
);
/** The mass of the neck is with these. */
const IN_THE_NECK = ['truss-rod.mass', 'fingerboard.mass'];

test('there are masses to be looked at', () => {
  expect(stated.length).toBeGreaterThan(15);
  expect(whole.number('mass.finished')).toBeGreaterThan(1);
});

test.each(stated.map(({ path }) => path).filter((path) => !IN_THE_NECK.includes(path)))(
  '%s: 50 g more are 50 g more in all, and the balance goes there',
  (path) => {
    const has = WHOLE.includes(`${path}: 100 g`);
    const heavier = evaluated(has ? WHOLE.replace(`${path}: 100 g`, `${path}: 150 g`) : `${WHOLE}  ${path}: 50 g`);
    const [before, after] = [whole.number('mass.finished')!, heavier.number('mass.finished')!];
    expect(after - before).toBeCloseTo(0.05, 9);
    // Statics: where the added mass must lie for the balance to have moved as it has.
    const at = (heavier.number('balance')! * after - whole.number('balance')! * before) / 0.05;
    expect(at).toBeGreaterThan(-0.01);
    expect(at).toBeLessThan(0.489 + 0.4 + 0.2);
  },
);

test.each(IN_THE_NECK)('%s is in the mass of the neck already', (path) => {
  expect(evaluated(`${WHOLE}  ${path}: 50 g`).number('mass.finished')).toBe(whole.number('mass.finished'));
});

describe('what is glued in is worked out from its size', () => {
  const patch = 'soundhole.patch { wood: sitka-31  width: 20 mm  thickness: 2 mm }';
  const strip = 'back.reinforcement { wood: sitka-31  width: 15 mm  thickness: 2.5 mm }';
  const bevel = 'arm-bevel { wood: maple-1  depth: 18 mm  width: 25 mm  length: 220 mm }';
  const sitka = 421;

  it.each([
    // A ring of even width around a round hole; a strip; a three-sided block of sugar maple, 630 kg/m³.
    ['soundhole.patch.mass', patch, (d: number) => sitka * Math.PI * ((d / 2 + 0.02) ** 2 - (d / 2) ** 2) * 0.002],
    ['back.reinforcement.mass', strip, () => sitka * 0.489 * 0.015 * 0.0025],
    ['arm-bevel.mass', bevel, () => (630 * 0.018 * 0.025 * 0.22) / 2],
  ])('%s', (path, line, expected) => {
    const evaluation = evaluated(`${WHOLE}  ${line}`);
    const mass = evaluation.number(path)!;
    expect(mass / expected(evaluation.number('soundhole.diameter')!)).toBeCloseTo(1, 2);
    expect(evaluation.number('mass.finished')! - whole.number('mass.finished')!).toBeCloseTo(mass, 9);
  });

  it('a size short is asked for, not taken to be nothing', () => {
    const lacking = evaluated(`${WHOLE}  soundhole.patch { wood: sitka-31  width: 20 mm }`);
    expect(lacking.derived('mass.finished')).toMatchObject({ known: false, missing: ['soundhole.patch.thickness'] });
  });

  it('the patch around the hole rides on the top and stiffens it, the air’s plug is longer', () => {
    const shop = (line: string) =>
      bracedShop(`recipe v-2 from v-1 { because "Patched."  ${line} }`).workshop.inFull('v-2')!;
    const [bare, patched, thick] = ['', patch, patch.replace('2 mm }', '3 mm }')].map(shop);
    expect(patched!.number('top.main-resonance')).not.toBe(bare!.number('top.main-resonance'));
    expect(patched!.number('resonance.rigid-air')!).toBeLessThan(bare!.number('resonance.rigid-air')!);
    const slope = patched!.gradient('top.main-resonance').get('soundhole.patch.thickness')!;
    const step = (thick!.number('top.main-resonance')! - patched!.number('top.main-resonance')!) / 1e-3;
    expect(slope / step).toBeGreaterThan(0.7);
    expect(slope / step).toBeLessThan(1.4); // a millimetre is half of it: the curve bends
  });
});
