/** A bent plate between its nodes, against surfaces known in closed form. */
import { expect, it } from 'vitest';
import { bentOnGrid, gridWeights, onGrid, TopSolver } from '../../../language/mechanics/plate/index.js';
import { square, thin } from './thin-plates.js';

const result = new TopSolver().solve(thin(square, { kind: 'hinged', inPlane: 'held' }), { nodes: 300, modes: 3 });
if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join());
const { mesh, modes } = result.solution;
const grid = { x0: 0.011, y0: 0.013, step: 0.0189, rows: 52, columns: 52 };
const weights = gridWeights(mesh, grid);
const place = (i: number) =>
  [grid.x0 + Math.floor(i / grid.columns) * grid.step, grid.y0 + (i % grid.columns) * grid.step] as const;

it('gives every surface of second degree back', () => {
  const w = (x: number, y: number) => 1 - 2 * x + 3 * y + 0.7 * x * x - 1.3 * x * y + 2.1 * y * y;
  const at = (f: (x: number, y: number) => number) => mesh.x.map((x, i) => f(x, mesh.y[i]!));
  const field = bentOnGrid(weights, mesh, {
    w: at(w),
    slopes: [at((x, y) => -2 + 1.4 * x - 1.3 * y), at((x, y) => 3 - 1.3 * x + 4.2 * y)],
  });
  let count = 0;
  field.forEach((value, i) => {
    if (Number.isNaN(value)) return;
    count += 1;
    expect(value).toBeCloseTo(w(...place(i)), 9);
  });
  expect(count).toBe(52 * 52);
});

it('follows the first mode of a hinged square ten times as closely as flat triangles do', () => {
  // φ = sin πx · sin πy (Navier; any textbook of plates). Both scaled to it by least squares, so that only the shape is compared.
  const exact = Float64Array.from({ length: grid.rows * grid.columns }, (_, i) => {
    const [x, y] = place(i);
    return Math.sin(Math.PI * x) * Math.sin(Math.PI * y);
  });
  const error = (field: Float64Array) => {
    const dot = (p: Float64Array, q: Float64Array) => p.reduce((sum, value, i) => sum + value * q[i]!, 0);
    const scale = dot(field, exact) / dot(field, field);
    return Math.sqrt(field.reduce((sum, value, i) => sum + (scale * value - exact[i]!) ** 2, 0) / field.length);
  };
  const { shape, slopes } = modes[0]!;
  const bent = error(bentOnGrid(weights, mesh, { w: shape, slopes }));
  expect(bent).toBeLessThan(0.0005);
  expect(bent).toBeLessThan(error(onGrid(weights, shape)) / 10);
});
