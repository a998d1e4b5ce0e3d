/** The sparse solver against dense algebra from a general library, on a small braced top. */
import { CholeskyDecomposition, EigenvalueDecomposition, inverse, Matrix, solve } from 'ml-matrix';
import { expect, test } from 'vitest';
import type { TopModel } from '../../../language/mechanics/plate/index.js';
import { LAMINATE_SIZE, AT_MASS } from '../../../language/mechanics/plate/element/laminate.js';
import { loadCase } from '../../../language/mechanics/plate/solve/loads.js';
import { plateElement } from '../../../language/mechanics/plate/element/plate-element.js';
import { ribStiffness } from '../../../language/mechanics/plate/element/rib-element.js';
import { RIB_MASS, RIB_SIZE } from '../../../language/mechanics/plate/element/rib-section.js';
import type { SolvedState } from '../../../language/mechanics/plate/solution.js';
import { blank, bridgeParts, HELD, xBraces } from '../../published/plate/reference-tops.js';
import { solved } from '../../published/plate/solved.js';

/** A small panel with two braces that cross and a bridge on it. */
const model: TopModel = {
  ...blank(0.2, 0.15, 0.0028, HELD),
  braces: [
    {
      ...xBraces[0]!,
      axis: [
        [0.02, 0.02],
        [0.18, 0.13],
      ],
    },
    {
      ...xBraces[1]!,
      axis: [
        [0.02, 0.13],
        [0.18, 0.02],
      ],
    },
  ],
  patches: [
    {
      ...bridgeParts[1]!,
      outline: [
        [0.14, 0.06],
        [0.17, 0.06],
        [0.17, 0.09],
        [0.14, 0.09],
      ],
    },
  ],
  load: { patch: 'bridge', couple: 1, shear: 50 },
};
const solution = solved(model, { nodes: 60 });
const { stiffness, mass, load } = denseSystem(solution.state);

test('six modes agree with a dense eigenvalue solution', () => {
  // The braces' own rotations carry no mass: the dense problem is solved for the largest of K⁻¹ M.
  const lower = new CholeskyDecomposition(stiffness).lowerTriangularMatrix;
  const down = inverse(lower);
  const reduced = down.mmul(mass).mmul(down.transpose());
  const symmetric = Matrix.add(reduced, reduced.transpose()).mul(0.5);
  const values = new EigenvalueDecomposition(symmetric, { assumeSymmetric: true }).realEigenvalues.sort(
    (a, b) => b - a,
  );
  solution.modes.forEach(({ frequency }, i) => {
    expect(frequency / (1 / Math.sqrt(values[i]!) / (2 * Math.PI))).toBeCloseTo(1, 8);
  });
});

test('modes are mass-orthonormal, and K⁻¹ M φ returns φ/ω² to one part in 100,000', () => {
  const { vectors, squares } = solution.state;
  const phi = new Matrix(vectors.map((vector) => [...vector])).transpose();
  const gram = phi.transpose().mmul(mass).mmul(phi);
  expect(Matrix.sub(gram, Matrix.eye(vectors.length)).abs().max()).toBeLessThan(1e-8);
  const image = solve(stiffness, mass.mmul(phi));
  squares.forEach((square, i) => {
    const rest = image.getColumnVector(i).mul(square).sub(phi.getColumnVector(i));
    expect(Math.sqrt(rest.transpose().mmul(mass).mmul(rest).get(0, 0))).toBeLessThan(1e-5);
  });
});

test('the deflection under the bridge’s couple agrees with a dense solution', () => {
  const dense = solve(stiffness, load);
  const own = solution.state.displacement!;
  const scale = dense.max();
  own.forEach((value, i) => {
    expect(Math.abs(value - dense.get(i, 0))).toBeLessThan(1e-8 * scale);
  });
});

/** Assembled by adding every element's matrix into a full one. */
function denseSystem({ top, unknowns }: SolvedState): { stiffness: Matrix; mass: Matrix; load: Matrix } {
  const size = unknowns.pattern.unknowns;
  const k = Matrix.zeros(size, size);
  const m = Matrix.zeros(size, size);
  const place = (node: number, d: number): number => {
    const slot = unknowns.slot[5 * node + d]!;
    return slot < 0 ? -1 : unknowns.pattern.first[node]! + slot;
  };
  const add = (target: Matrix, rows: readonly number[], value: (i: number, j: number) => number): void => {
    rows.forEach((row, i) => {
      rows.forEach((column, j) => {
        if (row >= 0 && column >= 0) target.set(row, column, target.get(row, column) + value(i, j));
      });
    });
  };
  /** Moments of mass for unknowns a, b of two nodes. */
  const inertia = (moments: ArrayLike<number>, a: number, b: number): number =>
    a === b ? moments[a < 3 ? 0 : 2]! : Math.abs(a - b) === 3 && Math.min(a, b) < 2 ? moments[1]! : 0;
  const element = plateElement();
  for (let q = 0; q < top.laminateOf.length; q++) {
    const nodes = [...top.mesh.quads.subarray(4 * q, 4 * q + 4)];
    const row = top.laminateOf[q]! * LAMINATE_SIZE;
    const x = Float64Array.from(nodes, (node) => top.x[node]!);
    const y = Float64Array.from(nodes, (node) => top.y[node]!);
    const z = Float64Array.from(nodes, (node) => top.z[node]!);
    expect(element.compute(x, y, z, top.laminates, row, true)).toBe(true);
    const places = nodes.flatMap((node) => [0, 1, 2, 3, 4].map((d) => place(node, d)));
    const moments = top.laminates.subarray(row + AT_MASS, row + AT_MASS + 3);
    const whole = element.whole();
    add(k, places, (i, j) => whole[20 * i + j]!);
    add(m, places, (i, j) => element.mass[4 * Math.floor(i / 5) + Math.floor(j / 5)]! * inertia(moments, i % 5, j % 5));
  }
  const rib = new Float64Array(144);
  for (let r = 0; r < top.mesh.ribBrace.length; r++) {
    const length = ribStiffness(top, r, rib);
    const places = [0, 1].flatMap((end) => {
      const node = top.mesh.ribs[2 * r + end]!;
      const own = unknowns.ribSlot[2 * r + end]!;
      return [...[0, 1, 2, 3, 4].map((d) => place(node, d)), own < 0 ? -1 : unknowns.pattern.first[node]! + own];
    });
    const moments = top.ribs.subarray(r * RIB_SIZE + RIB_MASS, r * RIB_SIZE + RIB_MASS + 3);
    add(k, places, (i, j) => rib[12 * i + j]!);
    add(m, places, (i, j) => {
      if (i % 6 === 5 || j % 6 === 5) return 0;
      const share = Math.floor(i / 6) === Math.floor(j / 6) ? 5 / 12 : 1 / 12;
      return share * length * inertia(moments, i % 6, j % 6);
    });
  }
  const { forces } = loadCase(model, top);
  const load = Matrix.zeros(size, 1);
  for (let i = 0; i < forces.length; i++) {
    const at = place(Math.floor(i / 5), i % 5);
    if (at >= 0) load.set(at, 0, forces[i]!);
  }
  const even = (matrix: Matrix): Matrix => Matrix.add(matrix, matrix.transpose()).mul(0.5);
  return { stiffness: even(k), mass: even(m), load };
}
