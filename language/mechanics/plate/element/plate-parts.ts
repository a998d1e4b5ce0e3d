/**
 * The stiffness of a plate element in the parts of which it consists: what bends, what stretches, and what couples the two
 * where the plate is not the same on both sides. Most elements are not coupled, which leaves half the numbers of a full matrix,
 * and the tilt of a dome's facet is two more; so products with a vector are formed from the parts.
 *
 * One row of `PARTS` numbers per element, at these places.
 */
/** 12 × 12 over w, βx, βy of each node */
export const BENDING = 0;
/** 8 × 8 over u, v of each node */
export const MEMBRANE = 144;
/** 8 × 12 */
export const COUPLING = 208;
/** The facet's slopes: it stretches with u + w ∂z/∂x and v + w ∂z/∂y. */
export const SLOPE_X = 304;
export const SLOPE_Y = 305;
/** 0 when the coupling is all zeros */
export const COUPLED = 306;
/** 4 × 4, m²: see `PlateElement.mass` */
export const SCALAR_MASS = 307;
export const PARTS = 323;

/** Unknowns u, v and w, βx, βy of each node, as places among the 20. */
const MEMBRANE_PLACE = [0, 1, 5, 6, 10, 11, 15, 16];
const BENDING_PLACE = [2, 3, 4, 7, 8, 9, 12, 13, 14, 17, 18, 19];

/** The full symmetric 20 × 20 matrix over u, v, w, βx, βy of each node, into `k`. */
export function wholeFromParts(parts: Float64Array, k: Float64Array): void {
  const slopeX = parts[SLOPE_X]!;
  const slopeY = parts[SLOPE_Y]!;
  k.fill(0);
  for (let i = 0; i < 12; i++) {
    const line = 20 * BENDING_PLACE[i]!;
    for (let j = 0; j < 12; j++) k[line + BENDING_PLACE[j]!] = parts[BENDING + 12 * i + j]!;
  }
  for (let i = 0; i < 8; i++) {
    const line = 20 * MEMBRANE_PLACE[i]!;
    for (let j = 0; j < 8; j++) k[line + MEMBRANE_PLACE[j]!] = parts[MEMBRANE + 8 * i + j]!;
    if (parts[COUPLED] === 0) continue;
    for (let j = 0; j < 12; j++) {
      const value = parts[COUPLING + 12 * i + j]!;
      k[line + BENDING_PLACE[j]!] = value;
      k[20 * BENDING_PLACE[j]! + MEMBRANE_PLACE[i]!] = value;
    }
  }
  if (slopeX !== 0 || slopeY !== 0) tilt(k, slopeX, slopeY);
}

/** K ← Tᵀ K T, T putting u + w `dx` for u and v + w `dy` for v at every node. */
function tilt(k: Float64Array, dx: number, dy: number): void {
  for (let w = 2; w < 20; w += 5) {
    for (let j = 0; j < 20; j++) k[20 * w + j]! += dx * k[20 * (w - 2) + j]! + dy * k[20 * (w - 1) + j]!;
  }
  for (let w = 2; w < 20; w += 5) {
    for (let i = 0; i < 20; i++) k[20 * i + w]! += dx * k[20 * i + w - 2]! + dy * k[20 * i + w - 1]!;
  }
}

/** Room for the vectors of one element, blocks of four. */
export interface PlateRoom {
  readonly stretched: Float64Array;
  readonly bent: Float64Array;
  readonly forces: Float64Array;
}

export function plateRoom(): PlateRoom {
  return { stretched: new Float64Array(32), bent: new Float64Array(48), forces: new Float64Array(80) };
}

/** Y += K X, K from the parts at `at`, for blocks of four vectors, `places[from …]` being where each of the 20 unknowns stands, −1 when held. */
export function addPlateProduct(
  parts: Float64Array,
  at: number,
  places: Int32Array,
  from: number,
  x: Float64Array,
  y: Float64Array,
  { stretched, bent, forces }: PlateRoom,
): void {
  const slopeX = parts[at + SLOPE_X]!;
  const slopeY = parts[at + SLOPE_Y]!;
  for (let node = 0; node < 4; node++) {
    const place = from + 5 * node;
    for (let d = 0; d < 3; d++) gather(x, places[place + 2 + d]!, bent, 12 * node + 4 * d);
    for (let d = 0; d < 2; d++) {
      const to = 8 * node + 4 * d;
      gather(x, places[place + d]!, stretched, to);
      const slope = d === 0 ? slopeX : slopeY;
      if (slope !== 0) for (let c = 0; c < 4; c++) stretched[to + c]! += slope * bent[12 * node + c]!;
    }
  }
  putRows(parts, at + MEMBRANE, 8, stretched, forces, 0);
  putRows(parts, at + BENDING, 12, bent, forces, 32);
  if (parts[at + COUPLED] !== 0) {
    addCoupling(parts, at + COUPLING, stretched, bent, forces);
  }
  for (let node = 0; node < 4; node++) {
    const place = from + 5 * node;
    for (let d = 0; d < 2; d++) {
      const force = 8 * node + 4 * d;
      const slope = d === 0 ? slopeX : slopeY;
      if (slope !== 0) for (let c = 0; c < 4; c++) forces[32 + 12 * node + c]! += slope * forces[force + c]!;
      scatter(forces, force, places[place + d]!, y);
    }
    for (let d = 0; d < 3; d++) scatter(forces, 32 + 12 * node + 4 * d, places[place + 2 + d]!, y);
  }
}

function gather(x: Float64Array, place: number, out: Float64Array, to: number): void {
  for (let c = 0; c < 4; c++) out[to + c] = place < 0 ? 0 : x[4 * place + c]!;
}

function scatter(forces: Float64Array, from: number, place: number, y: Float64Array): void {
  if (place >= 0) for (let c = 0; c < 4; c++) y[4 * place + c]! += forces[from + c]!;
}

/** out ← K x, K `n` × `n` at `at`, two rows at a time: what is read of x then serves twice. */
function putRows(k: Float64Array, at: number, n: number, x: Float64Array, out: Float64Array, to: number): void {
  for (let i = 0; i < n; i += 2) {
    let a0 = 0;
    let a1 = 0;
    let a2 = 0;
    let a3 = 0;
    let b0 = 0;
    let b1 = 0;
    let b2 = 0;
    let b3 = 0;
    const line = at + n * i;
    for (let j = 0; j < n; j++) {
      const a = k[line + j]!;
      const b = k[line + n + j]!;
      const x0 = x[4 * j]!;
      const x1 = x[4 * j + 1]!;
      const x2 = x[4 * j + 2]!;
      const x3 = x[4 * j + 3]!;
      a0 += a * x0;
      a1 += a * x1;
      a2 += a * x2;
      a3 += a * x3;
      b0 += b * x0;
      b1 += b * x1;
      b2 += b * x2;
      b3 += b * x3;
    }
    const t = to + 4 * i;
    out[t] = a0;
    out[t + 1] = a1;
    out[t + 2] = a2;
    out[t + 3] = a3;
    out[t + 4] = b0;
    out[t + 5] = b1;
    out[t + 6] = b2;
    out[t + 7] = b3;
  }
}

/** Forces on what stretches from what bends, and the other way round. */
function addCoupling(
  k: Float64Array,
  at: number,
  stretched: Float64Array,
  bent: Float64Array,
  forces: Float64Array,
): void {
  for (let i = 0; i < 8; i++) {
    for (let j = 0; j < 12; j++) {
      const v = k[at + 12 * i + j]!;
      for (let c = 0; c < 4; c++) {
        forces[4 * i + c]! += v * bent[4 * j + c]!;
        forces[32 + 4 * j + c]! += v * stretched[4 * i + c]!;
      }
    }
  }
}
