/** Small things that ride on the plate, as mass on the corners of the quadrilaterals under them. */
import { shapeAt } from '../element/shape-at.js';
import type { TopMesh } from '../mesh/mesh.js';
import type { Point, RidingMass, TopModel } from '../model.js';

/** kg: 4 × 4 matrix over the corners of each quadrilateral that carries something. */
export type Riding = ReadonlyMap<number, Float64Array>;

/** Points of a disc, as shares of its radius: two rings of eight, each standing for half of its area and at that area's radius of gyration. */
const RINGS = [Math.SQRT1_2 * Math.SQRT1_2, Math.sqrt(0.75)];
const AROUND = 8;

export function ridingOn(
  { masses = [] }: TopModel,
  { quads }: TopMesh,
  x: Float64Array,
  y: Float64Array,
): Map<number, Float64Array> {
  const found = new Map<number, Float64Array>();
  for (const riding of masses) {
    const under = pointsOf(riding).flatMap((at) => placed(quads, x, y, at) ?? []);
    for (const { quad, shape } of under) {
      const matrix = found.get(quad) ?? new Float64Array(16);
      const share = riding.mass / under.length;
      for (let i = 0; i < 16; i++) matrix[i]! += share * shape[i >> 2]! * shape[i & 3]!;
      found.set(quad, matrix);
    }
  }
  return found;
}

export function ridingMass(riding: Riding): number {
  let sum = 0;
  for (const matrix of riding.values()) sum += matrix.reduce((total, value) => total + value, 0);
  return sum;
}

function pointsOf({ x, y, radius = 0 }: RidingMass): readonly Point[] {
  if (radius === 0) return [[x, y]];
  return RINGS.flatMap((share) =>
    Array.from({ length: AROUND }, (_, i): Point => {
      const turn = ((i + 0.5) * 2 * Math.PI) / AROUND;
      return [x + share * radius * Math.cos(turn), y + share * radius * Math.sin(turn)];
    }),
  );
}

function placed(
  quads: Int32Array,
  x: Float64Array,
  y: Float64Array,
  [px, py]: Point,
): { readonly quad: number; readonly shape: readonly number[] } | undefined {
  for (let quad = 0; quad < quads.length / 4; quad++) {
    const shape = shapeAt(x, y, quads.subarray(4 * quad, 4 * quad + 4), px, py);
    if (shape) return { quad, shape };
  }
  return undefined;
}
