/** K′ X for a model whose sizes have changed, from its elements alone: the stiffness itself is never assembled. */
import { addMassOf, corners, type NodalMass } from './assembly.js';
import { sameMatter, samePiece, sameQuad, type DiscreteTop } from './discrete.js';
import type { FactoredTop } from './factoredTop.js';
import { LAMINATE_SIZE } from './laminate.js';
import type { PlateElement } from './plateElement.js';
import { ribStiffness } from './ribElement.js';
import type { Unknowns } from './unknowns.js';

export interface ElementChanges {
  /** Y += (K′ − K) X for a block of four vectors in the order of elimination. */
  apply(x: Float64Array, y: Float64Array): void;
  /** Mass of the changed top. */
  readonly mass: NodalMass;
}

/** Differences of all elements that are not the same in both, `elements` being the quadrilaterals' stiffness before; undefined when one is turned inside out, or the rim's spring differs. */
export function elementChanges(
  before: DiscreteTop,
  after: DiscreteTop,
  unknowns: Unknowns,
  element: PlateElement,
  { elements, changes: matrices }: Pick<FactoredTop, 'elements' | 'changes'>,
): ElementChanges | undefined {
  if (before.rimSpring !== after.rimSpring) return undefined;
  if (before.rimSpring > 0 && !sameMatter(before.x, after.x)) return undefined;
  const { mesh } = after;
  const mass = new Float64Array(3 * unknowns.graph.list.length);
  const px = new Float64Array(4);
  const py = new Float64Array(4);
  const pz = new Float64Array(4);
  const changed: number[] = [];
  for (let q = 0; q < after.laminateOf.length; q++) if (!sameQuad(before, after, q)) changed.push(q);
  const places = new Int32Array(20 * changed.length);
  for (let i = 0; i < changed.length; i++) {
    const q = changed[i]!;
    corners(after, q, px, py, pz);
    const row = after.laminateOf[q]! * LAMINATE_SIZE;
    if (!element.compute(px, py, pz, after.laminates, row, unknowns.support.inPlane)) return undefined;
    for (let k = 0; k < 400; k++) matrices[400 * i + k] = element.stiffness[k]! - elements[400 * q + k]!;
    placesOf(unknowns, mesh.quads.subarray(4 * q, 4 * q + 4), places, 20 * i);
  }
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
  addMassOf(after, unknowns, mass);
  return {
    mass,
    apply: (x, y) => {
      for (let i = 0; i < changed.length; i++) addProduct(matrices, 400 * i, 20, places, 20 * i, x, y);
      for (let i = 0; i < pieces.length; i++) addProduct(ribMatrices, 144 * i, 12, ribPlaces, 12 * i, x, y);
    },
  };
}

/** Place of each of the 20 unknowns in the order of elimination, −1 when held. */
function placesOf({ slot, pattern }: Unknowns, nodes: Int32Array, out: Int32Array, at: number): void {
  for (let k = 0; k < nodes.length; k++) {
    for (let d = 0; d < 5; d++) {
      const s = slot[5 * nodes[k]! + d]!;
      out[at + 5 * k + d] = s < 0 ? -1 : pattern.first[nodes[k]!]! + s;
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

/** Y += K X for one n × n element matrix and blocks of four vectors. */
function addProduct(
  k: Float64Array,
  at: number,
  n: number,
  places: Int32Array,
  from: number,
  x: Float64Array,
  y: Float64Array,
): void {
  for (let i = 0; i < n; i++) {
    const to = 4 * places[from + i]!;
    if (to < 0) continue;
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    let s3 = 0;
    for (let j = 0; j < n; j++) {
      const p = 4 * places[from + j]!;
      if (p < 0) continue;
      const v = k[at + n * i + j]!;
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
