/** What a drawing needs and cannot read is named, and never drawn as if nothing were there. */
import { describe, expect, it } from 'vitest';
import { planOf } from '../../../language/reports/plan/plan-of.js';
import { bracedShop } from '../../recipes/braced-shop.js';

const FULL = `
  bridge.offset: 1 mm  bridge.station: 180 mm  bridge.saddle-distance: 9 mm
  saddle { string-spread: 62 mm  length: 75 mm  thickness: 3 mm  angle: 2 deg  protrusion: 3 mm }
  setup.compensation.middle: 2 mm
  top { grain-angle: 1 deg  edge-thickness: 2.4 mm  edge-width: 50 mm }
  back.grain-angle: 1 deg
  neck-block { length: 60 mm  width: 80 mm }  tail-block { thickness: 20 mm  width: 80 mm }
  nut { width: 44 mm  thickness: 6 mm  string-spread: 37 mm }
  frets.count: 20  fingerboard { width.fret-12: 54 mm  thickness: 6 mm }
  headstock { length: 180 mm  width: 70 mm }  neck.angle: 1.5 deg`;

const missingIn = (text: string) =>
  new Map(
    planOf(bracedShop(`recipe v-2 from v-1 {${text}\n}`).workshop, 'v-2')!.missing.map((one) => [one.part, one.paths]),
  );

describe('a part of a drawing whose number cannot be read', () => {
  it('is drawn as long as it can', () => {
    const missing = missingIn(FULL);
    for (const part of ['bridge', 'saddle', 'top', 'back', 'neck-block', 'headstock', 'neck']) {
      expect(missing.get(part), part).toBeUndefined();
    }
  });

  // The number stands there without a unit, so that it might be anything.
  it.each([
    ['bridge', 'bridge.offset: 1 mm', 'bridge.offset'],
    ['bridge', 'bridge.saddle-distance: 9 mm', 'bridge.saddle-distance'],
    ['saddle', 'angle: 2 deg', 'saddle.angle'],
    ['saddle', 'compensation.middle: 2 mm', 'setup.compensation.middle'],
    ['saddle', 'thickness: 3 mm', 'saddle.thickness'],
    ['top', 'grain-angle: 1 deg', 'top.grain-angle'],
    ['top', 'edge-width: 50 mm', 'top.edge-width'],
    ['back', 'back.grain-angle: 1 deg', 'back.grain-angle'],
    ['headstock', 'thickness: 6 mm', 'nut.thickness'],
  ])('%s: %s', (part, written, path) => {
    expect(FULL.split(written).length).toBeGreaterThan(1);
    const bare = FULL.replace(written, written.replace(/ (?:mm|deg)$/, ''));
    expect(missingIn(bare).get(part)).toContain(path);
  });

  it('names what a block stands against where nobody says it', () => {
    const shop = bracedShop('');
    shop.put(`model bare { body.length: 489 mm  neck-block { length: 60 mm  width: 80 mm } }\nrecipe b-1 for bare { }`);
    const missing = planOf(shop.workshop, 'b-1')!.missing.find(({ part }) => part === 'neck-block');
    expect(missing?.paths).toContain('sides.thickness');
  });
});
