/** Curvatures across and along a side of a quadrilateral, and changes of a laminate in that direction only. */
import { AT_D } from './laminate.js';
import type { TopMesh } from '../mesh/mesh.js';

export type Row = readonly [number, number, number];

export interface EdgeFrame {
  /** m: length of the side, and mean width of the quadrilateral from it. */
  readonly length: number;
  readonly width: number;
  /** Direction cosines of the side. */
  readonly c: number;
  readonly s: number;
  /** Curvature across the side, curvature along it and twist, as rows over κx, κy, κxy. */
  readonly bend: Row;
  readonly along: Row;
  readonly twist: Row;
}

/** Frame of the side from node `a` to node `b` of quadrilateral `quad`. */
export function edgeRows(
  mesh: TopMesh,
  x: Float64Array,
  y: Float64Array,
  quad: number,
  a: number,
  b: number,
): EdgeFrame {
  const [p, q, r, t] = mesh.quads.subarray(4 * quad, 4 * quad + 4) as unknown as [number, number, number, number];
  const length = Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!);
  const area = ((x[r]! - x[p]!) * (y[t]! - y[q]!) - (x[t]! - x[q]!) * (y[r]! - y[p]!)) / 2;
  const c = (x[b]! - x[a]!) / length;
  const s = (y[b]! - y[a]!) / length;
  return {
    length,
    width: area / length,
    c,
    s,
    bend: [s * s, c * c, -c * s],
    along: [c * c, s * s, c * s],
    twist: [-2 * c * s, 2 * c * s, c * c - s * s],
  };
}

/** D times a row: moments for that curvature. `at`: start of the laminate row. */
export function momentOf(rows: Float64Array, at: number, [a, b, c]: Row): Row {
  const d = at + AT_D;
  return [
    rows[d]! * a + rows[d + 1]! * b + rows[d + 2]! * c,
    rows[d + 1]! * a + rows[d + 3]! * b + rows[d + 4]! * c,
    rows[d + 2]! * a + rows[d + 4]! * b + rows[d + 5]! * c,
  ];
}

export function dot3(a: Row, b: Row): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** row · D · row */
export function stiffnessOf(rows: Float64Array, at: number, row: Row): number {
  return dot3(momentOf(rows, at, row), row);
}

/** D += factor row ⊗ row */
export function addEdgeForm(rows: Float64Array, at: number, row: Row, factor: number): void {
  let k = at + AT_D;
  for (let i = 0; i < 3; i++) for (let j = i; j < 3; j++) rows[k++]! += factor * row[i]! * row[j]!;
}
