/**
 * How the energy between two movements of an element changes with each number of its laminate row, from the strains alone and
 * without forming its stiffness again. The share of a side's angle that bends (DKMQ's φ) hangs on the row too: its slopes are apart.
 */
import { AT_A, AT_B, AT_D, AT_SHEAR } from './laminate.js';
import type { KeptStrains } from './plate-element.js';

/** Slopes by A, B, D (six each) and the shear stiffness (three), then by φ of the four sides. */
export const SLOPES = 25;
const BY_SHEAR = 18;
export const BY_PHI = 21;

/** Strains of one movement at the four points: κ, γ, ε, 8 numbers each, and the angles of the sides. */
export interface MovedStrains {
  readonly strains: Float64Array;
  readonly angles: Float64Array;
  /** Mx, My, Mxy, Qx, Qy at the four points. */
  readonly forces: Float64Array;
}

export function movedStrains(): MovedStrains {
  return { strains: new Float64Array(32), angles: new Float64Array(4), forces: new Float64Array(20) };
}

const stretchedOf = (moved: Float64Array, dx: number, dy: number, out: Float64Array): void => {
  for (let n = 0; n < 4; n++) {
    out[2 * n] = moved[5 * n]! + dx * moved[5 * n + 2]!;
    out[2 * n + 1] = moved[5 * n + 1]! + dy * moved[5 * n + 2]!;
  }
};

/** `moved`: u, v, w, βx, βy of each node; `dx`, `dy`: slopes of the facet; `rows` at `at`: its laminate. `stretched`, `bent`: room for 12 each. */
export function strainsOf(
  kept: KeptStrains,
  moved: Float64Array,
  dx: number,
  dy: number,
  inPlane: boolean,
  rows: Float64Array,
  at: number,
  stretched: Float64Array,
  bent: Float64Array,
  { strains, angles, forces }: MovedStrains,
): void {
  for (let n = 0; n < 4; n++) for (let d = 0; d < 3; d++) bent[3 * n + d] = moved[5 * n + 2 + d]!;
  if (inPlane) {
    stretchedOf(moved, dx, dy, stretched);
    kept.complete(stretched, bent);
  }
  for (let g = 0; g < 4; g++) {
    for (let r = 0; r < 8; r++) {
      const vector = r < 5 ? bent : stretched;
      const row = 96 * g + 12 * r;
      let sum = 0;
      if (r < 5 || inPlane) for (let j = 0; j < 12; j++) sum += kept.rows[row + j]! * vector[j]!;
      strains[8 * g + r] = sum;
    }
    for (let r = 0; r < 5; r++) forces[5 * g + r] = forceOf(rows, at, strains, 8 * g, r);
  }
  for (let k = 0; k < 4; k++) angles[k] = kept.angle(k, bent);
}

/** Writes the slopes of the energy between two movements at `to`. */
export function slopesBetween(
  kept: KeptStrains,
  { strains: p, angles: pa, forces: pf }: MovedStrains,
  { strains: q, angles: qa, forces: qf }: MovedStrains,
  out: Float64Array,
  to: number,
): void {
  out.fill(0, to, to + SLOPES);
  for (let g = 0; g < 4; g++) {
    const area = kept.areas[g]!;
    const s = 8 * g;
    addForm(out, to + AT_A, area, p, s + 5, q, s + 5);
    addForm(out, to + AT_B, area, p, s + 5, q, s);
    addForm(out, to + AT_B, area, q, s + 5, p, s);
    addForm(out, to + AT_D, area, p, s, q, s);
    out[to + BY_SHEAR]! += area * p[s + 3]! * q[s + 3]!;
    out[to + BY_SHEAR + 1]! += area * (p[s + 3]! * q[s + 4]! + p[s + 4]! * q[s + 3]!);
    out[to + BY_SHEAR + 2]! += area * p[s + 4]! * q[s + 4]!;
    for (let k = 0; k < 4; k++) {
      const by = 20 * g + 5 * k;
      let one = 0;
      let other = 0;
      for (let r = 0; r < 5; r++) {
        one += kept.perPhi[by + r]! * qf[5 * g + r]!;
        other += kept.perPhi[by + r]! * pf[5 * g + r]!;
      }
      out[to + BY_PHI + k]! += area * (pa[k]! * one + qa[k]! * other);
    }
  }
}

/** Where each of the 21 slopes by the row stands in a row. */
export const ROW_PLACES = [
  ...Array.from({ length: 18 }, (_, i) => i),
  ...[AT_SHEAR, AT_SHEAR + 1, AT_SHEAR + 2],
] as readonly number[];

/** Slopes of a · Q · b by the six numbers of Q. */
function addForm(
  out: Float64Array,
  to: number,
  area: number,
  a: Float64Array,
  i: number,
  b: Float64Array,
  j: number,
): void {
  out[to]! += area * a[i]! * b[j]!;
  out[to + 1]! += area * (a[i]! * b[j + 1]! + a[i + 1]! * b[j]!);
  out[to + 2]! += area * (a[i]! * b[j + 2]! + a[i + 2]! * b[j]!);
  out[to + 3]! += area * a[i + 1]! * b[j + 1]!;
  out[to + 4]! += area * (a[i + 1]! * b[j + 2]! + a[i + 2]! * b[j + 1]!);
  out[to + 5]! += area * a[i + 2]! * b[j + 2]!;
}

/** Moment or shear force number `r` (Mx, My, Mxy, Qx, Qy) for the strains from `s` on. */
function forceOf(rows: Float64Array, at: number, e: Float64Array, s: number, r: number): number {
  if (r > 2) {
    const k = at + AT_SHEAR + r - 3;
    return rows[k]! * e[s + 3]! + rows[k + 1]! * e[s + 4]!;
  }
  const [i, j, k] = THREE[r]!;
  const d = at + AT_D;
  const b = at + AT_B;
  return (
    rows[d + i]! * e[s]! +
    rows[d + j]! * e[s + 1]! +
    rows[d + k]! * e[s + 2]! +
    rows[b + i]! * e[s + 5]! +
    rows[b + j]! * e[s + 6]! +
    rows[b + k]! * e[s + 7]!
  );
}

/** Rows of a symmetric 3 × 3 matrix among its six numbers 11, 12, 16, 22, 26, 66. */
const THREE = [
  [0, 1, 2],
  [1, 3, 4],
  [2, 4, 5],
] as const;
