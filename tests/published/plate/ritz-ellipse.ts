/**
 * Converged thin-plate frequencies of an elliptical plate by the Ritz method with polynomials: an oracle of another kind than the
 * element solver (A.W. Leissa, Vibration of Plates, NASA SP-160, 1969, ch. 3 describes the approach).
 */
import { CholeskyDecomposition, EigenvalueDecomposition, inverse, Matrix } from 'ml-matrix';

/** Coefficients by powers of x and y. */
type Polynomial = ReadonlyMap<string, number>;

/** ω a² √(m/D) of the lowest modes; `a` the longer, `b` the shorter semi-axis. */
export function ellipseModes(b: number, edge: 'clamped' | 'hinged', poisson: number, degree = 12): readonly number[] {
  const rim = polynomial([
    [0, 0, 1],
    [2, 0, -1],
    [0, 2, -1 / (b * b)],
  ]);
  const factor = edge === 'clamped' ? times(rim, rim) : rim;
  const values: number[] = [];
  for (const px of [0, 1]) {
    for (const py of [0, 1]) {
      const basis: Polynomial[] = [];
      for (let i = px; i <= degree; i += 2) {
        for (let j = py; i + j <= degree; j += 2) basis.push(times(factor, polynomial([[i, j, b ** -j]])));
      }
      values.push(...modesOf(basis, b, poisson));
    }
  }
  return values.sort((p, q) => p - q);
}

function modesOf(basis: readonly Polynomial[], b: number, poisson: number): number[] {
  const n = basis.length;
  const stiffness = Matrix.zeros(n, n);
  const mass = Matrix.zeros(n, n);
  const second = basis.map((p) => ({
    xx: derive(derive(p, 0), 0),
    yy: derive(derive(p, 1), 1),
    xy: derive(derive(p, 0), 1),
  }));
  const product = (p: Polynomial, q: Polynomial): number => integral(times(p, q), b);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const [p, q] = [second[i]!, second[j]!];
      const k =
        product(p.xx, q.xx) +
        product(p.yy, q.yy) +
        poisson * (product(p.xx, q.yy) + product(p.yy, q.xx)) +
        2 * (1 - poisson) * product(p.xy, q.xy);
      const m = product(basis[i]!, basis[j]!);
      stiffness.set(i, j, k);
      stiffness.set(j, i, k);
      mass.set(i, j, m);
      mass.set(j, i, m);
    }
  }
  const scale = mass.diagonal().map((value) => 1 / Math.sqrt(value));
  const scaled = (matrix: Matrix): Matrix =>
    Matrix.zeros(n, n).apply(function (i, j) {
      this.set(i, j, matrix.get(i, j) * (scale[i]! * scale[j]!));
    });
  const lower = inverse(new CholeskyDecomposition(scaled(mass)).lowerTriangularMatrix);
  const standard = lower.mmul(scaled(stiffness)).mmul(lower.transpose());
  return new EigenvalueDecomposition(standard, { assumeSymmetric: true }).realEigenvalues.map(Math.sqrt);
}

function polynomial(terms: readonly (readonly [number, number, number])[]): Polynomial {
  return new Map(terms.map(([i, j, c]) => [`${i} ${j}`, c]));
}

function times(p: Polynomial, q: Polynomial): Polynomial {
  const result = new Map<string, number>();
  for (const [a, ca] of p) {
    for (const [b, cb] of q) {
      const [i, j] = a.split(' ').map(Number);
      const [k, l] = b.split(' ').map(Number);
      const key = `${i! + k!} ${j! + l!}`;
      result.set(key, (result.get(key) ?? 0) + ca * cb);
    }
  }
  return result;
}

function derive(p: Polynomial, axis: 0 | 1): Polynomial {
  const result = new Map<string, number>();
  for (const [key, c] of p) {
    const powers = key.split(' ').map(Number);
    const power = powers[axis]!;
    if (power === 0) continue;
    powers[axis] = power - 1;
    result.set(powers.join(' '), c * power);
  }
  return result;
}

/** Over the ellipse x² + y²/b² ≤ 1: ∫ xᵖ y^q = b^(q+1) · 2 Γ((p+1)/2) Γ((q+1)/2) / ((p+q+2) Γ((p+q)/2 + 1)) for even powers. */
function integral(p: Polynomial, b: number): number {
  let sum = 0;
  for (const [key, c] of p) {
    const [i, j] = key.split(' ').map(Number) as [number, number];
    if (i % 2 || j % 2) continue;
    const gammas = (halfGamma(i + 1) * halfGamma(j + 1)) / halfGamma(i + j + 2);
    sum += (c * b ** (j + 1) * 2 * gammas) / (i + j + 2);
  }
  return sum;
}

/** Γ(n/2) */
function halfGamma(n: number): number {
  let value = n % 2 === 0 ? 1 : Math.sqrt(Math.PI);
  for (let k = n % 2 === 0 ? 2 : 1; k < n; k += 2) value *= k / 2;
  return value;
}
