/** Plates of thin theory under load. */
import {
  valueAt,
  type Edge,
  type OrthotropicWood,
  type Point,
  type TopModel,
} from '../../../language/mechanics/plate/index.js';
import { CLAMPED, HELD } from './reference-tops.js';
import { solved } from './solved.js';

const thin: OrthotropicWood = {
  eAlong: 1e10,
  eAcross: 1e10,
  poisson: 0.3,
  shearInPlane: 1e10 / 2.6,
  shearAlong: 1e12,
  shearAcross: 1e12,
  density: 500,
};
const H = 0.002;
const D = (1e10 * H ** 3) / 12 / (1 - 0.09);

const plate = (outline: readonly Point[], edge: Edge, at: Point, load: string): TopModel => ({
  outline,
  plate: { wood: thin, thickness: H, grain: 0 },
  edge,
  load: load === 'uniform' ? { pressure: 1 } : { forces: [{ at, force: 1 }] },
});

/** Deflection at a place under one unit of load, times D. */
export const coefficient = (outline: readonly Point[], edge: Edge, at: Point, load: string): number => {
  const { mesh, statics } = solved(plate(outline, edge, at, load), { modes: 0, nodes: 1600 });
  return valueAt(mesh, statics!.deflection, at)! * D;
};

export const edgeOf = (boundary: string | undefined): Edge =>
  boundary === 'CCCC' || boundary === 'clamped' ? CLAMPED : HELD;
