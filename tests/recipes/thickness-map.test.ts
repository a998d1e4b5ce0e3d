/** A plate whose thickness is told point by point: its mass, its stiffness and its resonances follow the map. */
import { describe, expect, it } from 'vitest';
import { boutOutline } from '../../language/mechanics/body/bout-outline.js';
import { bodyWithCutaway } from '../../language/mechanics/body/cutaway-outline.js';
import { mappedPlate, thicknessBetween } from '../../language/mechanics/wood/uneven-plate.js';
import { bracedShop } from './braced-shop.js';

function top(map: string) {
  return bracedShop(`recipe v-2 from v-1 { ${map} }`).workshop.inFull('v-2')!;
}

const EVEN =
  'top.map { tail { at: (60 mm, 0 mm)  thickness: 2.8 mm }  neck { at: (440 mm, 0 mm)  thickness: 2.8 mm } }';
const THIN_TAIL = EVEN.replace('2.8 mm', '2.4 mm');

describe('a thickness map', () => {
  it('that is the same everywhere is an even plate', () => {
    const [plain, mapped] = [top(''), top(EVEN)];
    for (const path of ['top.mass', 'top.stiffness.along', 'top.main-resonance', 'bridge.rotation']) {
      expect(mapped.number(path)! / plain.number(path)!).toBeCloseTo(1, 6);
    }
  });

  it('thinner at one end weighs less and rings lower', () => {
    const [even, thin] = [top(EVEN), top(THIN_TAIL)];
    for (const path of ['top.mass', 'top.stiffness.along', 'top.main-resonance']) {
      expect(thin.number(path)!).toBeLessThan(even.number(path)!);
    }
  });

  it('moves what it should, point by point', () => {
    const slope = top(THIN_TAIL).gradient('top.main-resonance').get('top.map.tail.thickness')!;
    const at = (mm: number) => top(EVEN.replace('2.8 mm', `${mm} mm`)).number('top.main-resonance')!;
    const difference = (at(2.45) - at(2.35)) / 0.0001;
    expect(slope / difference).toBeGreaterThan(0.95);
    expect(slope / difference).toBeLessThan(1.05);
  });

  it('is as thick on the whole as points thrown at it at random find it', () => {
    const outline = boutOutline({
      length: 0.496,
      lowerBout: { width: 0.388, station: 0.114 },
      waist: { width: 0.246, station: 0.295 },
      upperBout: { width: 0.292, station: 0.425 },
    });
    const body = bodyWithCutaway(outline);
    const points = [
      { at: [0.25, 0], thickness: 0.0028 },
      { at: [0.06, 0.1], thickness: 0.0024 },
      { at: [0.44, -0.1], thickness: 0.0031 },
    ] as const;
    let [hits, sum, cubes, seed] = [0, 0, 0, 1];
    const random = () => (seed = (seed * 48271) % 2147483647) / 2147483647;
    for (let i = 0; i < 200_000; i++) {
      const [x, y] = [random() * 0.496, (random() - 0.5) * 0.4];
      if (Math.abs(y) > body.trebleWidth(x)) continue;
      const h = thicknessBetween(points, x, y);
      hits++;
      sum += h;
      cubes += h ** 3;
    }
    const plate = mappedPlate(points, body);
    expect(plate.mean / (sum / hits)).toBeCloseTo(1, 3);
    expect(plate.stiff / Math.cbrt(cubes / hits)).toBeCloseTo(1, 3);
  });
});
