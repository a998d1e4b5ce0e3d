/** Nodal values on a grid. */
import { expect, it } from 'vitest';
import { gridWeights, onGrid, TopSolver } from '../../../language/mechanics/plate/index.js';

const WOOD = {
  eAlong: 11e9,
  eAcross: 0.8e9,
  poisson: 0.35,
  shearInPlane: 0.75e9,
  shearAlong: 0.7e9,
  shearAcross: 0.04e9,
  density: 420,
};

const result = new TopSolver().solve({
  outline: Array.from({ length: 48 }, (_, i) => {
    const turn = (i * Math.PI) / 24;
    return [0.2 + 0.2 * Math.cos(turn), 0.15 + 0.14 * Math.sin(turn)] as const;
  }),
  holes: [{ centre: [0.2, 0.15], diameter: 0.08 }],
  plate: { wood: WOOD, thickness: 0.003, grain: 0 },
  braces: [],
  patches: [],
  edge: { kind: 'hinged', inPlane: 'held' },
});
if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join());
const { mesh } = result.solution;
const grid = { x0: -0.02, y0: -0.02, step: 0.01, rows: 45, columns: 35 };
const weights = gridWeights(mesh, grid);
const place = (i: number) => [
  grid.x0 + Math.floor(i / grid.columns) * grid.step,
  grid.y0 + (i % grid.columns) * grid.step,
];

it('gives a plane back as it was, and nothing off the plate or in its hole', () => {
  const plane = (x: number, y: number) => 2 - 3 * x + 5 * y;
  const field = onGrid(
    weights,
    mesh.x.map((x, i) => plane(x, mesh.y[i]!)),
  );
  let onPlate = 0;
  field.forEach((value, i) => {
    const [x, y] = place(i) as [number, number];
    if (Number.isNaN(value)) return;
    onPlate++;
    expect(value).toBeCloseTo(plane(x, y), 9);
    expect(Math.hypot(x - 0.2, y - 0.15)).toBeGreaterThan(0.0395);
  });
  // By area: a point for each square centimetre, give or take those at the edge.
  expect(onPlate / (result.solution.area * 1e4)).toBeCloseTo(1, 1);
  expect(field[0]).toBeNaN();
});
