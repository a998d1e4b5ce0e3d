/**
 * The outline of a guitar body, symmetric about the centre line: half width b at station x from the tail. SI
 * throughout.
 *
 * b(x)² = x (L − x) q(x), q a natural cubic spline. The factor x (L − x) makes both ends round: the radius of
 * curvature at the tail is q(0) L / 2, at the neck q(L) L / 2. b² − y² is a smooth function that vanishes on the
 * outline.
 */
import { MechanicsError, positive } from '../error.js';
import { naturalSpline } from './natural-spline.js';

export interface Outline {
  /** m, tail to neck end */
  readonly length: number;
  /** m, radius of curvature at the tail end of the centre line; infinite where that is flat */
  readonly tailRadius: number;
  readonly neckRadius: number;
  /** Half width (m) at station `x`; zero outside 0 … length, and at an end that is not flat. */
  halfWidth(x: number): number;
}

export interface OutlinePoint {
  readonly x: number;
  readonly y: number;
}

/**
 * Outline through half widths (m) at stations (m, rising, inside the body) with given end radii (m).
 * Throws on stations off the body, widths not above zero, and on a curve that would close between the ends.
 */
export function outlineThrough(
  length: number,
  stations: readonly number[],
  halfWidths: readonly number[],
  tailRadius: number,
  neckRadius: number,
): Outline {
  positive('body length', length);
  if (stations.length !== halfWidths.length) {
    throw new MechanicsError('stations', 'Each station of the outline needs one width.');
  }
  const xs = [0, ...stations, length];
  const ys = [
    (2 * positive('tail radius', tailRadius)) / length,
    ...stations.map((x, i) => {
      if (!(x > 0 && x < length)) throw new MechanicsError('station', 'A station lies outside the body.');
      return positive('width', halfWidths[i]!) ** 2 / (x * (length - x));
    }),
    (2 * positive('neck radius', neckRadius)) / length,
  ];
  const spline = naturalSpline(xs, ys);
  for (let i = 0; i <= CHECKS; i += 1) {
    if (!(spline.value((length * i) / CHECKS) > 0)) {
      throw new MechanicsError(
        'outline',
        'The outline closes on itself between tail and neck: check stations and widths.',
      );
    }
  }
  return {
    length,
    tailRadius,
    neckRadius,
    halfWidth: (x) => (x > 0 && x < length ? Math.sqrt(Math.max(0, x * (length - x) * spline.value(x))) : 0),
  };
}

/** `count` + 1 points of the bass or treble half, closer together near the round ends: x = L (1 − cos θ) / 2. */
export function outlinePolyline(outline: Outline, count = 100): OutlinePoint[] {
  return Array.from({ length: count + 1 }, (_, i) => {
    const x = (outline.length / 2) * (1 - Math.cos((Math.PI * i) / count));
    return { x, y: outline.halfWidth(x) };
  });
}

/** Station (m) of the centre of area. */
export function outlineCentroid(outline: Outline): number {
  return integrateAlong(outline, (x, b) => x * b) / integrateAlong(outline, (_, b) => b);
}

/**
 * ∫ f(x, b(x)) dx over the body. With x = L (1 − cos θ) / 2 the round ends become smooth and the trapezium rule in θ is
 * good to about 1e-8 of the area.
 */
export function integrateAlong(outline: Outline, f: (x: number, halfWidth: number) => number): number {
  let sum = 0;
  for (let i = 1; i < PANELS; i += 1) {
    const angle = (Math.PI * i) / PANELS;
    const x = (outline.length / 2) * (1 - Math.cos(angle));
    sum += f(x, outline.halfWidth(x)) * Math.sin(angle);
  }
  return (sum * Math.PI * outline.length) / (2 * PANELS);
}

export function polylineLength(points: readonly OutlinePoint[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i += 1) {
    sum += Math.hypot(points[i]!.x - points[i - 1]!.x, points[i]!.y - points[i - 1]!.y);
  }
  return sum;
}

const CHECKS = 200;
const PANELS = 400;
