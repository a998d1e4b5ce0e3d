/** Plane geometry for drawings; any one unit, y upwards. */
import type { Box, Point, Shape } from './plan.js';

export function moved([x, y]: Point, [dx, dy]: Point): Point {
  return [x + dx, y + dy];
}

export function between(a: Point, b: Point, share: number): Point {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

export function distance(a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

/** The unit vector from a to b; along x where they are one. */
export function direction(a: Point, b: Point): Point {
  const length = distance(a, b);
  return length === 0 ? [1, 0] : [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}

/** Where the straight lines through ab and cd meet; undefined where they run side by side. */
export function meeting(a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) < 1e-12) return undefined;
  const t = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / cross;
  return [a[0] + t * ux, a[1] + t * uy];
}

/** How far along ab (0 at a, 1 at b) it is crossed by the stretch cd; undefined where they do not cross. */
export function crossedAt(a: Point, b: Point, c: Point, d: Point): { at: number; other: number } | undefined {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) < 1e-12) return undefined;
  const at = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / cross;
  const other = ((c[0] - a[0]) * uy - (c[1] - a[1]) * ux) / cross;
  return at >= 0 && at <= 1 && other >= 0 && other <= 1 ? { at, other } : undefined;
}

/** What two convex rings have in common (Sutherland & Hodgman, Comm. ACM 17 (1974) 32); empty where nothing. */
export function common(ring: readonly Point[], window: readonly Point[]): readonly Point[] {
  const frame = areaOf(window) < 0 ? [...window].reverse() : window;
  let left = [...ring];
  for (let i = 0; i < frame.length && left.length > 0; i += 1) {
    const [a, b] = [frame[i]!, frame[(i + 1) % frame.length]!];
    const inside = (p: Point) => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) >= 0;
    left = left.flatMap((point, k) => {
      const before = left[(k + left.length - 1) % left.length]!;
      const cut = inside(point) === inside(before) ? undefined : meeting(before, point, a, b);
      return [...(cut ? [cut] : []), ...(inside(point) ? [point] : [])];
    });
  }
  return left;
}

/** Above zero where the ring runs counter-clockwise. */
export function areaOf(ring: readonly Point[]): number {
  let twice = 0;
  ring.forEach(([x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length]!;
    twice += x * ny - nx * y;
  });
  return twice / 2;
}

/** Strokes that fill a convex ring at 45° and 135°, so far apart: how a drawing marks where two parts are let in. */
export function crossHatch(ring: readonly Point[], apart: number): readonly (readonly [Point, Point])[] {
  return [45, 135].flatMap((degrees) => hatch(ring, apart, degrees));
}

export function hatch(ring: readonly Point[], apart: number, degrees: number): readonly (readonly [Point, Point])[] {
  const angle = (degrees * Math.PI) / 180;
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
  const across = (p: Point) => -p[0] * uy + p[1] * ux;
  const levels = ring.map(across);
  const [low, high] = [Math.min(...levels), Math.max(...levels)];
  const strokes: (readonly [Point, Point])[] = [];
  for (let level = (Math.floor(low / apart) + 0.5) * apart; level < high; level += apart) {
    const cuts = ring.flatMap((point, i): Point[] => {
      const next = ring[(i + 1) % ring.length]!;
      const [a, b] = [across(point) - level, across(next) - level];
      return a < 0 === b < 0 ? [] : [between(point, next, a / (a - b))];
    });
    if (cuts.length === 2) strokes.push([cuts[0]!, cuts[1]!]);
  }
  return strokes;
}

/** Fewer points, nowhere farther than `off` from the line they stand for (Douglas & Peucker, Cartographica 10 (1973) 112). */
export function simplified(points: readonly Point[], off: number): readonly Point[] {
  if (points.length < 3) return points;
  const [first, last] = [points[0]!, points[points.length - 1]!];
  let [farthest, at] = [0, 0];
  for (let i = 1; i < points.length - 1; i += 1) {
    const away = fromStretch(points[i]!, first, last);
    if (away > farthest) [farthest, at] = [away, i];
  }
  if (farthest <= off) return [first, last];
  return [...simplified(points.slice(0, at + 1), off).slice(0, -1), ...simplified(points.slice(at), off)];
}

function fromStretch(p: Point, a: Point, b: Point): number {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const square = ux * ux + uy * uy;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((p[0] - a[0]) * ux + (p[1] - a[1]) * uy) / square));
  return Math.sqrt((p[0] - a[0] - t * ux) ** 2 + (p[1] - a[1] - t * uy) ** 2);
}

/** A closed ring moved inwards by `by`; where it would cross itself in a tight bend, the bend is left out. */
export function inset(ring: readonly Point[], by: number): readonly Point[] {
  const inward = areaOf(ring) > 0 ? 1 : -1;
  const moved = ring.map((point, i): Point => {
    const along = direction(ring[(i + ring.length - 1) % ring.length]!, ring[(i + 1) % ring.length]!);
    return [point[0] - inward * along[1] * by, point[1] + inward * along[0] * by];
  });
  const near = distanceToRing(ring);
  return moved.filter(([x, y]) => near(x, y) > by - 0.05);
}

/** How far a place is from a closed ring. Asked thousands of times for one drawing, so in plain numbers. */
export function distanceToRing(ring: readonly Point[]): (x: number, y: number) => number {
  const count = ring.length;
  const sides = new Float64Array(5 * count);
  ring.forEach(([x, y], i) => {
    const [nx, ny] = ring[(i + 1) % count]!;
    const square = (nx - x) ** 2 + (ny - y) ** 2;
    sides.set([x, y, nx - x, ny - y, square === 0 ? 0 : 1 / square], 5 * i);
  });
  return (px, py) => {
    let least = Infinity;
    for (let k = 0; k < sides.length; k += 5) {
      const [dx, dy, ux, uy] = [px - sides[k]!, py - sides[k + 1]!, sides[k + 2]!, sides[k + 3]!];
      const along = (dx * ux + dy * uy) * sides[k + 4]!;
      const t = along < 0 ? 0 : along > 1 ? 1 : along;
      const square = (dx - t * ux) ** 2 + (dy - t * uy) ** 2;
      if (square < least) least = square;
    }
    return Math.sqrt(least);
  };
}

export function lengthOf(points: readonly Point[]): number {
  return points.slice(1).reduce((sum, point, i) => sum + distance(points[i]!, point), 0);
}

export function boxOf(points: readonly Point[]): Box {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

/** Points a shape does not reach beyond. */
export function cornersOf(shape: Shape): readonly Point[] {
  if (shape.kind === 'path') return shape.points;
  const { centre } = shape;
  const [rx, ry] = shape.kind === 'ellipse' ? shape.half : [shape.radius, shape.radius];
  if (shape.kind === 'arc') return pointsOfArc(centre, shape.radius, shape.from, shape.to, 24);
  return [
    [centre[0] - rx, centre[1] - ry],
    [centre[0] + rx, centre[1] + ry],
  ];
}

/** `count` + 1 points of an arc, degrees. */
export function pointsOfArc(centre: Point, radius: number, from: number, to: number, count: number): readonly Point[] {
  const span = to < from ? to + 360 - from : to - from;
  return Array.from({ length: count + 1 }, (_, i): Point => {
    const angle = ((from + (span * i) / count) * Math.PI) / 180;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}
