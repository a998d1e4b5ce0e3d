/**
 * Across a brace, the plate's lower face is glued to wood that follows its strain reluctantly: over the width of the brace the
 * plate bends less. In the brace's section E u,yy + G u,zz = 0 with free sides and an even strain at the glue line gives a force
 * of b √(E G) (8/π³) Σ tanh(m π (H/b) √(E/G))/m³ per unit strain, m odd (Fourier series of the plane problem; derived).
 */
import { addEdgeForm, edgeRows, stiffnessOf } from './edge-frame.js';
import { LAMINATE_SIZE } from './laminate.js';
import type { TopMesh } from '../mesh/mesh.js';
import type { Brace } from '../model.js';

/** N/m: force per unit strain across a brace of `height`, as felt at the glue line. */
export function crossForce({ width, wood }: Brace, height: number): number {
  const ratio = Math.sqrt(wood.eAcross / wood.shearAcross);
  let sum = 0;
  for (let m = 1; m < 20; m += 2) sum += Math.tanh((m * Math.PI * height * ratio) / width) / m ** 3;
  return ((8 * width) / Math.PI ** 3) * Math.sqrt(wood.eAcross * wood.shearAcross) * sum;
}

/**
 * Stiffens the laminate row of the quadrilaterals beside brace piece `r` for bending across it, over half the brace's width each.
 * `cross`: `crossForce` there; `plate`: m, thickness.
 */
export function stiffenBeside(
  mesh: TopMesh,
  x: Float64Array,
  y: Float64Array,
  r: number,
  { width }: Brace,
  cross: number,
  plate: number,
  laminateOf: Int32Array,
  rows: Float64Array,
): void {
  const more = cross * (plate / 2) ** 2;
  for (const quad of mesh.ribSides.subarray(2 * r, 2 * r + 2)) {
    if (quad < 0) continue;
    const frame = edgeRows(mesh, x, y, quad, mesh.ribs[2 * r]!, mesh.ribs[2 * r + 1]!);
    const at = laminateOf[quad]! * LAMINATE_SIZE;
    const own = stiffnessOf(rows, at, frame.bend);
    const share = Math.min(1, width / 2 / frame.width);
    const mean = 1 / ((1 - share) / own + share / (own + more));
    addEdgeForm(rows, at, frame.bend, mean - own);
  }
}
