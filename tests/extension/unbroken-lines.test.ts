/** Nodal lines of solved tops: each closed, or from edge to edge, and none broken off in mid-plate. */
import { expect, it } from 'vitest';
import { stillLines } from '../../extension/panels/page/plate/still-lines.js';
import { modeShapes } from '../../language/reports/plan/mode-shapes.js';
import { bracedShop } from '../recipes/braced-shop.js';

const TOPS: readonly (readonly [name: string, change: string])[] = [
  ['as it is', 'because "?"'],
  ['thin', 'change top.thickness: 2.80 mm -> 2.5 mm'],
  ['softer braces', 'change bracing.x-bass.height: 15.9 mm -> 12 mm'],
  ['a larger hole', 'change soundhole.diameter: 101 mm -> 110 mm'],
  ['held by its rim', 'top.rim-stiffness: 200 N'],
];

it.each(TOPS)('of a top %s', (_, change) => {
  const shop = bracedShop(`recipe v-2 from v-1 { ${change} }`);
  const desk = { ...shop, text: () => undefined };
  const { grid, modes } = modeShapes(desk, 'v-2', 'top')!;
  expect(modes.length).toBeGreaterThan(3);
  let lines = 0;
  for (const { movement } of modes) {
    const off = (x: number, y: number) => {
      // Within a point and a half of a place off the plate.
      for (let r = -1; r <= 1; r += 1) {
        for (let c = -1; c <= 1; c += 1) {
          const [row, column] = [Math.round(y - 0.5) + r, Math.round(x - 0.5) + c];
          if (movement[row * grid.columns + column] === 0) return true;
        }
      }
      return false;
    };
    for (const line of stillLines({ rows: grid.rows, columns: grid.columns, movement })) {
      lines += 1;
      const [first, last] = [line[0]!, line.at(-1)!];
      const isClosed = Math.hypot(first[0] - last[0], first[1] - last[1]) < 0.01;
      expect(isClosed || (off(...first) && off(...last)), `${first.join()} to ${last.join()}`).toBe(true);
    }
  }
  // The first moves as one; some of the others must have lines.
  expect(lines).toBeGreaterThan(2);
});
