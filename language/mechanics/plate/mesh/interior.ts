/** Points inside the plate, between the lines of the plan. */
import { onPlate, type Layout } from './mesh-lines.js';
import type { PlanarGraph } from './planar-graph.js';
import { distanceToSegment } from './polygon.js';
import type { SizeAt } from './sizing.js';

/** Nearer to an edge than this share of the wished size, or to another point than the next, no point is set. */
const FROM_EDGE = 0.55;
const FROM_POINT = 0.7;

/** Appends to `x`, `y`: a square pattern, and where nodes stand closer, patterns of half and a quarter of its spacing. */
export function addInterior(
  x: number[],
  y: number[],
  { edges, shortEnds }: Pick<PlanarGraph, 'edges' | 'shortEnds'>,
  layout: Layout,
  coarse: number,
  sizeAt: SizeAt,
): void {
  const minX = Math.min(...layout.outline.points.map((p) => p[0]));
  const maxX = Math.max(...layout.outline.points.map((p) => p[0]));
  const minY = Math.min(...layout.outline.points.map((p) => p[1]));
  const maxY = Math.max(...layout.outline.points.map((p) => p[1]));
  const first = x.length;
  const addWhereClear = (px: number, py: number, fromPoint: number, fromEdge: number): void => {
    for (let k = first; k < x.length; k++) {
      const [dx, dy] = [x[k]! - px, y[k]! - py];
      if (dx * dx + dy * dy < fromPoint * fromPoint) return;
    }
    for (const { a, b } of edges) {
      if (Math.min(x[a]!, x[b]!) > px + fromEdge || Math.max(x[a]!, x[b]!) < px - fromEdge) continue;
      if (Math.min(y[a]!, y[b]!) > py + fromEdge || Math.max(y[a]!, y[b]!) < py - fromEdge) continue;
      if (distanceToSegment(px, py, [x[a]!, y[a]!], [x[b]!, y[b]!]) < fromEdge) return;
    }
    if (!onPlate(px, py, layout.outline, layout.holes)) return;
    x.push(px);
    y.push(py);
  };
  for (const { end, tangent, along, size } of shortEnds) {
    for (const back of [0, size]) {
      for (const side of [size, -size]) {
        const px = end[0] + side * tangent[0] + back * along[0];
        const py = end[1] + side * tangent[1] + back * along[1];
        addWhereClear(px, py, 0.6 * size, 0.4 * size);
      }
    }
  }
  for (const finer of [1, 2, 4]) {
    const columns = Math.max(1, Math.round((maxX - minX) / coarse)) * finer;
    const rows = Math.max(1, Math.round((maxY - minY) / coarse)) * finer;
    for (let i = 1; i < columns; i++) {
      for (let j = 1; j < rows; j++) {
        const px = minX + ((maxX - minX) * i) / columns;
        const py = minY + ((maxY - minY) * j) / rows;
        const size = sizeAt(px, py);
        if (finer === 1 || size * finer < 1.5 * coarse) addWhereClear(px, py, FROM_POINT * size, FROM_EDGE * size);
      }
    }
  }
}
