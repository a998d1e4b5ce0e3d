/** Values between the nodes. */
import { shapeAt } from '../element/shape-at.js';
import type { Point } from '../model.js';
import type { TopSolution } from '../solution.js';

/** A nodal quantity at a place on the plate; undefined off it. */
export function valueAt({ x, y, quads }: TopSolution['mesh'], values: Float64Array, at: Point): number | undefined {
  for (let q = 0; q < quads.length; q += 4) {
    const nodes = quads.subarray(q, q + 4);
    const shape = shapeAt(x, y, nodes, at[0], at[1]);
    if (shape) return shape.reduce((sum, weight, k) => sum + weight * values[nodes[k]!]!, 0);
  }
  return undefined;
}
