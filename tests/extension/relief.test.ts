/** A mode as a surface in space, against an ellipsoid dome known in closed form. */
import { describe, expect, it } from 'vitest';
import { facets, look, movementAt, surfaceOf } from '../../extension/panels/page/plate/relief/relief.js';

const [A, B] = [250, 190];
/** An ellipse, its tail at station 0. */
const outline = Array.from({ length: 200 }, (_, i) => {
  const angle = (2 * Math.PI * i) / 200;
  return [A - A * Math.cos(angle), B * Math.sin(angle)] as const;
});
const grid = { x0: -6, y0: -198, step: 6, rows: 86, columns: 67 };
const dome = (station: number, offset: number) => Math.max(0, 1 - ((station - A) / A) ** 2 - (offset / B) ** 2);
const movement = Array.from({ length: grid.rows * grid.columns }, (_, i) => {
  const [row, column] = [Math.floor(i / grid.columns), i % grid.columns];
  return Math.round(1000 * dome(grid.x0 + row * grid.step, grid.y0 + column * grid.step));
});
const surface = surfaceOf(outline, grid, movement);

describe('a relief', () => {
  it('has its rim on the outline and its heights on the mode', () => {
    for (let i = 0; i < surface.station.length; i += 1) {
      const [s, o] = [surface.station[i]!, surface.offset[i]!];
      const isRim = i % surface.columns === 0 || (i + 1) % surface.columns === 0;
      if (isRim) expect(Math.abs(((s - A) / A) ** 2 + (o / B) ** 2 - 1)).toBeLessThan(0.02);
      expect(surface.movement[i]).toBeCloseTo(dome(s, o), 1);
    }
    expect(movementAt(grid, movement, A, 0)).toBeCloseTo(1000, -1);
    expect(movementAt(grid, movement, -500, 0)).toBe(0);
  });

  it('from straight above is the plan, neck up the page and the bass side left', () => {
    const see = look(surface, { turn: 0, height: 90 });
    const at = (station: number, offset: number) =>
      see(station, offset, 0.7)
        .slice(0, 2)
        .map((each) => Math.round(each * 1e6) / 1e6 + 0);
    expect(at(2 * A, 0)).toEqual([0, -A]);
    expect(at(A, -B)).toEqual([-B, 0]);
  });

  it('keeps every length when it is turned, and what moves out stands up the page', () => {
    const [one, other] = [look(surface, { turn: 35, height: 90 }), look(surface, { turn: 35, height: 30 })];
    const [p, q] = [one(100, 30, 0), one(300, -80, 0)];
    expect(Math.hypot(p[0] - q[0], p[1] - q[1])).toBeCloseTo(Math.hypot(200, 110), 9);
    expect(other(250, 0, 1)[1]).toBeLessThan(other(250, 0, 0)[1]);
    // Seen at all, three coordinates are a rotation of the three that went in.
    const [r, s] = [other(100, 30, 0), other(300, -80, 0)];
    expect(Math.hypot(r[0] - s[0], r[1] - s[1], r[2] - s[2])).toBeCloseTo(Math.hypot(200, 110), 9);
  });

  it('is painted from the farthest to the nearest, and is flat half way through a swing', () => {
    const stand = { turn: 20, height: 40 };
    const painted = facets(surface, stand, 1);
    expect(painted.length).toBe((surface.rows - 1) * (surface.columns - 1));
    for (let i = 1; i < painted.length; i += 1) expect(painted[i]!.near).toBeGreaterThanOrEqual(painted[i - 1]!.near);
    const lights = new Set(facets(surface, stand, 0).map(({ light }) => light.toFixed(6)));
    expect(lights.size).toBe(1);
    expect(new Set(painted.map(({ light }) => light.toFixed(2))).size).toBeGreaterThan(10);
  });
});
