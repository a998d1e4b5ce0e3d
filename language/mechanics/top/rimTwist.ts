/**
 * The twisting moment of a plate dies out towards an edge that does not hold it, over a length ℓ = √(D66/S) with S the shear
 * stiffness along the edge (E. Reissner, J. Appl. Mech. 12, 1945, A69–A77). For a strip of width b this takes 2ℓ off b, which
 * gives Saint-Venant's torsion constant b h³/3 (1 − 0.63 h/b). In spruce, with its low rolling shear, ℓ is more than the
 * thickness, yet far less than an element. Linear elements of width H find ℓ/√(1 + H²/12ℓ²) of it by themselves; the rest is
 * taken off the twisting stiffness of the elements on the rim here.
 */
import { AT_D, AT_SHEAR, LAMINATE_SIZE } from './laminate.js';
import type { TopMesh } from './mesh.js';

/** Softens `rows` (one laminate row per rim quadrilateral; see `laminateOf`) along the sides listed as quadrilateral and side number. */
export function softenRim(
  mesh: TopMesh,
  x: Float64Array,
  y: Float64Array,
  sides: Int32Array,
  laminateOf: Int32Array,
  rows: Float64Array,
): void {
  for (let e = 0; e < sides.length; e += 2) {
    const quad = sides[e]!;
    const [a, b] = [0, 1].map((k) => mesh.quads[4 * quad + ((sides[e + 1]! + k) & 3)]!) as [number, number];
    const [p, q, r, s] = mesh.quads.subarray(4 * quad, 4 * quad + 4) as unknown as [number, number, number, number];
    const length = Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!);
    const area = ((x[r]! - x[p]!) * (y[s]! - y[q]!) - (x[s]! - x[q]!) * (y[r]! - y[p]!)) / 2;
    const width = area / length;
    const c = (x[b]! - x[a]!) / length;
    const n = (y[b]! - y[a]!) / length;
    const at = laminateOf[quad]! * LAMINATE_SIZE;
    // The edge's own curvature across it and twist, as rows over κx, κy, κxy.
    const bend = [n * n, c * c, -c * n] as const;
    const twist = [-2 * c * n, 2 * c * n, c * c - n * n] as const;
    const moment = momentOf(rows, at + AT_D, twist);
    const full = dot3(moment, twist);
    const mixed = dot3(moment, bend);
    // Across the layer the bending moment stays as it is, so the curvature across the edge gives way with the twist.
    const stiffness = full - (mixed * mixed) / dot3(momentOf(rows, at + AT_D, bend), bend);
    const s0 = rows[at + AT_SHEAR]!;
    const s1 = rows[at + AT_SHEAR + 1]!;
    const s2 = rows[at + AT_SHEAR + 2]!;
    const shear = (s0 * s2 - s1 * s1) / (c * c * s2 + n * n * s0 - 2 * c * n * s1);
    const along = [c * c, n * n, c * n] as const;
    const phi = (12 * dot3(momentOf(rows, at + AT_D, along), along)) / (shear * length * length);
    const felt = (shear * (1 + phi)) / phi;
    const missing = 1 / Math.sqrt(stiffness * shear) - 1 / Math.sqrt(stiffness * felt + (width * felt) ** 2 / 12);
    const share = Math.min(Math.max(0, missing / width), 0.9 / full);
    let k = at + AT_D;
    for (let i = 0; i < 3; i++) for (let j = i; j < 3; j++) rows[k++]! -= share * moment[i]! * moment[j]!;
  }
}

/** D times a row of curvatures. */
function momentOf(rows: Float64Array, d: number, row: readonly [number, number, number]): readonly [number, number, number] {
  const [a, b, c] = row;
  return [
    rows[d]! * a + rows[d + 1]! * b + rows[d + 2]! * c,
    rows[d + 1]! * a + rows[d + 3]! * b + rows[d + 4]! * c,
    rows[d + 2]! * a + rows[d + 4]! * b + rows[d + 5]! * c,
  ];
}

function dot3(a: readonly [number, number, number], b: readonly [number, number, number]): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
