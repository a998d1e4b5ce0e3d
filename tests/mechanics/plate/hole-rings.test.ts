/** Rings glued around the hole, against plates and patches that are the same thing drawn otherwise. */
import { expect, test } from 'vitest';
import {
  sensitivities,
  TopSolver,
  type OrthotropicWood,
  type Point,
  type TopModel,
  type TopSolution,
} from '../../../language/mechanics/plate/index.js';

const wood: OrthotropicWood = {
  eAlong: 11e9,
  eAcross: 0.9e9,
  poisson: 0.35,
  shearInPlane: 0.8e9,
  shearAlong: 0.7e9,
  shearAcross: 0.05e9,
  density: 420,
};
const rim = (radius: number, count: number): Point[] =>
  Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return [0.2 + radius * Math.cos(angle), 0.16 + radius * Math.sin(angle)];
  });
const plate: TopModel = {
  outline: [
    [0, 0],
    [0.4, 0],
    [0.4, 0.32],
    [0, 0.32],
  ],
  holes: [{ outline: rim(0.05, 48) }],
  plate: { wood, thickness: 0.0028, grain: 0 },
  edge: { kind: 'free' },
};
const ring = { name: 'ring', hole: 0, width: 0.025, wood, thickness: 0.002, grain: 0 };
const solved = (model: TopModel): TopSolution => {
  const result = new TopSolver().solve(model, { modes: 4 });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.solution;
};
const heard = (model: TopModel) => solved(model).modes.map(({ frequency }) => frequency);

test('a ring that reaches everywhere is a thicker plate', () => {
  const thick = solved({ ...plate, plate: { ...plate.plate, thickness: 0.0048 } });
  const doubled = solved({ ...plate, rings: [{ ...ring, width: 1 }] });
  expect(doubled.mass / thick.mass).toBeCloseTo(1, 9);
  // Glued together two layers shear a little otherwise than one (the stress is made to fade at each face, not at the joint).
  doubled.modes.forEach(({ frequency }, i) => expect(frequency / thick.modes[i]!.frequency).toBeCloseTo(1, 2));
});

test('a ring weighs its area times its thickness', () => {
  const area = Math.PI * (0.075 ** 2 - 0.05 ** 2);
  const more = solved({ ...plate, rings: [ring] }).mass - solved(plate).mass;
  // The hole is drawn with 48 corners.
  expect(more / (area * 0.002 * wood.density)).toBeCloseTo(1, 2);
});

test('a ring sounds as strips that the mesh follows', () => {
  const block = (x0: number, x1: number, y0: number, y1: number): Point[] => [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  const holed: TopModel = { ...plate, holes: [{ outline: block(0.15, 0.25, 0.11, 0.21) }] };
  // The stiff footprint of a patch is drawn in by a third of its thickness; a thin one hardly.
  const strip = { wood, thickness: 0.001, grain: 0, side: 'under' } as const;
  const strips = [
    { ...strip, name: 'low', outline: block(0.12, 0.28, 0.08, 0.1099) },
    { ...strip, name: 'high', outline: block(0.12, 0.28, 0.2101, 0.24) },
    { ...strip, name: 'left', outline: block(0.12, 0.1499, 0.1101, 0.2099) },
    { ...strip, name: 'right', outline: block(0.2501, 0.28, 0.1101, 0.2099) },
  ];
  const [bare, patched] = [heard(holed), heard({ ...holed, patches: strips })];
  const ringed = heard({ ...holed, rings: [{ ...ring, thickness: 0.001, width: 0.03 }] });
  // The ring is rounded at its corners, the strips do not hold each other.
  expect(patched[0]! / bare[0]!).toBeGreaterThan(1.1);
  ringed.forEach((frequency, i) => expect(Math.abs(frequency / patched[i]! - 1)).toBeLessThan(0.01));
});

test('a ring moves smoothly with its width, and without thickness is none', () => {
  const at = (width: number) => heard({ ...plate, rings: [{ ...ring, width }] })[0]!;
  const curve = Array.from({ length: 41 }, (_, i) => at(0.015 + 0.0005 * i));
  for (let i = 1; i < 40; i++)
    expect(Math.abs(curve[i + 1]! - 2 * curve[i]! + curve[i - 1]!) / curve[i]!).toBeLessThan(5e-4);
  expect(heard({ ...plate, rings: [{ ...ring, thickness: 1e-9 }] })[0]! / heard(plate)[0]!).toBeCloseTo(1, 5);
});

test.each(['thickness', 'width'] as const)('its slope with its %s is that of a re-solve', (quantity) => {
  const model: TopModel = { ...plate, rings: [ring] };
  const [slope] = sensitivities(solved(model), [{ part: 'ring', index: 0, quantity }]);
  const at = (more: number) => heard({ ...model, rings: [{ ...ring, [quantity]: ring[quantity] + more }] })[1]!;
  expect(slope!.frequencies[1]! / ((at(2e-5) - at(-2e-5)) / 4e-5)).toBeCloseTo(1, 2);
});
