import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airVolume } from '../../language/mechanics/body/air-space.js';
import { boutOutline, type Bouts } from '../../language/mechanics/body/bout-outline.js';
import { bodyArea, bodyPerimeter, bodyWithCutaway } from '../../language/mechanics/body/cutaway-outline.js';
import { naturalSpline } from '../../language/mechanics/body/natural-spline.js';
import { outlineCentroid, outlinePolyline, outlineThrough } from '../../language/mechanics/body/half-widths.js';
import { taperedPlate } from '../../language/mechanics/wood/uneven-plate.js';

/** Sizes as makers use them, by generic name (common practice). */
const SIZES: Record<string, Bouts> = {
  om: sized(0.495, 0.39, 0.112, 0.243, 0.292, 0.286, 0.422),
  parlor: sized(0.47, 0.325, 0.1, 0.195, 0.28, 0.235, 0.395),
  dreadnought: sized(0.508, 0.397, 0.12, 0.275, 0.3, 0.292, 0.43),
  classical: sized(0.485, 0.37, 0.115, 0.235, 0.3, 0.28, 0.41),
  jumbo: sized(0.52, 0.432, 0.13, 0.255, 0.32, 0.31, 0.45),
};

function sized(
  length: number,
  lower: number,
  at: number,
  waist: number,
  waistAt: number,
  upper: number,
  upperAt: number,
): Bouts {
  return {
    length,
    lowerBout: { width: lower, station: at },
    waist: { width: waist, station: waistAt },
    upperBout: { width: upper, station: upperAt },
  };
}

describe.each(Object.entries(SIZES))('%s outline from three widths', (_, bouts) => {
  const outline = boutOutline(bouts);

  test('is as wide as asked, where asked, and level there', () => {
    for (const { width, station } of [bouts.lowerBout, bouts.waist, bouts.upperBout]) {
      expect(2 * outline.halfWidth(station)).toBeCloseTo(width, 12);
      const step = 1e-5;
      const slope = (outline.halfWidth(station + step) - outline.halfWidth(station - step)) / (2 * step);
      expect(Math.abs(slope)).toBeLessThan(1e-5);
    }
  });

  test('has no other bump', () => {
    const points = outlinePolyline(outline, 400);
    const turns = points.slice(1, -1).filter((point, i) => (point.y - points[i]!.y) * (points[i + 2]!.y - point.y) < 0);
    expect(turns.length).toBe(3);
  });

  test('has an area of 62 … 78 % of the box around it, and a sensible centre', () => {
    const share = bodyArea(bodyWithCutaway(outline)) / (bouts.length * bouts.lowerBout.width);
    expect(share).toBeGreaterThan(0.62);
    expect(share).toBeLessThan(0.8);
    expect(outlineCentroid(outline) / bouts.length).toBeGreaterThan(0.42);
    expect(outlineCentroid(outline) / bouts.length).toBeLessThan(0.52);
    expect(bodyPerimeter(bodyWithCutaway(outline))).toBeGreaterThan(2 * bouts.length);
  });

  test('keeps end radii when they are given', () => {
    const given = boutOutline({ ...bouts, tailRadius: 0.32, neckRadius: 0.3 });
    expect(given.tailRadius).toBeCloseTo(0.32, 12);
    // b ≈ √(2 R x) near the end.
    expect(given.halfWidth(1e-7) ** 2 / 2e-7).toBeCloseTo(0.32, 4);
    expect(2 * given.halfWidth(bouts.waist.station)).toBeCloseTo(bouts.waist.width, 12);
  });
});

test('an ellipse drawn by the rule has the area and length of an ellipse', () => {
  const [length, half] = [0.5, 0.2];
  const q = (half / (length / 2)) ** 2;
  const b = (x: number): number => Math.sqrt(q * x * (length - x));
  const outline = outlineThrough(
    length,
    [0.1, 0.25, 0.4],
    [b(0.1), b(0.25), b(0.4)],
    (q * length) / 2,
    (q * length) / 2,
  );
  expect(bodyArea(bodyWithCutaway(outline))).toBeCloseTo((Math.PI * length * half) / 2, 9);
  expect(outlineCentroid(outline)).toBeCloseTo(0.25, 9);
  const h = ((0.25 - half) / (0.25 + half)) ** 2;
  const ramanujan = Math.PI * (0.25 + half) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
  expect(bodyPerimeter(bodyWithCutaway(outline))).toBeCloseTo(ramanujan, 5);
});

test('a natural spline goes through its points and gives a straight line back', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 2, maxLength: 9 }), (ys) => {
      const spline = naturalSpline(
        ys.map((_, i) => i),
        ys,
      );
      ys.forEach((y, i) => expect(spline.value(i)).toBeCloseTo(y, 9));
    }),
  );
  const line = naturalSpline([0, 1, 3, 4], [1, 3, 7, 9]);
  expect(line.value(2.2)).toBeCloseTo(5.4, 12);
  expect(line.slope(0.3)).toBeCloseTo(2, 12);
});

describe('impossible outlines are refused', () => {
  const om = SIZES.om!;
  test.each([
    ['stations out of order', { ...om, waist: { width: 0.24, station: 0.1 } }, 'station'],
    ['a station beyond the body', { ...om, upperBout: { width: 0.28, station: 0.6 } }, 'station'],
    ['a waist wider than the upper bout', { ...om, waist: { width: 0.3, station: 0.29 } }, 'waist width'],
    ['no length', { ...om, length: 0 }, 'body length'],
    ['a radius of nothing', { ...om, tailRadius: 0 }, 'tail radius'],
    ['a neck end sharper than any curve allows', { ...om, neckRadius: 9 }, 'outline'],
  ])('%s', (_, bouts, quantity) => {
    expect(() => boutOutline(bouts)).toThrow(expect.objectContaining({ name: 'MechanicsError', quantity }));
  });

  test('three widths anywhere give an outline or a plain refusal, never a gap', () => {
    const part = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    const width = fc.double({ min: 0.02, max: 0.8, noNaN: true });
    fc.assert(
      fc.property(part, part, part, width, width, width, (a, b, c, lower, waist, upper) => {
        try {
          const outline = boutOutline(sized(0.5, lower, 0.5 * a, waist, 0.5 * b, upper, 0.5 * c));
          for (const { x, y } of outlinePolyline(outline, 60)) expect(Number.isFinite(x) && y >= 0).toBe(true);
          expect(bodyArea(bodyWithCutaway(outline))).toBeGreaterThan(0);
        } catch (error) {
          expect(error).toMatchObject({ name: 'MechanicsError' });
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('cutaway', () => {
  const outline = boutOutline(SIZES.om!);
  const whole = bodyWithCutaway(outline);

  test('without one both sides are alike', () => {
    expect(bodyArea(whole)).toBeCloseTo(bodyArea(bodyWithCutaway(outline)), 10);
    expect(bodyPerimeter(whole)).toBeCloseTo(bodyPerimeter(bodyWithCutaway(outline)), 10);
  });

  test.each(['venetian', 'florentine'] as const)(
    '%s takes some 2 … 9 %% of the area, from the treble side near the neck only',
    (kind) => {
      const cut = bodyWithCutaway(outline, { kind, length: 0.13, depth: 0.085 });
      const lost = 1 - bodyArea(cut) / bodyArea(whole);
      expect(lost).toBeGreaterThan(0.02);
      expect(lost).toBeLessThan(0.09);
      expect(cut.trebleWidth(0.3)).toBe(outline.halfWidth(0.3));
      expect(cut.trebleWidth(0.45)).toBeLessThan(cut.bassWidth(0.45));
      expect(cut.trebleWidth(0.48)).toBeGreaterThan(0);
    },
  );

  test('a deeper cut takes more', () => {
    const area = (depth: number): number =>
      bodyArea(bodyWithCutaway(outline, { kind: 'venetian', length: 0.13, depth }));
    fc.assert(
      fc.property(fc.double({ min: 0.03, max: 0.1, noNaN: true }), (depth) => {
        expect(area(depth + 0.01)).toBeLessThan(area(depth));
      }),
    );
  });

  test('one past the centre line is refused', () => {
    expect(() => bodyWithCutaway(outline, { kind: 'venetian', length: 0.13, depth: 0.2 })).toThrow(/centre line/);
  });
});

describe('air inside', () => {
  const body = bodyWithCutaway(boutOutline(SIZES.om!));

  test('flat and even: area times depth', () => {
    expect(airVolume({ body, tailDepth: 0.1, neckDepth: 0.1 })).toBeCloseTo(0.1 * bodyArea(body), 12);
  });

  test('an OM holds 12 … 15 litres with its domes', () => {
    const volume = airVolume({
      body,
      tailDepth: 0.104,
      neckDepth: 0.089,
      topRadius: 8.53,
      backRadius: 4.57,
      inside: 0.0006,
    });
    expect(volume).toBeGreaterThan(0.012);
    expect(volume).toBeLessThan(0.015);
  });

  test('a dome adds ∫ (x (L − x) − y²) / 2R dA', () => {
    const dome = airVolume({ body, tailDepth: 0.1, neckDepth: 0.1, backRadius: 4.5 }) - 0.1 * bodyArea(body);
    let sum = 0;
    const step = 0.0005;
    for (let x = step / 2; x < body.outline.length; x += step) {
      const b = body.bassWidth(x);
      for (let y = -b + step / 2; y < b; y += step) sum += (x * (body.outline.length - x) - y * y) / 9;
    }
    expect(dome / (sum * step * step)).toBeCloseTo(1, 2);
  });

  test('more inside than there is room for is refused', () => {
    expect(() => airVolume({ body, tailDepth: 0.1, neckDepth: 0.1, inside: 0.02 })).toThrow(/air/);
  });
});

describe('edge taper', () => {
  test('a disc thinned towards its edge has the exact volume of a flat-topped cone', () => {
    const [R, band, centre, edge] = [0.2, 0.06, 0.0029, 0.0024];
    const { volume, mean, stiff } = taperedPlate({ centre, edge, band }, Math.PI * R * R, 2 * Math.PI * R);
    const r = R - band;
    const frustum = (Math.PI * band * (R * R + R * r + r * r)) / 3;
    // Full-thickness core plus the ring under the slope: edge · ring + (centre − edge) · (frustum of height 1 − core).
    const exact = edge * Math.PI * R * R + ((centre - edge) / band) * frustum;
    expect(volume).toBeCloseTo(exact, 12);
    expect(mean).toBeLessThan(stiff);
    expect(stiff).toBeLessThan(centre);
  });

  test('on a guitar outline the formula agrees with a grid of distances within 1 %', () => {
    const outline = boutOutline(SIZES.om!);
    const area = bodyArea(bodyWithCutaway(outline));
    const { volume } = taperedPlate(
      { centre: 0.0029, edge: 0.0024, band: 0.06 },
      area,
      bodyPerimeter(bodyWithCutaway(outline)),
    );
    const edgePoints = outlinePolyline(outline, 300);
    let sum = 0;
    const step = 0.005;
    for (let x = step / 2; x < outline.length; x += step) {
      for (let y = step / 2; y < outline.halfWidth(x); y += step) {
        const d = Math.min(...edgePoints.map((p) => Math.hypot(p.x - x, p.y - y)));
        sum += 2 * step * step * (0.0024 + 0.0005 * Math.min(1, d / 0.06));
      }
    }
    expect(Math.abs(volume / sum - 1)).toBeLessThan(0.01);
  });

  test('even thickness stays even; a band wider than the plate is refused', () => {
    const even = taperedPlate({ centre: 0.003, edge: 0.003, band: 0.05 }, 0.13, 1.4);
    expect(even.mean).toBeCloseTo(0.003, 14);
    expect(even.stiff).toBeCloseTo(0.003, 14);
    expect(() => taperedPlate({ centre: 0.003, edge: 0.002, band: 0.2 }, 0.13, 1.4)).toThrow(/wider/);
  });
});
