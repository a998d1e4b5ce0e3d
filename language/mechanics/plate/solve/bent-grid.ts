/** A bent plate on a grid, as smooth as the plate itself: for contours and still lines without corners. */
import type { TopSolution } from '../solution.js';
import type { GridWeights } from './grid-sampling.js';

/** Movement of each node and how it slopes there, along x and along y. */
export interface Bent {
  readonly w: ArrayLike<number>;
  readonly slopes: readonly [alongX: ArrayLike<number>, alongY: ArrayLike<number>];
}

/**
 * The movement at the points of the grid; NaN off the plate. Over each triangle the cubic that has the movement and slopes of its
 * corners: along its sides it is the Hermite cubic of the plate element's own sides, so that neighbours meet, and it gives every
 * second-degree surface back exactly (the triangle of O. C. Zienkiewicz with Y. K. Cheung and others, 1965, in Bernstein's form after
 * G. Farin, Curves and Surfaces for CAGD; from memory).
 */
export function bentOnGrid(
  { nodes, weights }: GridWeights,
  { x, y }: Pick<TopSolution['mesh'], 'x' | 'y'>,
  { w, slopes: [alongX, alongY] }: Bent,
): Float64Array {
  const field = new Float64Array(nodes.length / 3).fill(NaN);
  /** From corner `p` a third of the way to corner `q`, straight on. */
  const towards = (p: number, q: number) => w[p]! + (alongX[p]! * (x[q]! - x[p]!) + alongY[p]! * (y[q]! - y[p]!)) / 3;
  for (let i = 0; i < field.length; i++) {
    const [a, b, c] = [nodes[3 * i]!, nodes[3 * i + 1]!, nodes[3 * i + 2]!];
    if (a < 0) continue;
    const [u, v, t] = [weights[3 * i]!, weights[3 * i + 1]!, weights[3 * i + 2]!];
    const [ab, ac, ba, bc] = [towards(a, b), towards(a, c), towards(b, a), towards(b, c)];
    const [ca, cb] = [towards(c, a), towards(c, b)];
    const middle = (ab + ac + ba + bc + ca + cb) / 4 - (w[a]! + w[b]! + w[c]!) / 6;
    field[i] =
      w[a]! * u ** 3 +
      w[b]! * v ** 3 +
      w[c]! * t ** 3 +
      3 * (u * u * (ab * v + ac * t) + v * v * (ba * u + bc * t) + t * t * (ca * u + cb * v)) +
      6 * middle * u * v * t;
  }
  return field;
}
