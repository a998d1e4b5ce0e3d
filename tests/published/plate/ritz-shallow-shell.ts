/**
 * Frequencies of a shallow spherical panel of rectangular plan by the Ritz method with sines, from the energy of Donnell's
 * shallow-shell theory (A.W. Leissa, Vibration of Shells, NASA SP-288, 1973; from memory): an oracle of another kind than the
 * element solver. The motion in the plane has no inertia here.
 */
import { EigenvalueDecomposition, inverse, Matrix } from 'ml-matrix';

export interface Panel {
  /** m: along x, along y, thickness, radius. */
  readonly a: number;
  readonly b: number;
  readonly thickness: number;
  readonly radius: number;
  /** Pa, with ν_12 */
  readonly e1: number;
  readonly e2: number;
  readonly poisson: number;
  readonly shear: number;
  /** kg/m³ */
  readonly density: number;
}

/** `held`: no motion in the plane along the whole edge. `diaphragm`: held along the edge, free at right angles to it. */
export type PanelEdge = 'held' | 'diaphragm';

/** Hz, lowest first. */
export function shallowPanelModes(panel: Panel, edge: PanelEdge, terms = 8): readonly number[] {
  const { a, b, thickness: h, radius, e1, e2, poisson, shear, density } = panel;
  const q = 1 / (1 - (poisson * poisson * e2) / e1);
  const [q11, q12, q22] = [q * e1, q * poisson * e2, q * e2];
  const n = terms * terms;
  const index = Array.from({ length: n }, (_, k) => [1 + (k % terms), 1 + Math.floor(k / terms)] as const);
  const ux = edge === 'held' ? sine : cosine;
  // Strains of each unknown (u, v, w blocks) as products of a function of x and one of y.
  const unknowns = [
    ...index.map(([m, k]): Strains => ({
      ex: [
        [ux, 1, m],
        [sine, 0, k],
      ],
      ey: NONE,
      g: [
        [ux, 0, m],
        [sine, 1, k],
      ],
    })),
    ...index.map(([m, k]): Strains => ({
      ex: NONE,
      ey: [
        [sine, 0, m],
        [ux, 1, k],
      ],
      g: [
        [sine, 1, m],
        [ux, 0, k],
      ],
    })),
  ];
  const curved = index.map(([m, k]): Strains => {
    const rise: Product = [
      [sine, 0, m],
      [sine, 0, k],
    ];
    return { ex: rise, ey: rise, g: NONE };
  });
  const product = inner(a, b);
  const energy = (p: Strains, r: Strains, ps: number, rs: number): number =>
    h *
    ps *
    rs *
    (q11 * product(p.ex, r.ex) +
      q12 * (product(p.ex, r.ey) + product(p.ey, r.ex)) +
      q22 * product(p.ey, r.ey) +
      shear * product(p.g, r.g));
  const kuu = Matrix.zeros(2 * n, 2 * n);
  const kuw = Matrix.zeros(2 * n, n);
  const kww = Matrix.zeros(n, n);
  for (let i = 0; i < 2 * n; i++) {
    for (let j = 0; j <= i; j++) {
      const value = energy(unknowns[i]!, unknowns[j]!, 1, 1);
      kuu.set(i, j, value);
      kuu.set(j, i, value);
    }
    for (let j = 0; j < n; j++) kuw.set(i, j, energy(unknowns[i]!, curved[j]!, 1, 1 / radius));
  }
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) kww.set(i, j, energy(curved[i]!, curved[j]!, 1 / radius, 1 / radius));
    const [x, y] = [(index[i]![0] * Math.PI) / a, (index[i]![1] * Math.PI) / b];
    const bend =
      (h ** 3 / 12) * (q11 * x ** 4 + 2 * (q12 + 2 * shear) * x * x * y * y + q22 * y ** 4) * (a / 2) * (b / 2);
    kww.set(i, i, kww.get(i, i) + bend);
  }
  const reduced = kww.sub(kuw.transpose().mmul(inverse(kuu)).mmul(kuw)).mul(1 / ((density * h * a * b) / 4));
  const squares = new EigenvalueDecomposition(reduced, { assumeSymmetric: true }).realEigenvalues;
  return squares.map((square) => Math.sqrt(square) / (2 * Math.PI)).sort((p, r) => p - r);
}

/** A function, how often it is differentiated, and its number of half waves. */
type Factor = readonly [kind: Wave, derivative: 0 | 1, halves: number];
type Product = readonly [Factor, Factor] | readonly [];
interface Strains {
  readonly ex: Product;
  readonly ey: Product;
  readonly g: Product;
}
type Wave = (turn: number, derivative: 0 | 1) => number;

const NONE: Product = [];
const sine: Wave = (turn, derivative) => (derivative === 0 ? Math.sin(turn) : Math.cos(turn));
const cosine: Wave = (turn, derivative) => (derivative === 0 ? Math.cos(turn) : -Math.sin(turn));

/** ∬ p r, by Simpson's rule, fine enough for the waves used. */
function inner(a: number, b: number): (p: Product, r: Product) => number {
  const known = new Map<string, number>();
  const line = (p: Factor, r: Factor, length: number): number => {
    const key = [
      length,
      ...[p, r].map(([wave, derivative, halves]) => `${wave === sine ? 's' : 'c'}${derivative}${halves}`),
    ].join(' ');
    let value = known.get(key);
    if (value === undefined) known.set(key, (value = integral(p, r, length)));
    return value;
  };
  return (p, r) => (p.length === 0 || r.length === 0 ? 0 : line(p[0], r[0], a) * line(p[1], r[1], b));
}

function integral(p: Factor, r: Factor, length: number): number {
  const steps = 400;
  const at = ([wave, derivative, halves]: Factor, t: number): number =>
    wave(halves * Math.PI * t, derivative) * (derivative === 1 ? (halves * Math.PI) / length : 1);
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * at(p, i / steps) * at(r, i / steps);
  }
  return (sum * length) / steps / 3;
}
