/** Thickness of the plate at a place. */
import { thicknessBetween } from '../../wood/uneven-plate.js';
import type { ClosedCurve } from '../mesh/curve.js';
import type { ThicknessMap } from '../model.js';
import { distanceToRim } from '../mesh/polygon.js';

/** m at `(x, y)`. */
export function thicknessAt(map: ThicknessMap, outline: ClosedCurve, x: number, y: number): number {
  if (typeof map === 'number') return map;
  if (map.kind === 'edge-taper') {
    const distance = map.width > 0 ? distanceToRim(outline.points, x, y) / map.width : 1;
    return map.edge + (map.centre - map.edge) * Math.min(1, distance);
  }
  return thicknessBetween(map.points, x, y);
}
