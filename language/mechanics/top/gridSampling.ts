/** A nodal quantity on a grid of squares, for drawing. */
import { shapeAt } from './loads.js';
import type { TopSolution } from './solution.js';

/** Rows along x, columns along y; SI. */
export interface Grid {
  readonly x0: number;
  readonly y0: number;
  readonly step: number;
  readonly rows: number;
  readonly columns: number;
}

/** Shape functions at the points of the grid that lie on the plate, by index `row × columns + column`. */
export type GridWeights = ReadonlyMap<number, { readonly nodes: Int32Array; readonly shape: readonly number[] }>;

export function gridWeights({ x, y, quads }: TopSolution['mesh'], { x0, y0, step, rows, columns }: Grid): GridWeights {
  const weights = new Map<number, { nodes: Int32Array; shape: readonly number[] }>();
  for (let q = 0; q < quads.length; q += 4) {
    const nodes = quads.subarray(q, q + 4);
    const [fromX, toX] = extent(x, nodes);
    const [fromY, toY] = extent(y, nodes);
    const lastRow = Math.min(rows - 1, Math.floor((toX - x0) / step));
    const lastColumn = Math.min(columns - 1, Math.floor((toY - y0) / step));
    for (let row = Math.max(0, Math.ceil((fromX - x0) / step)); row <= lastRow; row++) {
      for (let column = Math.max(0, Math.ceil((fromY - y0) / step)); column <= lastColumn; column++) {
        const shape = shapeAt(x, y, nodes, x0 + row * step, y0 + column * step);
        if (shape) weights.set(row * columns + column, { nodes, shape });
      }
    }
  }
  return weights;
}

/** The quantity at those points; NaN off the plate. */
export function onGrid({ rows, columns }: Grid, weights: GridWeights, values: ArrayLike<number>): Float64Array {
  const field = new Float64Array(rows * columns).fill(NaN);
  for (const [index, { nodes, shape }] of weights) {
    field[index] = shape.reduce((sum, weight, k) => sum + weight * values[nodes[k]!]!, 0);
  }
  return field;
}

function extent(values: Float64Array, nodes: Int32Array): readonly [number, number] {
  const own = Array.from(nodes, (node) => values[node]!);
  return [Math.min(...own), Math.max(...own)];
}
