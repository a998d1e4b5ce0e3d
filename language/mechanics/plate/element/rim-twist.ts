/**
 * The twisting moment of a plate dies out towards an edge that does not hold it, over a length ℓ = √(D66/S) with S the shear
 * stiffness along the edge (E. Reissner, J. Appl. Mech. 12, 1945, A69–A77). For a strip of width b this takes 2ℓ off b, which
 * gives Saint-Venant's torsion constant b h³/3 (1 − 0.63 h/b). In spruce, with its low rolling shear, ℓ is more than the
 * thickness, yet far less than an element. Linear elements of width H find ℓ/√(1 + H²/12ℓ²) of it by themselves; the rest is
 * taken off the twisting stiffness of the elements on the rim here. Where springs of k per length hold the edge's turning, the
 * layer gives way only by ℓ/D66/(1 + kℓ/D66) for each twisting moment: nothing is left of it at a clamp.
 */
import { addEdgeForm, dot3, edgeRows, momentOf, stiffnessOf } from './edge-frame.js';
import { AT_SHEAR, LAMINATE_SIZE } from './laminate.js';
import type { TopMesh } from '../mesh/mesh.js';

/**
 * Softens `rows` (each quadrilateral on the rim has a row of its own) along the sides listed as quadrilateral and side number.
 * `spring`: N·m/rad per m of edge, what holds the edge against turning.
 */
export function softenRim(
  mesh: TopMesh,
  x: Float64Array,
  y: Float64Array,
  sides: Int32Array,
  laminateOf: Int32Array,
  rows: Float64Array,
  spring: number,
): void {
  for (let e = 0; e < sides.length; e += 2) {
    const quad = sides[e]!;
    const [a, b] = [0, 1].map((k) => mesh.quads[4 * quad + ((sides[e + 1]! + k) & 3)]!) as [number, number];
    const { length, width, c, s, bend, along, twist } = edgeRows(mesh, x, y, quad, a, b);
    const at = laminateOf[quad]! * LAMINATE_SIZE;
    const moment = momentOf(rows, at, twist);
    const full = dot3(moment, twist);
    // Across the layer the bending moment stays as it is, so the curvature across the edge gives way with the twist.
    const stiffness = full - dot3(moment, bend) ** 2 / stiffnessOf(rows, at, bend);
    const s0 = rows[at + AT_SHEAR]!;
    const s1 = rows[at + AT_SHEAR + 1]!;
    const s2 = rows[at + AT_SHEAR + 2]!;
    const shear = (s0 * s2 - s1 * s1) / (c * c * s2 + s * s * s0 - 2 * c * s * s1);
    // A side that turns evenly feels (1 + φ)/φ of the shear stiffness in this element.
    const phi = (12 * stiffnessOf(rows, at, along)) / (shear * length * length);
    const felt = (shear * (1 + phi)) / phi;
    const gives = (stiff: number): number => 1 / (stiff + spring);
    const missing = gives(Math.sqrt(stiffness * shear)) - gives(Math.sqrt(stiffness * felt + (width * felt) ** 2 / 12));
    addEdgeForm(rows, at, moment, -Math.min(Math.max(0, missing / width), 0.9 / full));
  }
}
