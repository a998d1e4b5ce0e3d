/** Traced outlines against shapes whose area and girth are known in closed form, and against the outline they were read off. */
import { describe, expect, it } from 'vitest';
import { bodyArea, bodyPerimeter, bodyRing, bodyWithCutaway } from '../../language/mechanics/body/cutaway-outline.js';
import { boutOutline } from '../../language/mechanics/body/bout-outline.js';
import { tracedOutline } from '../../language/mechanics/body/traced-outline.js';

const off = (found: number, truth: number) => Math.abs(found / truth - 1);

describe('shapes of the textbooks', () => {
  it('an ellipse: area πab, girth by Ramanujan (1914, good to 1e-9 at such a shape)', () => {
    const [a, b] = [0.25, 0.2];
    const at = [0, 0.02, 0.1, 0.25, 0.4, 0.48, 0.5];
    const body = bodyWithCutaway(
      tracedOutline(at.map((x) => ({ x, y: b * Math.sqrt(Math.max(0, 1 - ((x - a) / a) ** 2)) }))),
    );
    const h = ((a - b) / (a + b)) ** 2;
    expect(off(bodyArea(body), Math.PI * a * b)).toBeLessThan(1e-6);
    expect(off(bodyPerimeter(body), Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h))))).toBeLessThan(
      1e-5,
    );
    expect(off(body.outline.tailRadius, b ** 2 / a)).toBeLessThan(1e-9);
  });
  it('a rectangle, flat at both ends', () => {
    const body = bodyWithCutaway(tracedOutline([0, 0.1, 0.3, 0.5].map((x) => ({ x, y: 0.15 }))));
    expect(off(bodyArea(body), 0.5 * 0.3)).toBeLessThan(1e-4);
    expect(off(bodyPerimeter(body), 2 * (0.5 + 0.3))).toBeLessThan(1e-9);
    const ring = bodyRing(body, 40);
    for (const corner of [
      [0, -0.15],
      [0, 0.15],
      [0.5, -0.15],
      [0.5, 0.15],
    ])
      expect(ring).toContainEqual(corner);
  });
  it('half an ellipse on a flat end', () => {
    const [a, b] = [0.4, 0.15];
    const at = [0, 0.05, 0.1, 0.2, 0.3, 0.36, 0.39, 0.4];
    const body = bodyWithCutaway(
      tracedOutline(at.map((x) => ({ x, y: b * Math.sqrt(Math.max(0, 1 - (x / a) ** 2)) }))),
    );
    expect(off(bodyArea(body), (Math.PI * a * b) / 2)).toBeLessThan(1e-3);
  });
});

it('a guitar read off every 20 mm is the guitar', () => {
  const drawn = boutOutline({
    length: 0.489,
    lowerBout: { width: 0.381, station: 0.115 },
    waist: { width: 0.241, station: 0.292 },
    upperBout: { width: 0.286, station: 0.42 },
  });
  const at = [0, 0.004, ...Array.from({ length: 23 }, (_, i) => 0.02 * (i + 1)), 0.475, 0.485, 0.489];
  const traced = tracedOutline(at.map((x) => ({ x, y: drawn.halfWidth(x) })));
  for (let x = 0.001; x < 0.489; x += 0.004)
    expect(Math.abs(traced.halfWidth(x) - drawn.halfWidth(x))).toBeLessThan(3e-4);
  const [one, other] = [drawn, traced].map((outline) => bodyWithCutaway(outline));
  expect(off(bodyArea(other!), bodyArea(one!))).toBeLessThan(2e-4);
  expect(off(bodyPerimeter(other!), bodyPerimeter(one!))).toBeLessThan(5e-4);
});

it.each([
  [
    'too few points',
    [
      [0, 0],
      [0.2, 0.1],
      [0.4, 0],
    ],
  ],
  [
    'stations that fall',
    [
      [0, 0],
      [0.2, 0.1],
      [0.1, 0.1],
      [0.4, 0],
    ],
  ],
  [
    'a tail that is not at 0',
    [
      [0.1, 0],
      [0.2, 0.1],
      [0.3, 0.1],
      [0.4, 0],
    ],
  ],
  [
    'a width below zero',
    [
      [0, 0],
      [0.2, -0.1],
      [0.3, 0.1],
      [0.4, 0],
    ],
  ],
  [
    'a number that is none',
    [
      [0, 0],
      [0.2, NaN],
      [0.3, 0.1],
      [0.4, 0],
    ],
  ],
])('refuses %s', (_, points) => {
  expect(() => tracedOutline(points.map(([x, y]) => ({ x: x!, y: y! })))).toThrow();
});
