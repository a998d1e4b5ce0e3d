/** Plane geometry on closed polygons given as lists of points. */
import type { Point } from '../model.js';

/** m², positive when the points run counter-clockwise. */
export function signedArea(polygon: readonly Point[]): number {
  let twice = 0;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    twice += polygon[j]![0] * polygon[i]![1] - polygon[i]![0] * polygon[j]![1];
  }
  return twice / 2;
}

/** The same polygon running counter-clockwise. */
export function counterClockwise(polygon: readonly Point[]): readonly Point[] {
  return signedArea(polygon) < 0 ? [...polygon].reverse() : polygon;
}

/** Whether `(x, y)` lies inside; on the rim either answer is possible. */
export function contains(polygon: readonly Point[], x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const [xi, yi] = polygon[i]!;
    const [xj, yj] = polygon[j]!;
    if (yi > y !== yj > y && x < xi + ((y - yi) / (yj - yi)) * (xj - xi)) inside = !inside;
  }
  return inside;
}

/** Distance of `(x, y)` from the segment a–b. */
export function distanceToSegment(x: number, y: number, a: Point, b: Point): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const squared = dx * dx + dy * dy;
  const t = squared > 0 ? Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / squared)) : 0;
  const px = x - a[0] - t * dx;
  const py = y - a[1] - t * dy;
  return Math.sqrt(px * px + py * py);
}

/** Distance of `(x, y)` from the rim of a closed polygon. */
export function distanceToRim(polygon: readonly Point[], x: number, y: number): number {
  let least = Infinity;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const d = distanceToSegment(x, y, polygon[j]!, polygon[i]!);
    if (d < least) least = d;
  }
  return least;
}

/** The place where segments a–b and c–d cross, as parts along each; undefined when they do not or are parallel. */
export function crossing(
  a: Point,
  b: Point,
  c: Point,
  d: Point,
): { readonly t: number; readonly s: number } | undefined {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const vx = d[0] - c[0];
  const vy = d[1] - c[1];
  const det = ux * vy - uy * vx;
  if (Math.abs(det) <= 1e-12 * Math.hypot(ux, uy) * Math.hypot(vx, vy)) return undefined;
  const wx = c[0] - a[0];
  const wy = c[1] - a[1];
  const t = (wx * vy - wy * vx) / det;
  const s = (wx * uy - wy * ux) / det;
  return t >= 0 && t <= 1 && s >= 0 && s <= 1 ? { t, s } : undefined;
}

/** Whether any two sides of the closed polygon cross, other than neighbours at their shared corner. */
export function crossesItself(polygon: readonly Point[]): boolean {
  const n = polygon.length;
  for (let i = 0; i < n; i++) {
    const a = polygon[i]!;
    const b = polygon[(i + 1) % n]!;
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      const c = polygon[j]!;
      const d = polygon[(j + 1) % n]!;
      if (Math.min(a[0], b[0]) > Math.max(c[0], d[0]) || Math.max(a[0], b[0]) < Math.min(c[0], d[0])) continue;
      if (crossing(a, b, c, d)) return true;
    }
  }
  return false;
}

/** How each corner of a counter-clockwise polygon moves when every side is drawn in by one unit (mitred; sharp corners are held to 3 units). */
export function inwardMitres(polygon: readonly Point[]): readonly Point[] {
  const n = polygon.length;
  return polygon.map((p, i) => {
    const before = polygon[(i + n - 1) % n]!;
    const after = polygon[(i + 1) % n]!;
    const [ax, ay] = leftNormal(before, p);
    const [bx, by] = leftNormal(p, after);
    const scale = Math.max(1 + ax * bx + ay * by, 2 / 9);
    return [(ax + bx) / scale, (ay + by) / scale] as Point;
  });
}

/** Centre of gravity of a polygon's area. */
export function centroid(polygon: readonly Point[]): Point {
  const [ox, oy] = polygon[0]!;
  let area = 0;
  let cx = 0;
  let cy = 0;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const xj = polygon[j]![0] - ox;
    const yj = polygon[j]![1] - oy;
    const xi = polygon[i]![0] - ox;
    const yi = polygon[i]![1] - oy;
    const cross = xj * yi - xi * yj;
    area += cross;
    cx += (xi + xj) * cross;
    cy += (yi + yj) * cross;
  }
  return [ox + cx / (3 * area), oy + cy / (3 * area)];
}

function leftNormal(a: Point, b: Point): Point {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  return [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
}
