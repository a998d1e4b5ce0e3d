/** Stiffness into the panels of the factor, and the mass matrix. */
import { AT_MASS, LAMINATE_SIZE } from '../element/laminate.js';
import { sameCorners, type DiscreteTop } from './discrete.js';
import { plateMass, type PlateElement } from '../element/plate-element.js';
import { PARTS, SCALAR_MASS } from '../element/plate-parts.js';
import { ribStiffness } from '../element/rib-element.js';
import { RIB_MASS, RIB_SIZE } from '../element/rib-section.js';
import type { Unknowns } from './degrees-of-freedom.js';
import { rimSprings } from './rim-springs.js';

/** Mass by node pairs: m0 on u, v, w; m1 between u and βx, v and βy; m2 on βx, βy. Three numbers per entry of the node graph. */
export type NodalMass = Float64Array;

/** Corners of quadrilateral `q` into `x`, `y`, `z`. */
export function corners(
  { mesh, x, y, z }: DiscreteTop,
  q: number,
  outX: Float64Array,
  outY: Float64Array,
  outZ: Float64Array,
): void {
  for (let k = 0; k < 4; k++) {
    const node = mesh.quads[4 * q + k]!;
    outX[k] = x[node]!;
    outY[k] = y[node]!;
    outZ[k] = z[node]!;
  }
}

/**
 * Adds K + `shift` M into `panels` and M into `mass` (both cleared first); `diagonal` receives the matrix's diagonal, `elements` the parts of each
 * quadrilateral's stiffness. Returns the first quadrilateral that is turned inside out, or −1.
 */
export function assemble(
  top: DiscreteTop,
  unknowns: Unknowns,
  element: PlateElement,
  shift: number,
  panels: Float64Array,
  mass: NodalMass,
  diagonal: Float64Array,
  elements: Float64Array,
): number {
  const { mesh, laminates, laminateOf } = top;
  const { pattern, slot, quadBase, quadStep } = unknowns;
  panels.fill(0, 0, pattern.panelSize);
  mass.fill(0);
  const px = new Float64Array(4);
  const py = new Float64Array(4);
  const pz = new Float64Array(4);
  for (let q = 0; q < laminateOf.length; q++) {
    corners(top, q, px, py, pz);
    const row = laminateOf[q]! * LAMINATE_SIZE;
    if (!element.compute(px, py, pz, laminates, row, unknowns.support.inPlane)) return q;
    const m0 = laminates[row + AT_MASS]!;
    const m1 = laminates[row + AT_MASS + 1]!;
    const m2 = laminates[row + AT_MASS + 2]!;
    elements.set(element.parts, PARTS * q);
    elements.set(element.mass, PARTS * q + SCALAR_MASS);
    const k = element.whole();
    if (shift !== 0) addShift(k, element.mass, shift, m0, m1, m2);
    const riding = top.riding.get(q);
    if (riding && shift !== 0) addShift(k, riding, shift, 1, 0, 0);
    let pair = 10 * q;
    for (let i = 0; i < 4; i++) {
      const p = mesh.quads[4 * q + i]!;
      for (let j = 0; j <= i; j++, pair++) {
        const r = mesh.quads[4 * q + j]!;
        const m = element.mass[4 * i + j]!;
        addMass(mass, unknowns, p, r, m * m0 + (riding?.[4 * i + j] ?? 0), m * m1, m * m2);
        const base = quadBase[pair]!;
        if (base < 0) continue;
        const step = quadStep[pair]!;
        const later = pattern.elimination.place[p]! >= pattern.elimination.place[r]!;
        const stepP = later ? step : 1;
        const stepR = later ? 1 : step;
        for (let a = 0; a < 5; a++) {
          const sa = slot[5 * p + a]!;
          if (sa < 0) continue;
          const line = 20 * (5 * i + a) + 5 * j;
          const target = base + sa * stepP;
          for (let b = 0; b < 5; b++) {
            const sb = slot[5 * r + b]!;
            if (sb >= 0) panels[target + sb * stepR]! += k[line + b]!;
          }
        }
      }
    }
  }
  addRibs(top, unknowns, shift, panels, mass);
  addRimSpring(top, unknowns, panels);
  copyDiagonal(unknowns, panels, diagonal);
  return -1;
}

/** M alone, into `mass` (cleared first); `elements` are the parts of the top `before`, on the same mesh. */
export function addMassOf(
  top: DiscreteTop,
  before: DiscreteTop,
  elements: Float64Array,
  unknowns: Unknowns,
  mass: NodalMass,
): void {
  const { mesh, laminates, laminateOf, ribs } = top;
  const px = new Float64Array(4);
  const py = new Float64Array(4);
  const pz = new Float64Array(4);
  const scalar = new Float64Array(16);
  mass.fill(0);
  for (let q = 0; q < laminateOf.length; q++) {
    if (sameCorners(before, top, q)) {
      for (let k = 0; k < 16; k++) scalar[k] = elements[PARTS * q + SCALAR_MASS + k]!;
    } else {
      corners(top, q, px, py, pz);
      plateMass(px, py, scalar);
    }
    const row = laminateOf[q]! * LAMINATE_SIZE + AT_MASS;
    const riding = top.riding.get(q);
    for (let i = 0; i < 4; i++) {
      for (let j = 0; j <= i; j++) {
        const m = scalar[4 * i + j]!;
        const p = mesh.quads[4 * q + i]!;
        const r = mesh.quads[4 * q + j]!;
        const more = riding?.[4 * i + j] ?? 0;
        addMass(mass, unknowns, p, r, m * laminates[row]! + more, m * laminates[row + 1]!, m * laminates[row + 2]!);
      }
    }
  }
  for (let r = 0; r < mesh.ribBrace.length; r++) {
    const [a, b] = [mesh.ribs[2 * r]!, mesh.ribs[2 * r + 1]!];
    const length = Math.hypot(top.x[b]! - top.x[a]!, top.y[b]! - top.y[a]!);
    const row = r * RIB_SIZE + RIB_MASS;
    for (const [p, o, share] of [
      [a, a, BAR_OWN],
      [a, b, BAR_OTHER],
      [b, b, BAR_OWN],
    ] as const) {
      const m = length * share;
      addMass(mass, unknowns, p, o, m * ribs[row]!, m * ribs[row + 1]!, m * ribs[row + 2]!);
    }
  }
}

function addShift(k: Float64Array, mass: Float64Array, shift: number, m0: number, m1: number, m2: number): void {
  for (let i = 0; i < 4; i++) {
    for (let j = 0; j < 4; j++) {
      const m = shift * mass[4 * i + j]!;
      const at = 100 * i + 5 * j;
      k[at]! += m * m0;
      k[at + 21]! += m * m0;
      k[at + 42]! += m * m0;
      k[at + 63]! += m * m2;
      k[at + 84]! += m * m2;
      k[at + 3]! += m * m1;
      k[at + 24]! += m * m1;
      k[at + 60]! += m * m1;
      k[at + 81]! += m * m1;
    }
  }
}

function addMass(mass: NodalMass, { graph }: Unknowns, p: number, r: number, m0: number, m1: number, m2: number): void {
  const at = 3 * entryOf(graph, p, r);
  mass[at]! += m0;
  mass[at + 1]! += m1;
  mass[at + 2]! += m2;
  if (p === r) return;
  const other = 3 * entryOf(graph, r, p);
  mass[other]! += m0;
  mass[other + 1]! += m1;
  mass[other + 2]! += m2;
}

function entryOf({ start, list }: Unknowns['graph'], p: number, r: number): number {
  let k = start[p]!;
  while (list[k] !== r) k++;
  return k;
}

/** Mass of a bar: half consistent, half lumped. */
const BAR_OWN = 5 / 12;
const BAR_OTHER = 1 / 12;

function addRibs(top: DiscreteTop, unknowns: Unknowns, shift: number, panels: Float64Array, mass: NodalMass): void {
  const { mesh, ribs } = top;
  const { pattern, slot, ribSlot, ribBase, ribStep } = unknowns;
  const k = new Float64Array(144);
  for (let r = 0; r < mesh.ribBrace.length; r++) {
    const length = ribStiffness(top, r, k);
    const row = r * RIB_SIZE + RIB_MASS;
    let pair = 3 * r;
    for (let i = 0; i < 2; i++) {
      const p = mesh.ribs[2 * r + i]!;
      for (let j = 0; j <= i; j++, pair++) {
        const o = mesh.ribs[2 * r + j]!;
        const m = length * (i === j ? BAR_OWN : BAR_OTHER);
        addMass(mass, unknowns, p, o, m * ribs[row]!, m * ribs[row + 1]!, m * ribs[row + 2]!);
        const base = ribBase[pair]!;
        if (base < 0) continue;
        const later = pattern.elimination.place[p]! >= pattern.elimination.place[o]!;
        const stepP = later ? ribStep[pair]! : 1;
        const stepO = later ? 1 : ribStep[pair]!;
        for (let a = 0; a < 6; a++) {
          const sa = a < 5 ? slot[5 * p + a]! : ribSlot[2 * r + i]!;
          if (sa < 0) continue;
          for (let b = 0; b < 6; b++) {
            const sb = b < 5 ? slot[5 * o + b]! : ribSlot[2 * r + j]!;
            if (sb < 0) continue;
            let value = k[12 * (6 * i + a) + 6 * j + b]!;
            if (shift !== 0) value += shift * m * inertia(ribs, row, a, b);
            panels[base + sa * stepP + sb * stepO]! += value;
          }
        }
      }
    }
  }
}

function inertia(ribs: Float64Array, row: number, a: number, b: number): number {
  if (a === b) return a < 3 ? ribs[row]! : a < 5 ? ribs[row + 2]! : 0;
  return Math.abs(a - b) === 3 && Math.min(a, b) < 2 && Math.max(a, b) < 5 ? ribs[row + 1]! : 0;
}

/**
 * The rim holds the edge's turning both about it and across it, ½ k |β|² along each side, half at each of its ends; and the
 * section of a brace that ends there, over the brace's width. Without end it is a clamp.
 */
function addRimSpring(top: DiscreteTop, { pattern, slot, ribSlot }: Unknowns, panels: Float64Array): void {
  if (!(top.rimSpring > 0)) return;
  const add = (node: number, at: number, spring: number): void => {
    if (at >= 0) panels[diagonalAt(pattern, node, at, at)]! += spring;
  };
  const springs = rimSprings(top);
  springs.nodes.forEach(({ node, spring }) => [3, 4].forEach((d) => add(node, slot[5 * node + d]!, spring)));
  springs.braces.forEach(({ end, spring }) => add(top.mesh.ribs[end]!, ribSlot[end]!, spring));
}

function diagonalAt(pattern: Unknowns['pattern'], node: number, a: number, b: number): number {
  const s = pattern.supernodeOf[node]!;
  const { columns, columnStart } = pattern.elimination;
  const row = pattern.first[node]! - pattern.first[columns[columnStart[s]!]!]!;
  return pattern.panelStart[s]! + (row + a) * pattern.width[s]! + row + b;
}

function copyDiagonal({ pattern }: Unknowns, panels: Float64Array, diagonal: Float64Array): void {
  for (const node of pattern.elimination.columns) {
    for (let a = 0; a < pattern.weights[node]!; a++) {
      diagonal[pattern.first[node]! + a] = panels[diagonalAt(pattern, node, a, a)]!;
    }
  }
}

/** Y ← M X for blocks of four vectors in the order of elimination. */
export function multiplyMass(unknowns: Unknowns, mass: NodalMass, x: Float64Array, y: Float64Array): void {
  const { start, list } = unknowns.graph;
  const held = new Float64Array(20);
  const sum = new Float64Array(20);
  y.fill(0);
  for (let i = 0; i + 1 < start.length; i++) {
    sum.fill(0);
    for (let k = start[i]!; k < start[i + 1]!; k++) {
      const free = startOf(unknowns, list[k]!);
      if (free < 0) gatherHeld(unknowns, list[k]!, x, held);
      const from = free < 0 ? 0 : free;
      addMassTimes(mass, 3 * k, free < 0 ? held : x, from, sum);
    }
    const to = startOf(unknowns, i);
    if (to < 0) scatterHeld(unknowns, i, sum, y);
    else for (let c = 0; c < 20; c++) y[to + c] = sum[c]!;
  }
}

function addMassTimes(mass: NodalMass, at: number, x: Float64Array, from: number, sum: Float64Array): void {
  const m0 = mass[at]!;
  const m1 = mass[at + 1]!;
  const m2 = mass[at + 2]!;
  for (let c = 0; c < 4; c++) {
    const f = from + c;
    const u = x[f]!;
    const v = x[f + 4]!;
    const bx = x[f + 12]!;
    const by = x[f + 16]!;
    sum[c]! += m0 * u + m1 * bx;
    sum[c + 4]! += m0 * v + m1 * by;
    sum[c + 8]! += m0 * x[f + 8]!;
    sum[c + 12]! += m1 * u + m2 * bx;
    sum[c + 16]! += m1 * v + m2 * by;
  }
}

/** Where a node's five unknowns stand one after another in a block; −1 where some are held. */
function startOf({ slot, pattern }: Unknowns, node: number): number {
  return slot[5 * node] === 0 && slot[5 * node + 4] === 4 ? 4 * pattern.first[node]! : -1;
}

function gatherHeld({ slot, pattern }: Unknowns, node: number, x: Float64Array, out: Float64Array): void {
  for (let d = 0; d < 5; d++) {
    const s = slot[5 * node + d]!;
    const from = 4 * (pattern.first[node]! + s);
    for (let c = 0; c < 4; c++) out[4 * d + c] = s < 0 ? 0 : x[from + c]!;
  }
}

function scatterHeld({ slot, pattern }: Unknowns, node: number, sum: Float64Array, y: Float64Array): void {
  for (let d = 0; d < 5; d++) {
    const s = slot[5 * node + d]!;
    if (s < 0) continue;
    const to = 4 * (pattern.first[node]! + s);
    for (let c = 0; c < 4; c++) y[to + c] = sum[4 * d + c]!;
  }
}
