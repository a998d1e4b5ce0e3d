/** A closed outline measured along its length. */
import { counterClockwise } from './polygon.js';
import type { Point } from '../model.js';

/** A turn sharper than this at one point of a polyline is a corner that the mesh must keep. */
const CORNER = (35 * Math.PI) / 180;

export interface ClosedCurve {
  readonly points: readonly Point[];
  readonly length: number;
  /** Distances along the curve of its sharp corners, ascending. */
  readonly corners: readonly number[];
  /** The point at distance `s`, taken round the curve. */
  at(s: number): Point;
  /** Distance along the curve of the point nearest to `(x, y)`, and how far away it is. */
  nearest(x: number, y: number): { readonly s: number; readonly distance: number };
}

/** Reads a closed polygon as a curve, counter-clockwise. */
export function closedCurve(polygon: readonly Point[]): ClosedCurve {
  const points = counterClockwise(polygon);
  const n = points.length;
  const start = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    const [ax, ay] = points[i]!;
    const [bx, by] = points[(i + 1) % n]!;
    start[i + 1] = start[i]! + Math.hypot(bx - ax, by - ay);
  }
  const length = start[n]!;

  const at = (s: number): Point => {
    const d = ((s % length) + length) % length;
    let low = 0;
    let high = n;
    while (high - low > 1) {
      const mid = (low + high) >> 1;
      if (start[mid]! <= d) low = mid;
      else high = mid;
    }
    const side = start[low + 1]! - start[low]!;
    const t = side > 0 ? (d - start[low]!) / side : 0;
    const a = points[low]!;
    const b = points[(low + 1) % n]!;
    return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
  };

  const nearest = (x: number, y: number): { s: number; distance: number } => {
    let s = 0;
    let least = Infinity;
    for (let i = 0; i < n; i++) {
      const a = points[i]!;
      const b = points[(i + 1) % n]!;
      const dx = b[0] - a[0];
      const dy = b[1] - a[1];
      const squared = dx * dx + dy * dy;
      if (squared === 0) continue;
      const t = Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / squared));
      const px = x - a[0] - t * dx;
      const py = y - a[1] - t * dy;
      const distance = px * px + py * py;
      if (distance < least) {
        least = distance;
        s = start[i]! + t * Math.sqrt(squared);
      }
    }
    return { s: s % length, distance: Math.sqrt(least) };
  };

  return { points, length, corners: cornersOf(points, start), at, nearest };
}

function cornersOf(points: readonly Point[], start: Float64Array): readonly number[] {
  const n = points.length;
  const corners: number[] = [];
  for (let i = 0; i < n; i++) {
    const a = points[(i + n - 1) % n]!;
    const p = points[i]!;
    const b = points[(i + 1) % n]!;
    const turn = Math.atan2(
      (p[0] - a[0]) * (b[1] - p[1]) - (p[1] - a[1]) * (b[0] - p[0]),
      (p[0] - a[0]) * (b[0] - p[0]) + (p[1] - a[1]) * (b[1] - p[1]),
    );
    if (Math.abs(turn) > CORNER) corners.push(start[i]!);
  }
  return corners;
}
