/** Stiffness and mass per area of a plate with what is glued on it, from its layers. */
import type { Film, OrthotropicWood } from '../model.js';

export interface WoodLayer {
  readonly wood: OrthotropicWood;
  /** Grain, radians from x. */
  readonly grain: number;
  /** Lower and upper face, m from the plate's mid-surface. */
  readonly from: number;
  readonly to: number;
  /** Share of the layer's own density that is counted: 1, or more where a glued footprint is wider than the stiff one. */
  readonly massShare: number;
}

/** Numbers per laminate and where each group starts. In-plane groups are 11, 12, 16, 22, 26, 66. */
export const LAMINATE_SIZE = 30;
/** N/m: membrane A */
export const AT_A = 0;
/** N: coupling B */
export const AT_B = 6;
/** N·m: bending D about the mid-surface */
export const AT_D = 12;
/** N·m: D − B A⁻¹ B, bending about the neutral surface */
export const AT_BENDING = 18;
/** N/m: transverse shear xx, xy, yy */
export const AT_SHEAR = 24;
/** kg/m², kg/m, kg: moments of mass m0, m1, m2 about the mid-surface */
export const AT_MASS = 27;

/**
 * Fills `out[at…]`. (A, B, D) = Σ ∫ Q (1, z, z²) dz; transverse shear by equilibrium in the directions along and across
 * `grain`: 1/S = ∫ F² / (G D*²) dz with F = ∫ Q (z − z_n) dz from the lower face, which is 5/6 G h for one layer
 * (R.M. Jones, Mechanics of Composite Materials, ch. 4; J.M. Whitney, J. Appl. Mech. 40, 1973, 302–304; from memory).
 * `layers` from the lowest to the highest; `grain` is the plate's. A film lies on the upper face and is as thin as nothing.
 */
export function laminate(
  layers: readonly WoodLayer[],
  grain: number,
  out: Float64Array,
  at: number,
  film?: Film,
): void {
  out.fill(0, at, at + LAMINATE_SIZE);
  const q = new Float64Array(6);
  for (const { wood, grain: angle, from, to, massShare } of layers) {
    reducedStiffness(wood, angle, q);
    const first = to - from;
    const second = (to * to - from * from) / 2;
    const third = (to * to * to - from * from * from) / 3;
    for (let i = 0; i < 6; i++) {
      out[at + AT_A + i]! += q[i]! * first;
      out[at + AT_B + i]! += q[i]! * second;
      out[at + AT_D + i]! += q[i]! * third;
    }
    const density = wood.density * massShare;
    out[at + AT_MASS]! += density * first;
    out[at + AT_MASS + 1]! += density * second;
    out[at + AT_MASS + 2]! += density * third;
  }
  if (film) addFilm(film, layers[layers.length - 1]!.to, out, at);
  if (layers.length === 1 && !film?.stiffness) {
    out.fill(0, at + AT_B, at + AT_B + 6);
    out.copyWithin(at + AT_BENDING, at + AT_D, at + AT_D + 6);
  } else {
    neutralBending(out, at);
  }
  const along = shearByEquilibrium(layers, grain, 0);
  const across = shearByEquilibrium(layers, grain, Math.PI / 2);
  const c = Math.cos(grain);
  const s = Math.sin(grain);
  out[at + AT_SHEAR] = c * c * along + s * s * across;
  out[at + AT_SHEAR + 1] = c * s * (along - across);
  out[at + AT_SHEAR + 2] = s * s * along + c * c * across;
}

/** Poisson's ratio of a cured coat: 0.35 to 0.4 for glassy polymers (common handbook value, from memory). */
const FILM_POISSON = 0.35;

function addFilm({ massPerArea, stiffness = 0 }: Film, z: number, out: Float64Array, at: number): void {
  const shear = (stiffness * (1 - FILM_POISSON)) / 2;
  const form = [stiffness, FILM_POISSON * stiffness, 0, stiffness, 0, shear];
  form.forEach((value, i) => {
    out[at + AT_A + i]! += value;
    out[at + AT_B + i]! += value * z;
    out[at + AT_D + i]! += value * z * z;
  });
  for (let k = 0; k < 3; k++) out[at + AT_MASS + k]! += massPerArea * z ** k;
}

/** Plane-stress stiffness of wood with its grain at `angle` from x, into `q`: 11, 12, 16, 22, 26, 66, Pa. */
export function reducedStiffness(wood: OrthotropicWood, angle: number, q: Float64Array): void {
  const { eAlong, eAcross, poisson, shearInPlane: g } = wood;
  const k = 1 / (1 - (poisson * poisson * eAcross) / eAlong);
  const q11 = k * eAlong;
  const q22 = k * eAcross;
  const q12 = k * poisson * eAcross;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const c2 = c * c;
  const s2 = s * s;
  const cs = c * s;
  q[0] = c2 * c2 * q11 + s2 * s2 * q22 + 2 * c2 * s2 * (q12 + 2 * g);
  q[1] = c2 * s2 * (q11 + q22 - 4 * g) + (c2 * c2 + s2 * s2) * q12;
  q[2] = cs * (c2 * q11 - s2 * q22 - (c2 - s2) * (q12 + 2 * g));
  q[3] = s2 * s2 * q11 + c2 * c2 * q22 + 2 * c2 * s2 * (q12 + 2 * g);
  q[4] = cs * (s2 * q11 - c2 * q22 + (c2 - s2) * (q12 + 2 * g));
  q[5] = c2 * s2 * (q11 + q22 - 2 * q12) + (c2 - s2) * (c2 - s2) * g;
}

/** Abscissae and weights of three-point Gauss quadrature: exact for the fourth-degree F² within a layer. */
const GAUSS = [
  [-Math.sqrt(3 / 5), 5 / 9],
  [0, 8 / 9],
  [Math.sqrt(3 / 5), 5 / 9],
] as const;

function shearByEquilibrium(layers: readonly WoodLayer[], grain: number, turn: number): number {
  const direction = grain + turn;
  const q = new Float64Array(6);
  const stiffness = layers.map(({ wood, grain: angle }) => {
    reducedStiffness(wood, angle - direction, q);
    return q[0]!;
  });
  const shear = layers.map(({ wood, grain: angle }) => {
    const c = Math.cos(angle - direction);
    return c * c * wood.shearAlong + (1 - c * c) * wood.shearAcross;
  });
  let axial = 0;
  let moment = 0;
  let bending = 0;
  layers.forEach(({ from, to }, i) => {
    axial += stiffness[i]! * (to - from);
    moment += (stiffness[i]! * (to * to - from * from)) / 2;
    bending += (stiffness[i]! * (to * to * to - from * from * from)) / 3;
  });
  const neutral = moment / axial;
  bending -= moment * neutral;
  let force = 0;
  let compliance = 0;
  layers.forEach(({ from, to }, i) => {
    const start = from - neutral;
    for (const [place, weight] of GAUSS) {
      const z = (from + to) / 2 + (place * (to - from)) / 2 - neutral;
      const f = force + (stiffness[i]! * (z * z - start * start)) / 2;
      compliance += (((weight * (to - from)) / 2) * f * f) / shear[i]!;
    }
    const end = to - neutral;
    force += (stiffness[i]! * (end * end - start * start)) / 2;
  });
  return (bending * bending) / compliance;
}

/** D − B A⁻¹ B for symmetric 3 × 3 matrices stored as 11, 12, 16, 22, 26, 66. */
function neutralBending(row: Float64Array, at: number): void {
  const full = (start: number): number[][] => {
    const [a, b, c, d, e, f] = row.subarray(at + start, at + start + 6) as unknown as number[];
    return [
      [a!, b!, c!],
      [b!, d!, e!],
      [c!, e!, f!],
    ];
  };
  const a = full(AT_A);
  const b = full(AT_B);
  const d = full(AT_D);
  const solved = solve3(a, b);
  const place = [
    [0, 0],
    [0, 1],
    [0, 2],
    [1, 1],
    [1, 2],
    [2, 2],
  ] as const;
  place.forEach(([i, j], k) => {
    let sum = d[i]![j]!;
    for (let m = 0; m < 3; m++) sum -= b[i]![m]! * solved[m]![j]!;
    row[at + AT_BENDING + k] = sum;
  });
}

function solve3(a: number[][], b: number[][]): number[][] {
  const m = a.map((row, i) => [...row, ...b[i]!]);
  for (let k = 0; k < 3; k++) {
    for (let i = k + 1; i < 3; i++) {
      const f = m[i]![k]! / m[k]![k]!;
      for (let j = k; j < 6; j++) m[i]![j]! -= f * m[k]![j]!;
    }
  }
  for (let k = 2; k >= 0; k--) {
    for (let j = 3; j < 6; j++) {
      let sum = m[k]![j]!;
      for (let i = k + 1; i < 3; i++) sum -= m[k]![i]! * m[i]![j]!;
      m[k]![j] = sum / m[k]![k]!;
    }
  }
  return m.map((row) => row.slice(3));
}
