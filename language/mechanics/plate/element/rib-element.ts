/**
 * A brace piece between two nodes. Its glue line moves with the lower face of the plate, u − (h/2) β; its own section turns by
 * θ, so that a deep, shear-soft brace does not force its shear on the plate beside it. Strain energy
 * L/2 [EA ε² + 2 ES ε κ + EI κ² + GA a² + GJ κn²] with ε = Δ(u_s − h/2 β_s)/L, κ = Δθ/L, a = Δw/L + mean θ, κn = Δβ_n/L;
 * on a dome the glue line stretches with u_s + w ∂z/∂s.
 * 1/GA = 1/(k G A) + L²/(12 E I) makes the piece exact in bending and shear (textbook Timoshenko beam; from memory).
 */
import type { DiscreteTop } from '../solve/discrete.js';
import {
  RIB_AXIAL,
  RIB_BENDING,
  RIB_COUPLING,
  RIB_DEPTH,
  RIB_OWN_BENDING,
  RIB_SHEAR,
  RIB_SIZE,
  RIB_TORSION,
} from './rib-section.js';

/** Fills the 12 × 12 of piece `r`: u, v, w, βx, βy, θ of each end. Returns its length, m. */
export function ribStiffness({ mesh, x, y, z, ribs }: DiscreteTop, r: number, k: Float64Array): number {
  const a = mesh.ribs[2 * r]!;
  const b = mesh.ribs[2 * r + 1]!;
  const dx = x[b]! - x[a]!;
  const dy = y[b]! - y[a]!;
  const length = Math.hypot(dx, dy);
  const c = dx / length;
  const s = dy / length;
  const row = r * RIB_SIZE;
  const depth = ribs[row + RIB_DEPTH]!;
  const rise = (z[b]! - z[a]!) / length;
  const stretch = new Float64Array(12);
  const bend = new Float64Array(12);
  const shear = new Float64Array(12);
  const twist = new Float64Array(12);
  for (let end = 0; end < 2; end++) {
    const sign = (end === 0 ? -1 : 1) / length;
    const at = 6 * end;
    stretch[at] = sign * c;
    stretch[at + 1] = sign * s;
    stretch[at + 2] = sign * rise;
    stretch[at + 3] = -sign * c * depth;
    stretch[at + 4] = -sign * s * depth;
    bend[at + 5] = sign;
    shear[at + 2] = sign;
    shear[at + 5] = 0.5;
    twist[at + 3] = -sign * s;
    twist[at + 4] = sign * c;
  }
  const ea = length * ribs[row + RIB_AXIAL]!;
  const es = length * ribs[row + RIB_COUPLING]!;
  const ei = length * ribs[row + RIB_BENDING]!;
  const ga = length / (1 / ribs[row + RIB_SHEAR]! + (length * length) / (12 * ribs[row + RIB_OWN_BENDING]!));
  const gj = length * ribs[row + RIB_TORSION]!;
  for (let i = 0; i < 12; i++) {
    const n = ea * stretch[i]! + es * bend[i]!;
    const m = es * stretch[i]! + ei * bend[i]!;
    const q = ga * shear[i]!;
    const t = gj * twist[i]!;
    for (let j = 0; j < 12; j++) {
      k[12 * i + j] = n * stretch[j]! + m * bend[j]! + q * shear[j]! + t * twist[j]!;
    }
  }
  return length;
}
