/** The outline a maker traced from a template: half widths at stations, as many as were read off. SI throughout. */
import { MechanicsError } from '../error.js';
import type { Outline, OutlinePoint } from './half-widths.js';
import { naturalSpline } from './natural-spline.js';

/** Fewer points are no outline: two ends, and two places between. */
const FEWEST = 4;

/**
 * Outline through half widths y (m) at stations x (m) from the tail, the first of them the tail end at 0, the last the neck end. An end
 * with y = 0 is round, one with y > 0 flat: a straight shoulder across the centre line.
 *
 * b(x)² = r(x) q(x), with r the product of x for a round tail and L − x for a round neck, and q a natural cubic spline through the points;
 * at a round end q goes on straight from the two points next to it. On an ellipse and on a rectangle it is exact. Throws on too
 * few points, stations that do not rise from 0, widths not above zero between the ends, and points so uneven that the curve
 * closes between them.
 */
export function tracedOutline(points: readonly OutlinePoint[]): Outline {
  check(points);
  const [tail, neck] = [points[0]!, points[points.length - 1]!];
  const length = neck.x;
  const isRound = { tail: tail.y === 0, neck: neck.y === 0 };
  const round = (x: number): number => (isRound.tail ? x : 1) * (isRound.neck ? length - x : 1);
  const inner = points.filter(({ y }) => y > 0);
  const xs = inner.map(({ x }) => x);
  const ys = inner.map(({ x, y }) => y ** 2 / round(x));
  if (isRound.tail) {
    ys.unshift(straightOn(0, xs[0]!, ys[0]!, xs[1]!, ys[1]!));
    xs.unshift(0);
  }
  if (isRound.neck) {
    const n = xs.length;
    ys.push(straightOn(length, xs[n - 1]!, ys[n - 1]!, xs[n - 2]!, ys[n - 2]!));
    xs.push(length);
  }
  const spline = naturalSpline(xs, ys);
  for (let i = 0; i <= CHECKS; i += 1) {
    if (!(spline.value((length * i) / CHECKS) > 0)) throw uneven();
  }
  const radius = (end: number): number => (spline.value(end) * round0(end, length, isRound)) / 2;
  return {
    length,
    tailRadius: isRound.tail ? radius(0) : Infinity,
    neckRadius: isRound.neck ? radius(length) : Infinity,
    halfWidth: (x) => (x >= 0 && x <= length ? Math.sqrt(Math.max(0, round(x) * spline.value(x))) : 0),
  };
}

/** r(x) without the factor that vanishes at this end. */
function round0(end: number, length: number, isRound: { tail: boolean; neck: boolean }): number {
  return end === 0 ? (isRound.neck ? length : 1) : isRound.tail ? length : 1;
}

/** Value at `x` of the line through (a, p) and (b, q), held between half and twice the nearer one. */
function straightOn(x: number, a: number, p: number, b: number, q: number): number {
  return Math.min(2 * p, Math.max(p / 2, p + ((p - q) / (a - b)) * (x - a)));
}

function check(points: readonly OutlinePoint[]): void {
  if (points.length < FEWEST) {
    throw new MechanicsError(
      'outline',
      'A traced outline needs four points at least: two ends and two places between.',
    );
  }
  points.forEach(({ x, y }, i) => {
    const isEnd = i === 0 || i === points.length - 1;
    if (!Number.isFinite(x + y) || (i === 0 ? x !== 0 : x <= points[i - 1]!.x)) {
      throw new MechanicsError('outline', 'The stations of a traced outline rise from 0 at the tail to the neck end.');
    }
    if (isEnd ? y < 0 : y <= 0) {
      throw new MechanicsError(
        'outline',
        'Between its ends a traced outline is wider than nothing: half widths are written without a sign.',
      );
    }
  });
}

function uneven(): MechanicsError {
  return new MechanicsError('outline', 'No smooth outline goes through these points: one of them is probably a slip.');
}

const CHECKS = 400;
