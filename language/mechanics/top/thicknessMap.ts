/** Thickness of the plate at a place. */
import type { ClosedCurve } from './curve.js';
import type { ThicknessMap } from './model.js';
import { distanceToRim } from './polygon.js';

/** m at `(x, y)`. Between given points: weighted by the inverse square of the distance (D. Shepard, Proc. 23rd ACM National Conference, 1968, 517–524). */
export function thicknessAt(map: ThicknessMap, outline: ClosedCurve, x: number, y: number): number {
  if (typeof map === 'number') return map;
  if (map.kind === 'edge-taper') {
    const distance = map.width > 0 ? distanceToRim(outline.points, x, y) / map.width : 1;
    return map.edge + (map.centre - map.edge) * Math.min(1, distance);
  }
  let sum = 0;
  let weights = 0;
  for (const { at, thickness } of map.points) {
    const squared = (x - at[0]) ** 2 + (y - at[1]) ** 2;
    if (squared < 1e-12) return thickness;
    sum += thickness / squared;
    weights += 1 / squared;
  }
  return sum / weights;
}
