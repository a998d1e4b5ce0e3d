/** The motions of a free plate that bend nothing. */
import {
  BLOCK,
  divideByTriangle,
  gramOf,
  interleave,
  subtractProduct,
  triangleOf,
} from '../../linear-algebra/blocks.js';
import type { DiscreteTop } from './discrete.js';
import type { TopModel } from '../model.js';
import { signedArea } from '../mesh/polygon.js';
import { thinnest } from '../validate.js';
import type { Unknowns } from './degrees-of-freedom.js';

/** Blocks of M-orthonormal vectors in the order of elimination: up, two tilts and, where the plane counts, two drifts and a turn. */
export function rigidMotions(
  { mesh, x, y }: DiscreteTop,
  { slot, ribSlot, pattern, support }: Unknowns,
  multiply: (x: Float64Array, y: Float64Array) => void,
): Float64Array[] {
  const cx = x.reduce((a, b) => a + b, 0) / x.length;
  const cy = y.reduce((a, b) => a + b, 0) / y.length;
  /** u, v, w, βx, βy at a place. */
  const motions: ((px: number, py: number) => readonly [number, number, number, number, number])[] = [
    () => [0, 0, 1, 0, 0],
    (px) => [0, 0, px - cx, -1, 0],
    (_px, py) => [0, 0, py - cy, 0, -1],
  ];
  if (support.inPlane) {
    motions.push(
      () => [1, 0, 0, 0, 0],
      () => [0, 1, 0, 0, 0],
      (px, py) => [-(py - cy), px - cx, 0, 0, 0],
    );
  }
  const vectors: Float64Array[] = [];
  for (const motion of motions) {
    const vector = new Float64Array(pattern.unknowns);
    for (let node = 0; node < x.length; node++) {
      motion(x[node]!, y[node]!).forEach((value, d) => {
        const s = slot[5 * node + d]!;
        if (s >= 0) vector[pattern.first[node]! + s] = value;
      });
    }
    for (let k = 0; k < ribSlot.length; k++) {
      const a = mesh.ribs[k & ~1]!;
      const b = mesh.ribs[k | 1]!;
      const length = Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!);
      const [, , , bx, by] = motion(0, 0);
      const value = (bx * (x[b]! - x[a]!) + by * (y[b]! - y[a]!)) / length;
      if (ribSlot[k]! >= 0) vector[pattern.first[mesh.ribs[k]!]! + ribSlot[k]!] = value;
    }
    vectors.push(vector);
  }
  const blocks: Float64Array[] = [];
  for (let k = 0; k < vectors.length; k += BLOCK) {
    const block = interleave(vectors.slice(k, k + BLOCK), pattern.unknowns);
    const product = new Float64Array(block.length);
    const gram = new Float64Array(16);
    for (let pass = 0; pass < 2; pass++) {
      for (const other of blocks) {
        multiply(other, product);
        gramOf(product, block, gram);
        subtractProduct(block, other, gram);
      }
      multiply(block, product);
      gramOf(block, product, gram);
      divideByTriangle(block, triangleOf(gram, 1e-12));
    }
    blocks.push(block);
  }
  return blocks;
}

/** (rad/s)²: of the order of the lowest free mode, so that K + shift M is well conditioned. */
export function shiftFor({ outline, plate }: TopModel): number {
  const { wood } = plate;
  const h = thinnest(plate.thickness);
  const area = Math.abs(signedArea(outline));
  const stiffness = (Math.sqrt(wood.eAlong * wood.eAcross) * h ** 3) / 12;
  return (100 * stiffness) / (wood.density * h * area * area);
}
