/** Where flat things lie in the plan, against plane geometry done by hand. */
import { describe, expect, it } from 'vitest';
import { acrossCentre, beside, lengthInside, outsideBy, strip } from '../../language/mechanics/body/plan.js';
import { soundholeArea, soundholeEdge, type Soundhole } from '../../language/mechanics/body/soundhole.js';

const SQUARE = acrossCentre(0.2, 0.2, 0.2); // 100…300 mm, ± 100 mm

describe('a point and a ring', () => {
  it('are as far apart as the nearest side, negative inside', () => {
    expect(outsideBy(SQUARE, [0.2, 0])).toBeCloseTo(-0.1, 12);
    expect(outsideBy(SQUARE, [0.35, 0])).toBeCloseTo(0.05, 12);
    expect(outsideBy(SQUARE, [0.34, 0.13])).toBeCloseTo(0.05, 12); // 3–4–5 from the corner
  });
});

describe('a line and a ring', () => {
  it('share the length that lies inside', () => {
    expect(
      lengthInside(SQUARE, [
        [0, 0],
        [0.4, 0],
      ]),
    ).toBeCloseTo(0.2, 12);
    expect(
      lengthInside(SQUARE, [
        [0.15, 0],
        [0.2, 0.05],
        [0.4, 0.05],
      ]),
    ).toBeCloseTo(Math.SQRT2 * 0.05 + 0.1, 12);
    expect(
      lengthInside(SQUARE, [
        [0, 0.2],
        [0.4, 0.2],
      ]),
    ).toBe(0);
  });
});

describe('a strip', () => {
  it('is as wide as it is told, to the left first, mitred at a bend', () => {
    expect(
      strip(
        [
          [0, 0],
          [1, 0],
        ] as const,
        0.02,
      ),
    ).toEqual([
      [0, 0.01],
      [1, 0.01],
      [1, -0.01],
      [0, -0.01],
    ]);
    const bend = beside(
      [
        [0, 0],
        [1, 0],
        [1, 1],
      ] as const,
      0.1,
    );
    expect(bend[1]![0]).toBeCloseTo(0.9, 12);
    expect(bend[1]![1]).toBeCloseTo(0.1, 12);
  });
});

describe('a soundhole', () => {
  const oval: Soundhole = { shape: 'oval', centre: [0.33, 0.01], along: 0.08, across: 0.12 };
  it.each([oval, { ...oval, shape: 'd-shaped' as const }])(
    '$shape: its edge encloses the area told, and is as long and wide as told',
    (hole) => {
      // Area of an ellipse πab; of half an ellipse over its straight side πab/2 (Bronshtein, plane figures).
      const edge = soundholeEdge(hole, 2000);
      const twice = edge.reduce((sum, [x, y], i) => {
        const [nx, ny] = edge[(i + 1) % edge.length]!;
        return sum + x * ny - nx * y;
      }, 0);
      expect(Math.abs(twice) / 2 / soundholeArea(hole)).toBeCloseTo(1, 5);
      const [xs, ys] = [edge.map(([x]) => x), edge.map(([, y]) => y)];
      expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(0.08, 6);
      expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(0.12, 6);
      expect((Math.max(...xs) + Math.min(...xs)) / 2).toBeCloseTo(0.33, 6);
    },
  );
});
