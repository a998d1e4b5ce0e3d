/**
 * What each size does to each mode and to the bridge's rotation, to first order and without solving anew:
 * d(ω²)/dp = φᵀ (∂K/∂p − ω² ∂M/∂p) φ for unit modal mass (R.L. Fox & M.P. Kapoor, Rates of change of eigenvalues and
 * eigenvectors, AIAA J. 6, 1968, 2426–2429), d(rotation)/dp = m′·u + aᵀ(f′ − K′ u) with K a = m. Only the elements that a
 * parameter changes are formed anew, with the parameter a ten-thousandth larger.
 */
import { corners } from './assembly.js';
import { discreteTop, samePiece, sameQuad, type DiscreteTop } from './discrete.js';
import { massOf } from './describe.js';
import { AT_MASS, LAMINATE_SIZE } from './laminate.js';
import { loadCase } from './loads.js';
import { changed, parametersOf, valueOf, type TopParameter } from './parameters.js';
import { plateElement, type PlateElement } from './plateElement.js';
import { ribStiffness } from './ribElement.js';
import { RIB_MASS, RIB_SIZE } from './ribSection.js';
import type { SolvedState, TopSolution } from './solution.js';

export interface Sensitivity {
  readonly parameter: TopParameter;
  /** SI */
  readonly value: number;
  /** Hz per SI unit of the parameter, one per mode. */
  readonly frequencies: readonly number[];
  /** rad per SI unit; absent without a loaded bridge. */
  readonly rotation?: number;
  /** kg per SI unit */
  readonly mass: number;
}

/** Sensitivities of a solution to some parameters; absent: all of its dimensions. */
export function sensitivities(
  { state, mass }: TopSolution,
  parameters: readonly TopParameter[] = parametersOf(state.model, false),
): readonly Sensitivity[] {
  const energies = new ElementEnergies(state);
  const base = energies.all(state.top);
  return parameters.map((parameter) => {
    const value = valueOf(state.model, parameter);
    const step = 1e-4 * (Math.abs(value) || 1e-3);
    const model = changed(state.model, parameter, step);
    const top = discreteTop(model, state.top.mesh);
    const change = energies.change(top, base);
    const frequencies = state.squares.map((square, i) => change[i]! / step / (8 * Math.PI ** 2 * frequencyOf(square)));
    return {
      parameter,
      value,
      frequencies,
      rotation:
        state.displacement && state.adjoint && rotationChange(state, model, top, change[state.squares.length]!) / step,
      mass: (massOf(top) - mass) / step,
    };
  });
}

function frequencyOf(square: number): number {
  return Math.sqrt(square) / (2 * Math.PI);
}

function rotationChange(state: SolvedState, model: SolvedState['model'], top: DiscreteTop, energy: number): number {
  const { unknowns, displacement, adjoint } = state;
  const before = loadCase(state.model, state.top);
  const after = loadCase(model, top);
  let sum = -energy;
  for (let node = 0; node < top.x.length; node++) {
    for (let d = 5 * node; d < 5 * node + 5; d++) {
      const s = unknowns.slot[d]!;
      if (s < 0) continue;
      const at = unknowns.pattern.first[node]! + s;
      sum += adjoint![at]! * (after.forces[d]! - before.forces[d]!);
      sum += displacement![at]! * (after.measure[d]! - before.measure[d]!);
    }
  }
  return sum;
}

/** φᵀ (K − ω² M) φ of each element for each mode, and aᵀ K u for the static case. */
class ElementEnergies {
  private readonly element: PlateElement = plateElement();
  private readonly px = new Float64Array(4);
  private readonly py = new Float64Array(4);
  private readonly pz = new Float64Array(4);
  private readonly rib = new Float64Array(144);
  private readonly local: Float64Array[];
  private readonly count: number;
  private readonly state: SolvedState;
  private readonly vectors: readonly Float64Array[];

  constructor(state: SolvedState) {
    const { displacement, adjoint } = state;
    this.state = state;
    this.vectors = displacement && adjoint ? [...state.vectors, displacement, adjoint] : state.vectors;
    this.count = state.squares.length + (displacement ? 1 : 0);
    this.local = this.vectors.map(() => new Float64Array(20));
  }

  /** One row of energies per quadrilateral, then per brace piece. */
  all(top: DiscreteTop): Float64Array {
    const { count } = this;
    const quads = top.laminateOf.length;
    const table = new Float64Array(count * (quads + top.mesh.ribBrace.length));
    for (let q = 0; q < quads; q++) this.quad(top, q, table, count * q);
    for (let r = 0; r < top.mesh.ribBrace.length; r++) this.piece(top, r, table, count * (quads + r));
    return table;
  }

  /** Sum of the changes against `base`. */
  change(top: DiscreteTop, base: Float64Array): Float64Array {
    const { count, state } = this;
    const total = new Float64Array(count);
    const row = new Float64Array(count);
    const quads = top.laminateOf.length;
    for (let q = 0; q < quads; q++) {
      if (sameQuad(state.top, top, q)) continue;
      this.quad(top, q, row, 0);
      for (let k = 0; k < count; k++) total[k]! += row[k]! - base[count * q + k]!;
    }
    for (let r = 0; r < top.mesh.ribBrace.length; r++) {
      if (samePiece(state.top, top, r)) continue;
      this.piece(top, r, row, 0);
      for (let k = 0; k < count; k++) total[k]! += row[k]! - base[count * (quads + r) + k]!;
    }
    this.addRim(top, total);
    return total;
  }

  private quad(top: DiscreteTop, q: number, out: Float64Array, at: number): void {
    const { element, state, local } = this;
    corners(top, q, this.px, this.py, this.pz);
    const row = top.laminateOf[q]! * LAMINATE_SIZE;
    element.compute(this.px, this.py, this.pz, top.laminates, row, state.unknowns.support.inPlane);
    this.vectors.forEach((vector, k) => this.gather(vector, top.mesh.quads.subarray(4 * q, 4 * q + 4), local[k]!));
    const moments = top.laminates.subarray(row + AT_MASS, row + AT_MASS + 3);
    const modes = state.squares.length;
    for (let k = 0; k < modes; k++) {
      out[at + k] =
        form(element.stiffness, 20, local[k]!, local[k]!) -
        state.squares[k]! * massForm(element.mass, moments, local[k]!);
    }
    if (this.count > modes) out[at + modes] = form(element.stiffness, 20, local[modes]!, local[modes + 1]!);
  }

  private piece(top: DiscreteTop, r: number, out: Float64Array, at: number): void {
    const { state, rib } = this;
    const length = ribStiffness(top, r, rib);
    const nodes = top.mesh.ribs.subarray(2 * r, 2 * r + 2);
    const local = this.vectors.map((vector) => this.gatherPiece(vector, nodes, r));
    const row = r * RIB_SIZE + RIB_MASS;
    const modes = state.squares.length;
    const own = (5 / 12) * length;
    const other = (1 / 12) * length;
    const bar = Float64Array.of(own, other, other, own);
    for (let k = 0; k < modes; k++) {
      const five = [...local[k]!.subarray(0, 5), ...local[k]!.subarray(6, 11)];
      out[at + k] =
        form(rib, 12, local[k]!, local[k]!) - state.squares[k]! * massForm(bar, top.ribs.subarray(row, row + 3), five);
    }
    if (this.count > modes) out[at + modes] = form(rib, 12, local[modes]!, local[modes + 1]!);
  }

  private gather(vector: Float64Array, nodes: Int32Array, out: Float64Array): void {
    const { slot, pattern } = this.state.unknowns;
    for (let k = 0; k < nodes.length; k++) {
      for (let d = 0; d < 5; d++) {
        const s = slot[5 * nodes[k]! + d]!;
        out[5 * k + d] = s < 0 ? 0 : vector[pattern.first[nodes[k]!]! + s]!;
      }
    }
  }

  private gatherPiece(vector: Float64Array, nodes: Int32Array, r: number): Float64Array {
    const { ribSlot, pattern } = this.state.unknowns;
    const ten = new Float64Array(10);
    this.gather(vector, nodes, ten);
    const out = new Float64Array(12);
    for (let end = 0; end < 2; end++) {
      out.set(ten.subarray(5 * end, 5 * end + 5), 6 * end);
      const s = ribSlot[2 * r + end]!;
      out[6 * end + 5] = s < 0 ? 0 : vector[pattern.first[nodes[end]!]! + s]!;
    }
    return out;
  }

  /** The rim's spring: ½ k (β·n)², half of each side at each end. */
  private addRim(top: DiscreteTop, total: Float64Array): void {
    const more = top.rimSpring - this.state.top.rimSpring;
    if (more === 0) return;
    const { mesh, x, y } = top;
    const two = new Float64Array(10);
    const turned = (vector: Float64Array, e: number): readonly [number, number] => {
      const [a, b] = [mesh.rim[e]!, mesh.rim[e + 1]!];
      const length = Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!);
      const n = [(y[b]! - y[a]!) / length, -(x[b]! - x[a]!) / length] as const;
      this.gather(vector, mesh.rim.subarray(e, e + 2), two);
      return [two[3]! * n[0] + two[4]! * n[1], two[8]! * n[0] + two[9]! * n[1]];
    };
    const modes = this.state.squares.length;
    for (let e = 0; e < mesh.rim.length; e += 2) {
      const half =
        (more * Math.hypot(x[mesh.rim[e + 1]!]! - x[mesh.rim[e]!]!, y[mesh.rim[e + 1]!]! - y[mesh.rim[e]!]!)) / 2;
      const ends = this.vectors.map((vector) => turned(vector, e));
      for (let k = 0; k < modes; k++) total[k]! += half * (ends[k]![0] ** 2 + ends[k]![1] ** 2);
      if (this.count > modes) {
        total[modes]! += half * (ends[modes]![0] * ends[modes + 1]![0] + ends[modes]![1] * ends[modes + 1]![1]);
      }
    }
  }
}

/** aᵀ K b */
function form(k: Float64Array, n: number, a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < n; i++) {
    let row = 0;
    for (let j = 0; j < n; j++) row += k[n * i + j]! * b[j]!;
    sum += a[i]! * row;
  }
  return sum;
}

/** aᵀ M a from the scalar node matrix and the moments of mass m0, m1, m2. */
function massForm(scalar: Float64Array, moments: Float64Array, a: ArrayLike<number>): number {
  const nodes = Math.sqrt(scalar.length);
  const [m0, m1, m2] = moments as unknown as [number, number, number];
  let sum = 0;
  for (let i = 0; i < nodes; i++) {
    for (let j = 0; j < nodes; j++) {
      const [p, q] = [5 * i, 5 * j];
      const level = a[p]! * a[q]! + a[p + 1]! * a[q + 1]! + a[p + 2]! * a[q + 2]!;
      const mixed = a[p]! * a[q + 3]! + a[p + 3]! * a[q]! + a[p + 1]! * a[q + 4]! + a[p + 4]! * a[q + 1]!;
      const turn = a[p + 3]! * a[q + 3]! + a[p + 4]! * a[q + 4]!;
      sum += scalar[nodes * i + j]! * (m0 * level + m1 * mixed + m2 * turn);
    }
  }
  return sum;
}
