/** A plate's thickness as contour lines with their figures, as a map has heights. */
import { contours } from 'd3-contour';
import { taken } from '../../recipes/derived/taken.js';
import { thicknessBetween } from '../../mechanics/wood/uneven-plate.js';
import { thicknessMap } from '../../recipes/derived/plate-thickness.js';
import type { Ask } from '../../recipes/evaluation/evaluation.js';
import { inMm, mmOf, outlineRing } from './drawn-from.js';
import { boxOf, distanceToRing, simplified } from './geometry.js';
import type { Label, Point, Shape } from './plan.js';

/** mm between the points at which the thickness is looked up. */
const STEP = 4;
/** mm of thickness between two lines, coarser where there would be many. */
const LEVELS = [0.05, 0.1, 0.2, 0.5];
const MOST_LINES = 7;

export interface ThicknessDrawn {
  readonly shapes: readonly Shape[];
  readonly labels: readonly Label[];
}

/** `written`: a thickness in metres as the shop writes it. */
export function thicknessDrawn(ask: Ask, plate: 'top' | 'back', written: (metres: number) => string): ThicknessDrawn {
  const at = thicknessAt(ask, plate);
  const middle: Label = {
    ...{ layer: 'thickness', height: 3.5, anchor: 'middle', part: plate },
    at: [0, inMm(ask, 'body.length') * 0.09],
    text: written(ask.number(`${plate}.thickness`)),
  };
  if (!at) return { shapes: [], labels: [middle] };
  const ring = outlineRing(ask);
  const { left, right, bottom, top } = boxOf(ring);
  const [columns, rows] = [Math.ceil((right - left) / STEP) + 2, Math.ceil((top - bottom) / STEP) + 2];
  const away = awayFrom(ring);
  const values = Array.from({ length: rows * columns }, (_, i) => {
    const p: Point = [left + ((i % columns) - 0.5) * STEP, bottom + (Math.floor(i / columns) - 0.5) * STEP];
    return at(p, away(p));
  });
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const step = LEVELS.find((each) => (high - low) / each <= MOST_LINES) ?? 1;
  const trace = contours().size([columns, rows]).smooth(true);
  const shapes: Shape[] = [];
  const labels: Label[] = [middle];
  for (let level = Math.ceil(low / step) * step; level < high - 1e-9; level += step) {
    for (const line of trace.contour(values, level).coordinates.flat()) {
      const placed = line.map(([x, y]): Point => [left + (x! - 1) * STEP, bottom + (y! - 1) * STEP]);
      for (const points of within(placed, (p) => away(p) > 1)) {
        shapes.push({
          ...{ kind: 'path', layer: 'thickness', line: 'thin', closed: false, part: plate },
          points: simplified(points, 0.05),
        });
        const label = points[Math.floor(points.length / 2)]!;
        labels.push({
          ...{ layer: 'thickness', height: 2.5, anchor: 'middle', part: plate },
          at: label,
          text: written(level / 1000),
        });
      }
    }
  }
  return { shapes, labels };
}

/** mm of thickness at a place that lies so far (mm) from the outline; undefined for an even plate. */
function thicknessAt(ask: Ask, plate: 'top' | 'back'): ((p: Point, away: number) => number) | undefined {
  const map = thicknessMap(ask, plate)?.map(({ point }) => point);
  if (map) return ([x, y]) => mmOf(thicknessBetween(map, y / 1000, x / 1000));
  const centre = inMm(ask, `${plate}.thickness`);
  const edge = ask.numberIf(`${plate}.edge-thickness`);
  if (edge === undefined || Math.abs(mmOf(edge) - centre) < 1e-6) return undefined;
  const band = mmOf(taken(ask, `${plate}.edge-width`));
  return (_, away) => mmOf(edge) + (centre - mmOf(edge)) * Math.max(0, Math.min(1, away / band));
}

/** mm inside a ring; below zero outside. */
function awayFrom(ring: readonly Point[]): (p: Point) => number {
  const coarse = simplified(ring, 0.2);
  const near = distanceToRing(coarse);
  return ([x, y]) => (holds(coarse, x, y) ? near(x, y) : -near(x, y));
}

function holds(ring: readonly Point[], x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, before = ring.length - 1; i < ring.length; before = i, i += 1) {
    const [a, b] = [ring[before]!, ring[i]!];
    if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) * (b[0] - a[0])) / (b[1] - a[1])) inside = !inside;
  }
  return inside;
}

/** The stretches of a line whose points all hold. */
function within(line: readonly Point[], holds: (p: Point) => boolean): readonly (readonly Point[])[] {
  const found: Point[][] = [];
  let open: Point[] | undefined;
  for (const point of line) {
    if (!holds(point)) open = undefined;
    else if (open) open.push(point);
    else found.push((open = [point]));
  }
  return found.filter((stretch) => stretch.length > 2);
}
