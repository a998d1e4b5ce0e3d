/**
 * The plate element: bending and transverse shear by the discrete Kirchhoff–Mindlin quadrilateral DKMQ (I. Katili, A new discrete
 * Kirchhoff–Mindlin element based on Mindlin–Reissner plate theory and assumed shear strain fields, part II, Int. J. Numer.
 * Meth. Eng. 36, 1993, 1885–1908); membrane with the incompatible modes of R.L. Taylor, P.J. Beresford and E.L. Wilson (QM6,
 * Int. J. Numer. Meth. Eng. 10, 1976, 1211–1219), through which it also follows the bending of an unsymmetric laminate.
 *
 * On a dome each element is a facet, tilted by the slopes of z at its middle: its membrane stretches with u + w ∂z/∂x and v + w ∂z/∂y
 * (shallow shell after K. Marguerre, 1938, with the slope even over the element; from memory).
 *
 * Five unknowns per node: u, v, w, βx, βy with u(z) = u + z βx, v(z) = v + z βy; transverse shear γ = grad w + β.
 */
import { AT_A, AT_B, AT_D, AT_SHEAR } from './laminate.js';
import { BENDING, COUPLED, COUPLING, MEMBRANE, PARTS, SLOPE_X, SLOPE_Y, wholeFromParts } from './plate-parts.js';
import { sideTerms } from './plate-sides.js';

/** Working space and results of one element after another. */
export interface PlateElement {
  /** Stiffness as `plateParts.ts` has it. */
  readonly parts: Float64Array;
  /** 4 × 4, m²: ∫ N N, half lumped and half consistent; times m0, m1, m2 it is the mass. */
  readonly mass: Float64Array;
  /**
   * Computes both for corners `x`, `y` at the heights `z` of a shallow dome and the laminate row at `at`. With `inPlane` false only w and
   * β get stiffness. False when the corners are not convex.
   */
  compute(
    x: Float64Array,
    y: Float64Array,
    z: Float64Array,
    laminates: Float64Array,
    at: number,
    inPlane: boolean,
  ): boolean;
  /** What the strains of the element last computed are made of; absent unless asked for at the start. */
  readonly kept?: KeptStrains;
  /** Stiffness of the element last computed, 20 × 20, unknowns in node order, full and symmetric. The same array each time. */
  whole(): Float64Array;
}

/** Per integration point: rows of strain over the element's unknowns, and its area. */
export interface KeptStrains {
  /** 4 × 8 × 12: κx, κy, κxy, γx, γy over w, βx, βy of each node; εx, εy, εxy over u, v of each node and the 4 incompatible ones. */
  readonly rows: Float64Array;
  readonly areas: Float64Array;
  /** 4 × 20: see `perPhi` of the sides. */
  readonly perPhi: Float64Array;
  /** φ of the four sides. */
  readonly phi: Float64Array;
  /** Shear angle of a side in a movement. */
  angle(k: number, moved: Float64Array): number;
  /** Puts the four incompatible unknowns that follow from the others into `stretched[8…12)`. */
  complete(stretched: Float64Array, bent: Float64Array): void;
  /** φ of the four sides for another laminate on the same corners, into `out`. */
  phiFor(x: Float64Array, y: Float64Array, rows: Float64Array, at: number, out: Float64Array): void;
}

const G = 1 / Math.sqrt(3);
const GAUSS_XI = [-G, G, G, -G];
const GAUSS_ETA = [-G, -G, G, G];
const SIGN_XI = [-1, 1, 1, -1];
const SIGN_ETA = [-1, -1, 1, 1];

export function plateElement(keep = false): PlateElement {
  const parts = new Float64Array(PARTS);
  const stiffness = new Float64Array(400);
  const mass = new Float64Array(16);
  const side = sideTerms();
  // Rows of strain per unknown: curvatures (12 bending), shears (12), membrane (8 + 4 incompatible).
  const kx = new Float64Array(12);
  const ky = new Float64Array(12);
  const kxy = new Float64Array(12);
  const gx = new Float64Array(12);
  const gy = new Float64Array(12);
  const mx = new Float64Array(12);
  const my = new Float64Array(12);
  const mxy = new Float64Array(12);
  const bending = new Float64Array(144);
  const membrane = new Float64Array(144);
  const coupling = new Float64Array(144);
  const nx = new Float64Array(4);
  const ny = new Float64Array(4);
  const perPhi = new Float64Array(20);

  const kept = keep ? keptStrains(side, membrane, coupling, () => coupledNow) : undefined;
  let coupledNow = false;

  const compute: PlateElement['compute'] = (x, y, z, rows, at, inPlane) => {
    bending.fill(0);
    membrane.fill(0);
    coupling.fill(0);
    mass.fill(0);
    side.measure(x, y, rows, at);
    const coupled = inPlane && isCoupled(rows, at);
    coupledNow = coupled;
    // Half-diagonals of the bilinear map: x = … + ξ x1 + η x2 + ξη x3.
    const x1 = (-x[0]! + x[1]! + x[2]! - x[3]!) / 4;
    const x2 = (-x[0]! - x[1]! + x[2]! + x[3]!) / 4;
    const x3 = (x[0]! - x[1]! + x[2]! - x[3]!) / 4;
    const y1 = (-y[0]! + y[1]! + y[2]! - y[3]!) / 4;
    const y2 = (-y[0]! - y[1]! + y[2]! + y[3]!) / 4;
    const y3 = (y[0]! - y[1]! + y[2]! - y[3]!) / 4;
    const centre = x1 * y2 - x2 * y1;

    for (let g = 0; g < 4; g++) {
      const xi = GAUSS_XI[g]!;
      const eta = GAUSS_ETA[g]!;
      const xXi = x1 + eta * x3;
      const xEta = x2 + xi * x3;
      const yXi = y1 + eta * y3;
      const yEta = y2 + xi * y3;
      const det = xXi * yEta - xEta * yXi;
      if (!(det > 0)) return false;
      const a = yEta / det;
      const b = -yXi / det;
      const c = -xEta / det;
      const d = xXi / det;
      for (let i = 0; i < 4; i++) {
        const dXi = (SIGN_XI[i]! * (1 + SIGN_ETA[i]! * eta)) / 4;
        const dEta = (SIGN_ETA[i]! * (1 + SIGN_XI[i]! * xi)) / 4;
        nx[i] = a * dXi + b * dEta;
        ny[i] = c * dXi + d * dEta;
      }
      side.curvature(xi, eta, a, b, c, d, nx, ny, kx, ky, kxy);
      side.shear(xi, eta, a, b, c, d, gx, gy);
      addBending(bending, rows, at, det, kx, ky, kxy, gx, gy);
      if (inPlane) {
        membraneRows(mx, my, mxy, nx, ny, xi, eta, centre / det, x1, x2, y1, y2, centre);
        addForm(membrane, rows, at + AT_A, det, mx, my, mxy, mx, my, mxy);
        if (coupled) addForm(coupling, rows, at + AT_B, det, mx, my, mxy, kx, ky, kxy);
      }
      addMass(mass, xi, eta, det);
      if (!kept) continue;
      [kx, ky, kxy, gx, gy, mx, my, mxy].forEach((row, r) => kept.rows.set(row, 96 * g + 12 * r));
      kept.areas[g] = det;
      side.perPhi(xi, eta, a, b, c, d, perPhi);
      kept.perPhi.set(perPhi, 20 * g);
    }
    for (let i = 0; i < 12; i++) {
      for (let j = 0; j < 12; j++) parts[BENDING + 12 * i + j] = bending[i <= j ? 12 * i + j : 12 * j + i]!;
    }
    parts[COUPLED] = Number(coupled);
    parts[SLOPE_X] = parts[SLOPE_Y] = 0;
    if (!inPlane) {
      parts.fill(0, MEMBRANE, COUPLED);
      return true;
    }
    condense(parts, membrane, coupling, coupled);
    const zXi = (-z[0]! + z[1]! + z[2]! - z[3]!) / 4;
    const zEta = (-z[0]! - z[1]! + z[2]! + z[3]!) / 4;
    if (zXi !== 0 || zEta !== 0) {
      parts[SLOPE_X] = (y2 * zXi - y1 * zEta) / centre;
      parts[SLOPE_Y] = (x1 * zEta - x2 * zXi) / centre;
    }
    return true;
  };
  const whole = (): Float64Array => {
    wholeFromParts(parts, stiffness);
    return stiffness;
  };
  return { parts, mass, compute, kept, whole };
}

function keptStrains(
  side: ReturnType<typeof sideTerms>,
  membrane: Float64Array,
  coupling: Float64Array,
  isCoupledNow: () => boolean,
): KeptStrains {
  return {
    rows: new Float64Array(384),
    areas: new Float64Array(4),
    perPhi: new Float64Array(80),
    phi: side.phi,
    angle: (k, moved) => side.angle(k, moved),
    complete(stretched, bent) {
      // Each was eliminated against those before it: `condense` leaves their rows as they then were.
      for (let p = 8; p < 12; p++) {
        let force = 0;
        for (let j = 0; j < p; j++) force += membrane[12 * p + j]! * stretched[j]!;
        if (isCoupledNow()) for (let j = 0; j < 12; j++) force += coupling[12 * p + j]! * bent[j]!;
        stretched[p] = -force / membrane[13 * p]!;
      }
    },
    phiFor(x, y, rows, at, out) {
      side.measure(x, y, rows, at);
      out.set(side.phi);
    },
  };
}

function isCoupled(rows: Float64Array, at: number): boolean {
  for (let i = 0; i < 6; i++) if (rows[at + AT_B + i] !== 0) return true;
  return false;
}

/** K_ij += w (κ D κ + γ S γ), upper triangle. */
function addBending(
  k: Float64Array,
  rows: Float64Array,
  at: number,
  w: number,
  kx: Float64Array,
  ky: Float64Array,
  kxy: Float64Array,
  gx: Float64Array,
  gy: Float64Array,
): void {
  const d = at + AT_D;
  const d11 = w * rows[d]!;
  const d12 = w * rows[d + 1]!;
  const d16 = w * rows[d + 2]!;
  const d22 = w * rows[d + 3]!;
  const d26 = w * rows[d + 4]!;
  const d66 = w * rows[d + 5]!;
  const s11 = w * rows[at + AT_SHEAR]!;
  const s12 = w * rows[at + AT_SHEAR + 1]!;
  const s22 = w * rows[at + AT_SHEAR + 2]!;
  for (let i = 0; i < 12; i++) {
    const mx = d11 * kx[i]! + d12 * ky[i]! + d16 * kxy[i]!;
    const my = d12 * kx[i]! + d22 * ky[i]! + d26 * kxy[i]!;
    const mxy = d16 * kx[i]! + d26 * ky[i]! + d66 * kxy[i]!;
    const qx = s11 * gx[i]! + s12 * gy[i]!;
    const qy = s12 * gx[i]! + s22 * gy[i]!;
    for (let j = i; j < 12; j++) {
      k[12 * i + j]! += mx * kx[j]! + my * ky[j]! + mxy * kxy[j]! + qx * gx[j]! + qy * gy[j]!;
    }
  }
}

/** K_ij += w aᵢ Q bⱼ for all i, j; Q from six numbers at `at`. */
function addForm(
  k: Float64Array,
  rows: Float64Array,
  at: number,
  w: number,
  ax: Float64Array,
  ay: Float64Array,
  axy: Float64Array,
  bx: Float64Array,
  by: Float64Array,
  bxy: Float64Array,
): void {
  const q11 = w * rows[at]!;
  const q12 = w * rows[at + 1]!;
  const q16 = w * rows[at + 2]!;
  const q22 = w * rows[at + 3]!;
  const q26 = w * rows[at + 4]!;
  const q66 = w * rows[at + 5]!;
  for (let i = 0; i < 12; i++) {
    const sx = q11 * ax[i]! + q12 * ay[i]! + q16 * axy[i]!;
    const sy = q12 * ax[i]! + q22 * ay[i]! + q26 * axy[i]!;
    const sxy = q16 * ax[i]! + q26 * ay[i]! + q66 * axy[i]!;
    for (let j = 0; j < 12; j++) k[12 * i + j]! += sx * bx[j]! + sy * by[j]! + sxy * bxy[j]!;
  }
}

/** Membrane strains of the 8 nodal unknowns and of the 4 incompatible ones, (1 − ξ²) and (1 − η²) for u and v, taken with the middle's Jacobian. */
function membraneRows(
  mx: Float64Array,
  my: Float64Array,
  mxy: Float64Array,
  nx: Float64Array,
  ny: Float64Array,
  xi: number,
  eta: number,
  ratio: number,
  x1: number,
  x2: number,
  y1: number,
  y2: number,
  centre: number,
): void {
  for (let i = 0; i < 4; i++) {
    mx[2 * i] = nx[i]!;
    my[2 * i] = 0;
    mxy[2 * i] = ny[i]!;
    mx[2 * i + 1] = 0;
    my[2 * i + 1] = ny[i]!;
    mxy[2 * i + 1] = nx[i]!;
  }
  for (let m = 0; m < 2; m++) {
    const slope = m === 0 ? -2 * xi * ratio : -2 * eta * ratio;
    const dx = (slope * (m === 0 ? y2 : -y1)) / centre;
    const dy = (slope * (m === 0 ? -x2 : x1)) / centre;
    const u = 8 + 2 * m;
    mx[u] = dx;
    my[u] = 0;
    mxy[u] = dy;
    mx[u + 1] = 0;
    my[u + 1] = dy;
    mxy[u + 1] = dx;
  }
}

/** The element's scalar mass alone, into `mass`: see `PlateElement.mass`. */
export function plateMass(x: Float64Array, y: Float64Array, mass: Float64Array): void {
  mass.fill(0);
  for (let g = 0; g < 4; g++) {
    const xi = GAUSS_XI[g]!;
    const eta = GAUSS_ETA[g]!;
    let [xXi, xEta, yXi, yEta] = [0, 0, 0, 0];
    for (let i = 0; i < 4; i++) {
      const dXi = (SIGN_XI[i]! * (1 + SIGN_ETA[i]! * eta)) / 4;
      const dEta = (SIGN_ETA[i]! * (1 + SIGN_XI[i]! * xi)) / 4;
      xXi += dXi * x[i]!;
      xEta += dEta * x[i]!;
      yXi += dXi * y[i]!;
      yEta += dEta * y[i]!;
    }
    addMass(mass, xi, eta, xXi * yEta - xEta * yXi);
  }
}

function addMass(mass: Float64Array, xi: number, eta: number, det: number): void {
  for (let i = 0; i < 4; i++) {
    const ni = ((1 + SIGN_XI[i]! * xi) * (1 + SIGN_ETA[i]! * eta)) / 4;
    mass[5 * i]! += 0.5 * det * ni;
    for (let j = 0; j < 4; j++) {
      mass[4 * i + j]! += (0.5 * det * ni * (1 + SIGN_XI[j]! * xi) * (1 + SIGN_ETA[j]! * eta)) / 4;
    }
  }
}

/** Puts membrane and coupling into the parts after the incompatible unknowns (8…11) are eliminated. */
function condense(parts: Float64Array, membrane: Float64Array, coupling: Float64Array, coupled: boolean): void {
  for (let p = 11; p >= 8; p--) {
    const pivot = 1 / membrane[13 * p]!;
    for (let i = 0; i < p; i++) {
      const f = membrane[12 * i + p]! * pivot;
      if (f === 0) continue;
      for (let j = 0; j < p; j++) membrane[12 * i + j]! -= f * membrane[12 * p + j]!;
      if (coupled) for (let j = 0; j < 12; j++) coupling[12 * i + j]! -= f * coupling[12 * p + j]!;
    }
    if (!coupled) continue;
    for (let i = 0; i < 12; i++) {
      const f = coupling[12 * p + i]! * pivot;
      for (let j = 0; j < 12; j++) parts[BENDING + 12 * i + j]! -= f * coupling[12 * p + j]!;
    }
  }
  for (let i = 0; i < 8; i++) {
    for (let j = 0; j < 8; j++) parts[MEMBRANE + 8 * i + j] = membrane[12 * i + j]!;
  }
  for (let k = 0; k < 96; k++) parts[COUPLING + k] = coupling[k]!;
}
