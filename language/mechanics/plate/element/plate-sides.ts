import { AT_BENDING, AT_SHEAR } from './laminate.js';

/** The four sides: their shear angle a = Δw/L + mean βs, of which 1/(1+φ) goes into bending and φ/(1+φ) stays shear. */
export function sideTerms(): {
  measure(x: Float64Array, y: Float64Array, rows: Float64Array, at: number): void;
  curvature(
    xi: number,
    eta: number,
    a: number,
    b: number,
    c: number,
    d: number,
    nx: Float64Array,
    ny: Float64Array,
    kx: Float64Array,
    ky: Float64Array,
    kxy: Float64Array,
  ): void;
  shear(xi: number, eta: number, a: number, b: number, c: number, d: number, gx: Float64Array, gy: Float64Array): void;
  /** Into `out`, per side: what its shear angle adds to κx, κy, κxy and γx, γy at a point per unit of φ. */
  perPhi(xi: number, eta: number, a: number, b: number, c: number, d: number, out: Float64Array): void;
  /** The side's shear angle in a movement w, βx, βy of the four nodes. */
  angle(k: number, moved: Float64Array): number;
  /** 12 D/(S L²) of each side, as last measured. */
  readonly phi: Float64Array;
} {
  const cosine = new Float64Array(4);
  const sine = new Float64Array(4);
  const length = new Float64Array(4);
  const bent = new Float64Array(4);
  const sheared = new Float64Array(4);
  const phi = new Float64Array(4);

  return {
    measure(x, y, rows, at) {
      const d = at + AT_BENDING;
      const s = at + AT_SHEAR;
      const det = rows[s]! * rows[s + 2]! - rows[s + 1]! * rows[s + 1]!;
      for (let k = 0; k < 4; k++) {
        const dx = x[(k + 1) & 3]! - x[k]!;
        const dy = y[(k + 1) & 3]! - y[k]!;
        const l = Math.sqrt(dx * dx + dy * dy);
        const c = dx / l;
        const n = dy / l;
        const stiff =
          c * c * c * c * rows[d]! +
          n * n * n * n * rows[d + 3]! +
          2 * c * c * n * n * (rows[d + 1]! + 2 * rows[d + 5]!) +
          4 * c * n * (c * c * rows[d + 2]! + n * n * rows[d + 4]!);
        const soft = (c * c * rows[s + 2]! + n * n * rows[s]! - 2 * c * n * rows[s + 1]!) / det;
        const ratio = (12 * stiff * soft) / (l * l);
        phi[k] = ratio;
        cosine[k] = c;
        sine[k] = n;
        length[k] = l;
        bent[k] = -1.5 / (1 + ratio);
        sheared[k] = ratio / (1 + ratio);
      }
    },

    curvature(xi, eta, a, b, c, d, nx, ny, kx, ky, kxy) {
      for (let i = 0; i < 4; i++) {
        kx[3 * i] = ky[3 * i] = kxy[3 * i] = 0;
        kx[3 * i + 1] = nx[i]!;
        ky[3 * i + 1] = 0;
        kxy[3 * i + 1] = ny[i]!;
        kx[3 * i + 2] = 0;
        ky[3 * i + 2] = ny[i]!;
        kxy[3 * i + 2] = nx[i]!;
      }
      for (let k = 0; k < 4; k++) {
        const dXi = bubbleXi(k, xi, eta);
        const dEta = bubbleEta(k, xi, eta);
        const px = (a * dXi + b * dEta) * bent[k]!;
        const py = (c * dXi + d * dEta) * bent[k]!;
        const cos = cosine[k]!;
        const sin = sine[k]!;
        addSide(kx, k, px * cos);
        addSide(ky, k, py * sin);
        addSide(kxy, k, py * cos + px * sin);
      }
    },

    shear(xi, eta, a, b, c, d, gx, gy) {
      gx.fill(0);
      gy.fill(0);
      for (let k = 0; k < 4; k++) {
        const value = sheared[k]! * length[k]! * sideShare(k, xi, eta);
        addSide(gx, k, (k === 0 || k === 2 ? a : b) * value);
        addSide(gy, k, (k === 0 || k === 2 ? c : d) * value);
      }
    },

    perPhi(xi, eta, a, b, c, d, out) {
      for (let k = 0; k < 4; k++) {
        const once = 1 / (1 + phi[k]!) ** 2;
        const dXi = bubbleXi(k, xi, eta);
        const dEta = bubbleEta(k, xi, eta);
        const px = 1.5 * once * (a * dXi + b * dEta);
        const py = 1.5 * once * (c * dXi + d * dEta);
        const value = once * length[k]! * sideShare(k, xi, eta);
        out[5 * k] = px * cosine[k]!;
        out[5 * k + 1] = py * sine[k]!;
        out[5 * k + 2] = py * cosine[k]! + px * sine[k]!;
        out[5 * k + 3] = (k === 0 || k === 2 ? a : b) * value;
        out[5 * k + 4] = (k === 0 || k === 2 ? c : d) * value;
      }
    },

    angle(k, moved) {
      const i = 3 * k;
      const j = 3 * ((k + 1) & 3);
      return (
        (moved[j]! - moved[i]!) / length[k]! +
        (cosine[k]! * (moved[i + 1]! + moved[j + 1]!) + sine[k]! * (moved[i + 2]! + moved[j + 2]!)) / 2
      );
    },

    phi,
  };

  /** Adds `factor` times the side's shear angle as a row over w, βx, βy of its two nodes. */
  function addSide(row: Float64Array, k: number, factor: number): void {
    const i = 3 * k;
    const j = 3 * ((k + 1) & 3);
    const inverse = factor / length[k]!;
    const c = (factor * cosine[k]!) / 2;
    const s = (factor * sine[k]!) / 2;
    row[i]! -= inverse;
    row[j]! += inverse;
    row[i + 1]! += c;
    row[j + 1]! += c;
    row[i + 2]! += s;
    row[j + 2]! += s;
  }
}

/** Derivatives of the bubble of side `k`, 1 in its middle and 0 on the others. */
function bubbleXi(k: number, xi: number, eta: number): number {
  if (k === 0) return -xi * (1 - eta);
  if (k === 1) return (1 - eta * eta) / 2;
  return k === 2 ? -xi * (1 + eta) : -(1 - eta * eta) / 2;
}

function bubbleEta(k: number, xi: number, eta: number): number {
  if (k === 0) return -(1 - xi * xi) / 2;
  if (k === 1) return -eta * (1 + xi);
  return k === 2 ? (1 - xi * xi) / 2 : -eta * (1 - xi);
}

/** How the shear along side `k` counts at a point: half its direction in ξ or η there. */
function sideShare(k: number, xi: number, eta: number): number {
  if (k === 0) return (1 - eta) / 4;
  if (k === 1) return (1 + xi) / 4;
  return k === 2 ? -(1 + eta) / 4 : -(1 - xi) / 4;
}
