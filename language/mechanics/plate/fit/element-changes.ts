/** K′ X for a model whose sizes have changed, from its elements alone: the stiffness itself is never assembled. */
import { addMassOf, corners, type NodalMass } from '../solve/assembly.js';
import { sameCorners, sameMatter, samePiece, sameQuad, type DiscreteTop } from '../solve/discrete.js';
import type { FactoredTop } from '../solve/factored-top.js';
import { AT_A, AT_B, LAMINATE_SIZE } from '../element/laminate.js';
import type { PlateElement } from '../element/plate-element.js';
import {
  addPlateProduct,
  COUPLED,
  COUPLING,
  MEMBRANE,
  PARTS,
  plateRoom,
  SLOPE_X,
  SLOPE_Y,
} from '../element/plate-parts.js';
import { ribStiffness } from '../element/rib-element.js';
import type { Unknowns } from '../solve/degrees-of-freedom.js';
import { rimSprings, sameSprings } from '../solve/rim-springs.js';

export interface ElementChanges {
  /** Y += (K′ − K) X for a block of four vectors in the order of elimination. */
  apply(x: Float64Array, y: Float64Array): void;
  /** Mass of the changed top. */
  readonly mass: NodalMass;
}

/** Differences of all elements that are not the same in both, `elements` being the parts of the quadrilaterals' stiffness before; undefined when one is turned inside out, or the rim's spring differs. */
export function elementChanges(
  before: DiscreteTop,
  after: DiscreteTop,
  unknowns: Unknowns,
  element: PlateElement,
  { elements, changes: rows }: Pick<FactoredTop, 'elements' | 'changes'>,
): ElementChanges | undefined {
  if (before.rimSpring !== after.rimSpring) return undefined;
  if (before.rimSpring > 0 && !sameMatter(before.x, after.x)) return undefined;
  const { mesh } = after;
  const { inPlane } = unknowns.support;
  const mass = new Float64Array(3 * unknowns.graph.list.length);
  const px = new Float64Array(4);
  const py = new Float64Array(4);
  const pz = new Float64Array(4);
  const changed: number[] = [];
  for (let q = 0; q < after.laminateOf.length; q++) if (!sameQuad(before, after, q)) changed.push(q);
  const places = new Int32Array(40 * changed.length);
  let terms = 0;
  for (const q of changed) {
    corners(after, q, px, py, pz);
    const row = after.laminateOf[q]! * LAMINATE_SIZE;
    const ratio = inPlane ? stretchRatio(before, after, q) : undefined;
    if (!element.compute(px, py, pz, after.laminates, row, inPlane && ratio === undefined)) return undefined;
    if (ratio !== undefined) scaleMembrane(elements, PARTS * q, ratio, element.parts);
    placesOf(unknowns, mesh.quads, 4 * q, places, 20 * terms);
    if (putDifference(element.parts, elements, PARTS * q, rows, PARTS * terms++)) continue;
    placesOf(unknowns, mesh.quads, 4 * q, places, 20 * terms);
    putNegative(elements, PARTS * q, rows, PARTS * terms++);
  }
  const room = plateRoom();
  const pieces: number[] = [];
  for (let r = 0; r < mesh.ribBrace.length; r++) if (!samePiece(before, after, r)) pieces.push(r);
  const ribMatrices = new Float64Array(144 * pieces.length);
  const ribPlaces = new Int32Array(12 * pieces.length);
  const one = new Float64Array(144);
  const other = new Float64Array(144);
  for (let i = 0; i < pieces.length; i++) {
    const r = pieces[i]!;
    ribStiffness(after, r, one);
    ribStiffness(before, r, other);
    for (let k = 0; k < 144; k++) ribMatrices[144 * i + k] = one[k]! - other[k]!;
    ribPlacesOf(unknowns, mesh.ribs.subarray(2 * r, 2 * r + 2), r, ribPlaces, 12 * i);
  }
  const springs = springChanges(before, after, unknowns);
  addMassOf(after, before, elements, unknowns, mass);
  return {
    mass,
    apply: (x, y) => {
      for (let i = 0; i < terms; i++) addPlateProduct(rows, PARTS * i, places, 20 * i, x, y, room);
      for (let i = 0; i < pieces.length; i++) addRibProduct(ribMatrices, 144 * i, ribPlaces, 12 * i, x, y);
      for (const { place, more } of springs) for (let k = 4 * place; k < 4 * place + 4; k++) y[k]! += more * x[k]!;
    },
  };
}

/** What the rim holds more of the sections of braces that have become wider. */
function springChanges(
  before: DiscreteTop,
  after: DiscreteTop,
  { ribSlot, pattern }: Unknowns,
): readonly { readonly place: number; readonly more: number }[] {
  if (sameSprings(before, after)) return [];
  const old = rimSprings(before).braces;
  return rimSprings(after).braces.flatMap(({ end, spring }, i) =>
    ribSlot[end]! < 0 || spring === old[i]!.spring
      ? []
      : [{ place: pattern.first[after.mesh.ribs[end]!]! + ribSlot[end]!, more: spring - old[i]!.spring }],
  );
}

/** By what the stiffness in the plane has been multiplied as a whole, where the corners are the same and nothing couples it to bending. */
function stretchRatio(before: DiscreteTop, after: DiscreteTop, q: number): number | undefined {
  if (!sameCorners(before, after, q)) return undefined;
  const one = before.laminateOf[q]! * LAMINATE_SIZE;
  const other = after.laminateOf[q]! * LAMINATE_SIZE;
  const ratio = after.laminates[other + AT_A]! / before.laminates[one + AT_A]!;
  for (let k = AT_A; k < AT_A + 6; k++) {
    const value = after.laminates[other + k]!;
    if (!(Math.abs(value - ratio * before.laminates[one + k]!) <= 1e-12 * Math.abs(value))) return undefined;
  }
  for (let k = AT_B; k < AT_B + 6; k++) {
    if (before.laminates[one + k] !== 0 || after.laminates[other + k] !== 0) return undefined;
  }
  return ratio;
}

function scaleMembrane(before: Float64Array, from: number, ratio: number, out: Float64Array): void {
  for (let k = MEMBRANE; k < COUPLING; k++) out[k] = ratio * before[from + k]!;
  out[SLOPE_X] = before[from + SLOPE_X]!;
  out[SLOPE_Y] = before[from + SLOPE_Y]!;
}

/** The parts now less those before, where the facet leans as before; else the parts now alone, and false. */
function putDifference(now: Float64Array, before: Float64Array, from: number, out: Float64Array, to: number): boolean {
  if (now[SLOPE_X] !== before[from + SLOPE_X] || now[SLOPE_Y] !== before[from + SLOPE_Y]) {
    out.set(now, to);
    return false;
  }
  // Without coupling its numbers are never read.
  const isCoupled = now[COUPLED] !== 0 || before[from + COUPLED] !== 0;
  const numbers = isCoupled ? SLOPE_X : COUPLING;
  for (let k = 0; k < numbers; k++) out[to + k] = now[k]! - before[from + k]!;
  out[to + SLOPE_X] = now[SLOPE_X]!;
  out[to + SLOPE_Y] = now[SLOPE_Y]!;
  out[to + COUPLED] = Number(isCoupled);
  return true;
}

function putNegative(before: Float64Array, from: number, out: Float64Array, to: number): void {
  for (let k = 0; k < SLOPE_X; k++) out[to + k] = -before[from + k]!;
  for (let k = SLOPE_X; k <= COUPLED; k++) out[to + k] = before[from + k]!;
}

/** Place of each of the 20 unknowns in the order of elimination, −1 when held. */
function placesOf({ slot, pattern }: Unknowns, quads: Int32Array, from: number, out: Int32Array, at: number): void {
  for (let k = 0; k < 4; k++) {
    const node = quads[from + k]!;
    for (let d = 0; d < 5; d++) {
      const s = slot[5 * node + d]!;
      out[at + 5 * k + d] = s < 0 ? -1 : pattern.first[node]! + s;
    }
  }
}

function ribPlacesOf(
  { slot, ribSlot, pattern }: Unknowns,
  nodes: Int32Array,
  r: number,
  out: Int32Array,
  at: number,
): void {
  for (let k = 0; k < 2; k++) {
    for (let d = 0; d < 6; d++) {
      const s = d < 5 ? slot[5 * nodes[k]! + d]! : ribSlot[2 * r + k]!;
      out[at + 6 * k + d] = s < 0 ? -1 : pattern.first[nodes[k]!]! + s;
    }
  }
}

/** Y += K X for one 12 × 12 matrix of a brace piece and blocks of four vectors. */
function addRibProduct(
  k: Float64Array,
  at: number,
  places: Int32Array,
  from: number,
  x: Float64Array,
  y: Float64Array,
): void {
  for (let i = 0; i < 12; i++) {
    const to = 4 * places[from + i]!;
    if (to < 0) continue;
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    let s3 = 0;
    for (let j = 0; j < 12; j++) {
      const p = 4 * places[from + j]!;
      if (p < 0) continue;
      const v = k[at + 12 * i + j]!;
      s0 += v * x[p]!;
      s1 += v * x[p + 1]!;
      s2 += v * x[p + 2]!;
      s3 += v * x[p + 3]!;
    }
    y[to]! += s0;
    y[to + 1]! += s1;
    y[to + 2]! += s2;
    y[to + 3]! += s3;
  }
}
