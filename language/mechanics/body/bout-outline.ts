/** The outline a recipe gives by its three widths: lower bout, waist, upper bout. SI throughout. */
import { solveDense } from '../linear-algebra/dense-solve.js';
import { MechanicsError, positive } from '../error.js';
import { naturalSpline, secondDerivatives } from './natural-spline.js';
import { outlineThrough, type Outline } from './half-widths.js';

export interface Bout {
  /** m, full width */
  readonly width: number;
  /** m, from the tail, where the body is widest (bouts) or narrowest (waist) */
  readonly station: number;
}

export interface Bouts {
  /** m */
  readonly length: number;
  readonly lowerBout: Bout;
  readonly waist: Bout;
  readonly upperBout: Bout;
  /** m; absent: drawn as smoothly as the three widths allow */
  readonly tailRadius?: number;
  readonly neckRadius?: number;
}

/**
 * Outline with exactly these widths as its two maxima and its minimum, at these stations.
 *
 * Three widths alone do not fix where a spline has its maxima, so a free point is put halfway between neighbouring
 * stations; these points, and any end radius not given, are chosen so that b′ = 0 at the three stations with the least
 * bending ∫ q″² dx. All of it is linear in q, hence one small system. The result obeys the rule of `outline.ts`.
 *
 * Throws when the stations are out of order, the waist is not narrower than both bouts, or no smooth outline fits.
 */
export function boutOutline(bouts: Bouts): Outline {
  checkBouts(bouts);
  const { length } = bouts;
  const given = [bouts.lowerBout, bouts.waist, bouts.upperBout];
  const stations = given.map((bout) => bout.station);
  const anchors = [0, ...stations, length];
  const xs = anchors.flatMap((x, i) => (i === 0 ? [x] : [(anchors[i - 1]! + x) / 2, x]));
  const fixed = new Map<number, number>();
  given.forEach(({ width, station }, i) => fixed.set(2 * (i + 1), (width / 2) ** 2 / (station * (length - station))));
  if (bouts.tailRadius !== undefined) fixed.set(0, (2 * bouts.tailRadius) / length);
  if (bouts.neckRadius !== undefined) fixed.set(xs.length - 1, (2 * bouts.neckRadius) / length);
  // b′ = 0 where [x (L − x) q]′ = 0.
  const slopes = stations.map((x, i) => (-fixed.get(2 * (i + 1))! * (length - 2 * x)) / (x * (length - x)));
  const q = smoothest(xs, fixed, stations, slopes);
  const inner = xs.slice(1, -1);
  const radii = [(q[0]! * length) / 2, (q[q.length - 1]! * length) / 2] as const;
  if (!(radii[0] > 0 && radii[1] > 0) || q.some((value) => !(value > 0))) throw noOutline();
  const halfWidths = inner.map((x, i) => Math.sqrt(x * (length - x) * q[i + 1]!));
  const outline = outlineThrough(length, inner, halfWidths, radii[0], radii[1]);
  checkShape(outline, stations);
  return outline;
}

/**
 * Values at the knots: fixed ones kept, the rest so that the spline has these slopes at these stations and bends
 * least.
 */
function smoothest(
  xs: readonly number[],
  fixed: ReadonlyMap<number, number>,
  stations: readonly number[],
  slopes: readonly number[],
): number[] {
  const free = xs.map((_, i) => i).filter((i) => !fixed.has(i));
  const base = xs.map((_, i) => fixed.get(i) ?? 0);
  const units = free.map((k) => xs.map((_, i) => (i === k ? 1 : 0)));
  const bends = [base, ...units].map((ys) => secondDerivatives(xs, ys));
  const tangents = [base, ...units].map((ys) => {
    const spline = naturalSpline(xs, ys);
    return stations.map((x) => spline.slope(x));
  });
  const n = free.length;
  const size = n + stations.length;
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < n; j += 1) matrix[i]![j] = bendingProduct(xs, bends[i + 1]!, bends[j + 1]!);
    right[i] = -bendingProduct(xs, bends[i + 1]!, bends[0]!);
    for (let s = 0; s < stations.length; s += 1) {
      matrix[i]![n + s] = tangents[i + 1]![s]!;
      matrix[n + s]![i] = tangents[i + 1]![s]!;
    }
  }
  for (let s = 0; s < stations.length; s += 1) right[n + s] = slopes[s]! - tangents[0]![s]!;
  const solution = solveDense(matrix, right);
  const values = [...base];
  free.forEach((k, i) => (values[k] = solution[i]!));
  return values;
}

/** ∫ u″ v″ dx of two splines on the same knots: their second derivatives are straight between knots. */
function bendingProduct(xs: readonly number[], u: readonly number[], v: readonly number[]): number {
  let sum = 0;
  for (let i = 1; i < xs.length; i += 1) {
    const [a, b, c, d] = [u[i - 1]!, u[i]!, v[i - 1]!, v[i]!];
    sum += ((xs[i]! - xs[i - 1]!) * (2 * a * c + 2 * b * d + a * d + b * c)) / 6;
  }
  return sum;
}

function checkBouts({ length, lowerBout, waist, upperBout, tailRadius, neckRadius }: Bouts): void {
  positive('body length', length);
  positive('lower bout width', lowerBout.width);
  positive('waist width', waist.width);
  positive('upper bout width', upperBout.width);
  if (tailRadius !== undefined) positive('tail radius', tailRadius);
  if (neckRadius !== undefined) positive('neck radius', neckRadius);
  const order = [0, lowerBout.station, waist.station, upperBout.station, length];
  if (order.some((x, i) => i > 0 && !(x > order[i - 1]!))) {
    throw new MechanicsError(
      'station',
      'From the tail, the stations must come in this order within the body: lower bout, waist, upper bout.',
    );
  }
  if (waist.width >= lowerBout.width || waist.width >= upperBout.width) {
    throw new MechanicsError('waist width', 'The waist must be narrower than both bouts.');
  }
}

/** Rising to the lower bout, falling to the waist, rising to the upper bout, falling to the neck; nothing else. */
function checkShape(outline: Outline, stations: readonly number[]): void {
  const ends = [0, ...stations, outline.length];
  const steps = 40;
  for (let part = 0; part < 4; part += 1) {
    const rising = part % 2 === 0;
    const [from, to] = [ends[part]!, ends[part + 1]!];
    for (let i = 1; i <= steps; i += 1) {
      const before = outline.halfWidth(from + ((to - from) * (i - 1)) / steps);
      const after = outline.halfWidth(from + ((to - from) * i) / steps);
      const step = rising ? after - before : before - after;
      if (step < -1e-6 * outline.length) throw noOutline();
    }
  }
}

function noOutline(): MechanicsError {
  return new MechanicsError(
    'outline',
    'No smooth outline has these widths at these stations: check them, and the end radii if given.',
  );
}
