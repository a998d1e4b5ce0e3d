/** Which unknowns each node has, in which order they are eliminated, and where each element's numbers go. */
import { eliminationOf, type NodeGraph } from '../../linear-algebra/elimination.js';
import type { TopMesh } from '../mesh/mesh.js';
import type { Edge } from '../model.js';
import { factorPattern, rowInPanel, type FactorPattern } from '../../linear-algebra/sparse-cholesky.js';

/** What decides the unknowns, apart from the mesh. */
export interface Support {
  readonly edge: Edge['kind'];
  readonly inPlaneHeld: boolean;
  /** False when nothing couples bending with the plate's own plane: then u and v are left out. */
  readonly inPlane: boolean;
}

export interface Unknowns {
  readonly support: Support;
  /** For u, v, w, βx, βy of each node: its place among the node's unknowns, or −1 when held. */
  readonly slot: Int8Array;
  /** For the two ends of each brace piece: place of the brace's own section rotation, or −1 when held. */
  readonly ribSlot: Int8Array;
  readonly pattern: FactorPattern;
  /** Ten node pairs per quadrilateral and three per brace piece: panel place of the pair's first number, and the step between rows. */
  readonly quadBase: Int32Array;
  readonly quadStep: Int32Array;
  readonly ribBase: Int32Array;
  readonly ribStep: Int32Array;
  /** Node graph with each node itself included, rows sorted: the pattern of the mass matrix. */
  readonly graph: NodeGraph;
}

export function unknownsOf(mesh: TopMesh, support: Support): Unknowns {
  const nodes = mesh.x.length;
  const slot = new Int8Array(5 * nodes);
  const held = heldUnknowns(mesh, support);
  const weights = new Int32Array(nodes);
  for (let i = 0; i < nodes; i++) {
    for (let d = 0; d < 5; d++) slot[5 * i + d] = held[5 * i + d] ? -1 : weights[i]!++;
  }
  const ribSlot = ribSlots(mesh, support, weights);
  const graph = graphOf(mesh);
  const elimination = eliminationOf(graph, weights);
  const pattern = factorPattern(elimination, weights);
  const quads = mesh.quads.length / 4;
  const quadBase = new Int32Array(10 * quads);
  const quadStep = new Int32Array(10 * quads);
  const ribBase = new Int32Array(3 * mesh.ribBrace.length);
  const ribStep = new Int32Array(3 * mesh.ribBrace.length);
  for (let q = 0; q < quads; q++) {
    let pair = 10 * q;
    for (let i = 0; i < 4; i++) {
      for (let j = 0; j <= i; j++) {
        place(pattern, mesh.quads[4 * q + i]!, mesh.quads[4 * q + j]!, quadBase, quadStep, pair++);
      }
    }
  }
  for (let r = 0; r < mesh.ribBrace.length; r++) {
    let pair = 3 * r;
    for (let i = 0; i < 2; i++) {
      for (let j = 0; j <= i; j++) {
        place(pattern, mesh.ribs[2 * r + i]!, mesh.ribs[2 * r + j]!, ribBase, ribStep, pair++);
      }
    }
  }
  return { support, slot, ribSlot, pattern, quadBase, quadStep, ribBase, ribStep, graph };
}

/** The node eliminated later gives the rows. */
function place(pattern: FactorPattern, p: number, q: number, base: Int32Array, step: Int32Array, at: number): void {
  const { elimination, supernodeOf, panelStart, width } = pattern;
  const [row, column] = elimination.place[p]! >= elimination.place[q]! ? [p, q] : [q, p];
  const s = supernodeOf[column]!;
  if (s < 0 || supernodeOf[row]! < 0) {
    base[at] = -1;
    return;
  }
  base[at] = panelStart[s]! + rowInPanel(pattern, s, row) * width[s]! + rowInPanel(pattern, s, column);
  step[at] = width[s]!;
}

function heldUnknowns(mesh: TopMesh, { edge, inPlaneHeld, inPlane }: Support): Uint8Array {
  const held = new Uint8Array(mesh.x.length * 5);
  const hold = (node: number, ...which: number[]): void => which.forEach((d) => (held[5 * node + d] = 1));
  if (!inPlane) for (let i = 0; i < mesh.x.length; i++) hold(i, 0, 1);
  for (const node of mesh.rested) hold(node, 2);
  if (edge === 'free') {
    if (inPlane && mesh.rested.length > 0) holdInPlane(mesh, hold);
    return held;
  }
  for (const node of mesh.rim) {
    hold(node, 2);
    if (inPlaneHeld || edge === 'clamped') hold(node, 0, 1);
    if (edge === 'clamped') hold(node, 3, 4);
  }
  if (inPlane && !inPlaneHeld && edge !== 'clamped') {
    holdInPlane(mesh, hold);
  }
  return held;
}

/** Three supports against drifting in the plane: at the rim nodes farthest along −x and along +x. */
function holdInPlane({ rim, x }: TopMesh, hold: (node: number, ...which: number[]) => void): void {
  let low = rim[0]!;
  let high = rim[0]!;
  for (const node of rim) {
    if (x[node]! < x[low]!) low = node;
    if (x[node]! > x[high]!) high = node;
  }
  hold(low, 0, 1);
  hold(high, 1);
}

/** Each brace has one rotation of its own per node it passes; several pieces of one brace share it. */
function ribSlots(mesh: TopMesh, { edge }: Support, weights: Int32Array): Int8Array {
  const slots = new Int8Array(mesh.ribs.length).fill(-1);
  const rim = new Set(edge === 'clamped' ? mesh.rim : []);
  const known = new Map<number, number>();
  for (let k = 0; k < mesh.ribs.length; k++) {
    const node = mesh.ribs[k]!;
    if (rim.has(node)) continue;
    const key = mesh.ribBrace[k >> 1]! * mesh.x.length + node;
    let slot = known.get(key);
    if (slot === undefined) {
      slot = weights[node]!++;
      known.set(key, slot);
    }
    slots[k] = slot;
  }
  return slots;
}

function graphOf({ x, quads, ribs }: TopMesh): NodeGraph {
  const neighbours: number[][] = Array.from(x, (_, i) => [i]);
  const join = (a: number, b: number): void => {
    if (!neighbours[a]!.includes(b)) {
      neighbours[a]!.push(b);
      neighbours[b]!.push(a);
    }
  };
  for (let q = 0; q < quads.length; q += 4) {
    for (let i = 0; i < 4; i++) for (let j = 0; j < i; j++) join(quads[q + i]!, quads[q + j]!);
  }
  for (let r = 0; r < ribs.length; r += 2) join(ribs[r]!, ribs[r + 1]!);
  const start = new Int32Array(x.length + 1);
  neighbours.forEach((list, i) => (start[i + 1] = start[i]! + list.length));
  const list = new Int32Array(start[x.length]!);
  neighbours.forEach((row, i) =>
    list.set(
      row.sort((a, b) => a - b),
      start[i],
    ),
  );
  return { start, list };
}
