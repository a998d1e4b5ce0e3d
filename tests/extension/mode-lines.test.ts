/** A mode as lines in the plan, in the plan's own places. */
import { expect, it } from 'vitest';
import { modeLines } from '../../extension/panels/page/plate/mode-lines.js';

const [rows, columns] = [41, 31];
const grid = { x0: -6, y0: -90, step: 6, rows, columns };
const NECK = 240;

/** Tail against neck, still at station 114, half way. */
const movement = Array.from({ length: rows * columns }, (_, i) => {
  const [row, column] = [Math.floor(i / columns), i % columns];
  return Math.round(-1000 * Math.sin((2 * Math.PI * row) / (rows - 1)) * Math.sin((Math.PI * column) / (columns - 1)));
});
const mode = { frequency: '', hertz: 0, main: false, air: '', movement, areas: [] };

const placesIn = (path: string) =>
  [...path.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
const inside = ([x]: readonly [number, number]) => Math.abs(x) < 70;

it('stands still across the middle, as far from the top of the page as the neck is from it', () => {
  const still = placesIn(modeLines(grid, mode, NECK).still()).filter(inside);
  expect(still.length).toBeGreaterThan(15);
  for (const [, y] of still) expect(y).toBeCloseTo(NECK - 114, 0);
});

it('moves in at the tail, which is down the page, and out at the neck', () => {
  const { around } = modeLines(grid, mode, NECK);
  const [out, into] = [placesIn(around('up', 500)), placesIn(around('down', 500))];
  expect(out.length).toBeGreaterThan(10);
  expect(out.every(([, y]) => y < NECK - 114)).toBe(true);
  expect(into.every(([, y]) => y > NECK - 114)).toBe(true);
  // The same lines the other way round.
  const middle = 2 * (NECK - 114);
  const mirrored = into.map(([x, y]) => `${x} ${(middle - y).toFixed(1)}`);
  expect(new Set(out.map(([x, y]) => `${x} ${y.toFixed(1)}`))).toEqual(new Set(mirrored));
});
