/** Lines that stand still, on made-up movements. */
import { expect, it } from 'vitest';
import { stillLines } from '../../extension/panels/page/plate/still-lines.js';

const [rows, columns] = [40, 30];
const field = (movement: (row: number, column: number) => number) => ({
  rows,
  columns,
  movement: Array.from({ length: rows * columns }, (_, i) => movement(Math.floor(i / columns), i % columns)),
});

it('a line between two halves that move against each other', () => {
  const lines = stillLines(field((row) => 50 * (row - 19.25)));
  const inside = lines.flat().filter(([x]) => x > 1 && x < columns - 1);
  expect(inside.length).toBeGreaterThan(20);
  // A value at row 19.25 stands at 19.75 in d3's places.
  for (const [, y] of inside) expect(y).toBeCloseTo(19.75, 6);
});

it('no line where hardly anything moves, though the sign changes there', () => {
  expect(stillLines(field((row, column) => ((row + column) % 2 ? 3 : -3)))).toEqual([]);
});

it('no line around a plate that moves all one way', () => {
  const dome = (row: number, column: number) =>
    row < 2 || row > 37 || column < 2 || column > 27 ? 0 : 1000 * Math.sin((Math.PI * (row - 1)) / 38);
  expect(stillLines(field(dome))).toEqual([]);
});
