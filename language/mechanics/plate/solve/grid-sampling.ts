/** A nodal quantity on a grid of squares, for drawing. */
import type { TopSolution } from '../solution.js';

/** Rows along x, columns along y; SI. */
export interface Grid {
  readonly x0: number;
  readonly y0: number;
  readonly step: number;
  readonly rows: number;
  readonly columns: number;
}

/** For each point of the grid, by `row × columns + column`: three nodes, or −1 off the plate, and their weights. */
export interface GridWeights {
  readonly nodes: Int32Array;
  readonly weights: Float64Array;
}

/** Each quadrilateral is halved and taken as two flat triangles: what that bends is less than a line's width in a drawing. */
export function gridWeights({ x, y, quads }: TopSolution['mesh'], grid: Grid): GridWeights {
  const count = grid.rows * grid.columns;
  const result = { nodes: new Int32Array(3 * count).fill(-1), weights: new Float64Array(3 * count) };
  for (let q = 0; q < quads.length; q += 4) {
    const [a, b, c, d] = [quads[q]!, quads[q + 1]!, quads[q + 2]!, quads[q + 3]!];
    weighTriangle(x, y, a, b, c, grid, result);
    weighTriangle(x, y, a, c, d, grid, result);
  }
  return result;
}

/** The quantity at the points of the grid; NaN off the plate. */
export function onGrid({ nodes, weights }: GridWeights, values: ArrayLike<number>): Float64Array {
  const field = new Float64Array(nodes.length / 3).fill(NaN);
  for (let i = 0; i < field.length; i++) {
    const at = 3 * i;
    if (nodes[at]! < 0) continue;
    field[i] =
      weights[at]! * values[nodes[at]!]! +
      weights[at + 1]! * values[nodes[at + 1]!]! +
      weights[at + 2]! * values[nodes[at + 2]!]!;
  }
  return field;
}

/** Share of a side by which a point may lie outside and still count: it is then on the line between two triangles. */
const SLACK = 1e-9;

function weighTriangle(
  x: Float64Array,
  y: Float64Array,
  a: number,
  b: number,
  c: number,
  { x0, y0, step, rows, columns }: Grid,
  { nodes, weights }: GridWeights,
): void {
  const [ax, ay] = [x[a]!, y[a]!];
  const [ux, uy, vx, vy] = [x[b]! - ax, y[b]! - ay, x[c]! - ax, y[c]! - ay];
  const twice = ux * vy - uy * vx;
  if (twice === 0) return;
  const firstRow = Math.max(0, Math.ceil((ax + Math.min(0, ux, vx) - x0) / step - SLACK));
  const lastRow = Math.min(rows - 1, Math.floor((ax + Math.max(0, ux, vx) - x0) / step + SLACK));
  const firstColumn = Math.max(0, Math.ceil((ay + Math.min(0, uy, vy) - y0) / step - SLACK));
  const lastColumn = Math.min(columns - 1, Math.floor((ay + Math.max(0, uy, vy) - y0) / step + SLACK));
  for (let row = firstRow; row <= lastRow; row++) {
    for (let column = firstColumn; column <= lastColumn; column++) {
      const [px, py] = [x0 + row * step - ax, y0 + column * step - ay];
      const toB = (px * vy - py * vx) / twice;
      const toC = (ux * py - uy * px) / twice;
      if (toB < -SLACK || toC < -SLACK || toB + toC > 1 + SLACK) continue;
      const at = 3 * (row * columns + column);
      nodes.set([a, b, c], at);
      weights.set([1 - toB - toC, toB, toC], at);
    }
  }
}
