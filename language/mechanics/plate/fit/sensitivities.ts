/**
 * What each size does to each mode and to the bridge's rotation, to first order and without solving anew:
 * d(ω²)/dp = φᵀ (∂K/∂p − ω² ∂M/∂p) φ for unit modal mass (R.L. Fox & M.P. Kapoor, Rates of change of eigenvalues and
 * eigenvectors, AIAA J. 6, 1968, 2426–2429), d(rotation)/dp = m′·u + aᵀ(f′ − K′ u) with K a = m. With adjoints also to dip
 * and belly (likewise) and to the effective mass and area of one mode (see `adjoints.ts`). Only the elements that a
 * parameter changes are formed anew, with the parameter a ten-thousandth larger.
 */
import { type Adjoints, feltWeights, meanOver } from './adjoints.js';
import { corners } from '../solve/assembly.js';
import { discreteTop, sameCorners, sameMatter, samePiece, sameQuad, type DiscreteTop } from '../solve/discrete.js';
import { areaWeights, dot, heightsOf, massOf } from '../solve/describe.js';
import { AT_MASS, LAMINATE_SIZE } from '../element/laminate.js';
import { type LoadCase, loadCase, loadedPatch } from '../solve/loads.js';
import { changed, parametersOf, valueOf, type TopParameter } from './parameters.js';
import { plateElement, type PlateElement } from '../element/plate-element.js';
import { SLOPE_X, SLOPE_Y } from '../element/plate-parts.js';
import {
  BY_PHI,
  movedStrains,
  ROW_PLACES,
  SLOPES,
  slopesBetween,
  strainsOf,
  type MovedStrains,
} from '../element/row-slopes.js';
import { ribStiffness } from '../element/rib-element.js';
import { RIB_MASS, RIB_SIZE } from '../element/rib-section.js';
import { rimSprings, sameSprings, type RimSprings } from '../solve/rim-springs.js';
import type { TopMesh } from '../mesh/mesh.js';
import type { SolvedState, TopSolution } from '../solution.js';

export interface Sensitivity {
  readonly parameter: TopParameter;
  /** SI */
  readonly value: number;
  /** Hz per SI unit of the parameter, one per mode. */
  readonly frequencies: readonly number[];
  /** rad per SI unit; absent without a loaded bridge. */
  readonly rotation?: number;
  /** m per SI unit; absent without adjoints, or where nothing sinks or rises. */
  readonly dip?: number;
  readonly belly?: number;
  /** kg and m² per SI unit, of the mode of the adjoints as `BridgeMotion` has them; absent without. */
  readonly effectiveMass?: number;
  readonly effectiveArea?: number;
  /** kg per SI unit */
  readonly mass: number;
}

/** Sensitivities of a solution to some parameters; absent: all of its dimensions. */
export function sensitivities(
  { state, mass }: TopSolution,
  parameters: readonly TopParameter[] = parametersOf(state.model, false),
  adjoints?: Adjoints,
): readonly Sensitivity[] {
  const energies = new ElementEnergies(state, adjoints);
  const base = energies.all(state.top);
  const before = state.displacement && loadCase(state.model, state.top);
  const shape = adjoints && new ShapeFigures(state, adjoints.mode);
  return parameters.map((parameter) => {
    const value = valueOf(state.model, parameter);
    const step = 1e-4 * (Math.abs(value) || 1e-3);
    const model = changed(state.model, parameter, step);
    const top = discreteTop(model, state.top.mesh, state.top);
    const change = energies.change(top, base);
    const of = (pair: PairName) => change[energies.at[pair]!]!;
    const after = before && (sameLoads(state, { model, top }) ? before : loadCase(model, top));
    const still = (pair: 'rotation' | 'dip' | 'belly', adjoint: Float64Array | undefined) =>
      before && after && adjoint
        ? (after === before ? 0 : staticChange(state, adjoint, before, after, pair)) - of(pair)
        : undefined;
    const perStep = (amount: number | undefined) => (amount === undefined ? undefined : amount / step);
    return {
      parameter,
      value,
      frequencies: state.squares.map((square, i) => change[i]! / step / (8 * Math.PI ** 2 * frequencyOf(square))),
      rotation: perStep(still('rotation', state.adjoint)),
      dip: perStep(still('dip', adjoints?.dip)),
      belly: perStep(still('belly', adjoints?.belly)),
      effectiveMass: perStep(shape?.change({ model, top }, of).mass),
      effectiveArea: perStep(shape?.change({ model, top }, of).area),
      mass: (massOf(top) - mass) / step,
    };
  });
}

/** Whether the forces on the nodes are the same: they lean on the load, the places of the nodes and the plate's thickness. */
function sameLoads(a: Pick<SolvedState, 'model' | 'top'>, b: Pick<SolvedState, 'model' | 'top'>): boolean {
  return a.model.load === b.model.load && a.top.x === b.top.x && sameMatter(a.top.thickness, b.top.thickness);
}

function frequencyOf(square: number): number {
  return Math.sqrt(square) / (2 * Math.PI);
}

/** What a change of the load, and for the rotation of its measure, does while the stiffness stays. */
function staticChange(
  { unknowns, displacement }: SolvedState,
  adjoint: Float64Array,
  before: LoadCase,
  after: LoadCase,
  of: 'rotation' | 'dip' | 'belly',
): number {
  let sum = 0;
  for (let node = 0; node < unknowns.pattern.first.length; node++) {
    for (let d = 5 * node; d < 5 * node + 5; d++) {
      const s = unknowns.slot[d]!;
      if (s < 0) continue;
      const at = unknowns.pattern.first[node]! + s;
      sum += adjoint[at]! * (after.forces[d]! - before.forces[d]!);
      if (of === 'rotation') sum += displacement![at]! * (after.measure[d]! - before.measure[d]!);
    }
  }
  return sum;
}

/** Effective mass 1/a² and area V/a of one mode, a its movement where it is felt and V the air it displaces. */
class ShapeFigures {
  private readonly heights: Float64Array;
  private readonly patch: number;
  private readonly felt: number;
  private readonly volume: number;

  constructor(
    private readonly state: SolvedState,
    mode: number,
  ) {
    this.heights = heightsOf(state, state.vectors[mode]!);
    this.patch = loadedPatch(state.model);
    this.felt = dot(feltWeights(state, mode), this.heights);
    this.volume = dot(areaWeights(state, -1).level, this.heights);
  }

  change(
    after: Pick<SolvedState, 'model' | 'top'>,
    of: (pair: PairName) => number,
  ): { readonly mass: number; readonly area: number } {
    const { felt, volume, patch, heights } = this;
    let feltChange = -of('felt') - (of('modal mass') * felt) / 2;
    let volumeChange = -of('volume') - (of('modal mass') * volume) / 2;
    // A thicker bridge is stiff over a little less of its footprint: the nodes there stand elsewhere.
    if (!sameMatter(this.state.top.x, after.top.x) || !sameMatter(this.state.top.y, after.top.y)) {
      if (patch >= 0) feltChange += dot(meanOver(after, patch), heights) - felt;
      volumeChange += dot(areaWeights(after, -1).level, heights) - volume;
    }
    return { mass: (-2 * feltChange) / felt ** 3, area: volumeChange / felt - (volume * feltChange) / felt ** 2 };
  }
}

type PairName = 'rotation' | 'dip' | 'belly' | 'felt' | 'volume' | 'modal mass';

/** leftᵀ (stiffness · K − square · M) right, the vectors by their index. */
interface Pair {
  readonly left: number;
  readonly right: number;
  readonly stiffness: 0 | 1;
  readonly square: number;
}

/** The vectors at work and the pairs of them whose energies are wanted: each mode with itself, then those with a name. */
function pairsOf(state: SolvedState, adjoints: Adjoints | undefined) {
  const vectors = [...state.vectors];
  const pairs: Pair[] = state.squares.map((square, i) => ({ left: i, right: i, stiffness: 1, square }));
  const at: Partial<Record<PairName, number>> = {};
  const add = (name: PairName, left: Float64Array | undefined, right: number, stiffness: 0 | 1, square: number) => {
    if (left) at[name] = pairs.push({ left: vectors.push(left) - 1, right, stiffness, square }) - 1;
  };
  if (state.displacement) {
    const displacement = vectors.push(state.displacement) - 1;
    add('rotation', state.adjoint, displacement, 1, 0);
    add('dip', adjoints?.dip, displacement, 1, 0);
    add('belly', adjoints?.belly, displacement, 1, 0);
  }
  if (adjoints) {
    const { mode } = adjoints;
    add('felt', adjoints.felt, mode, 1, state.squares[mode]!);
    add('volume', adjoints.volume, mode, 1, state.squares[mode]!);
    add('modal mass', state.vectors[mode], mode, 0, -1);
  }
  return { vectors, pairs, at };
}

/** Of the energies of a solved top. */
interface Base {
  readonly slopes: Float64Array;
  readonly phi: Float64Array;
  readonly pieces: Float64Array;
}

interface Gathered {
  readonly local: readonly Float64Array[];
  readonly five: readonly Float64Array[];
}

/** Slopes of stiffness and, after them, by m0, m1, m2. */
const NUMBERS = SLOPES + 3;

/** Energies of each element for each pair of vectors, and how they change with it. */
class ElementEnergies {
  /** Where the pairs with a name stand among all. */
  readonly at: Partial<Record<PairName, number>>;
  private readonly element: PlateElement = plateElement(true);
  private readonly stretched = new Float64Array(12);
  private readonly bent = new Float64Array(12);
  private readonly delta = new Float64Array(NUMBERS);
  private readonly newPhi = new Float64Array(4);
  private readonly strains: readonly MovedStrains[];
  private readonly px = new Float64Array(4);
  private readonly py = new Float64Array(4);
  private readonly pz = new Float64Array(4);
  private readonly rib = new Float64Array(144);
  private readonly local: Float64Array[];
  private readonly forces: Float64Array[];
  private readonly gathered: Gathered[] = [];
  private readonly count: number;
  private readonly state: SolvedState;
  private readonly vectors: readonly Float64Array[];
  private readonly pairs: readonly Pair[];
  private readonly rights: readonly number[];

  constructor(state: SolvedState, adjoints: Adjoints | undefined) {
    const { vectors, pairs, at } = pairsOf(state, adjoints);
    this.state = state;
    this.vectors = vectors;
    this.pairs = pairs;
    this.at = at;
    this.count = pairs.length;
    this.rights = [...new Set(pairs.map(({ right }) => right))];
    this.strains = vectors.map(() => movedStrains());
    this.local = vectors.map(() => new Float64Array(20));
    this.forces = vectors.map(() => new Float64Array(20));
  }

  /** Slopes per quadrilateral and pair, φ per quadrilateral, energies per brace piece and pair. */
  all(top: DiscreteTop): Base {
    const { count } = this;
    const quads = top.laminateOf.length;
    const pieces = top.mesh.ribBrace.length;
    const base: Base = {
      slopes: new Float64Array(NUMBERS * count * quads),
      phi: new Float64Array(4 * quads),
      pieces: new Float64Array(count * pieces),
    };
    for (let q = 0; q < quads; q++) this.quadSlopes(top, q, base);
    for (let r = 0; r < pieces; r++) this.piece(top, r, base.pieces, count * r);
    return base;
  }

  /** Sum of the changes against `base`, those of the laminate rows to first order. */
  change(top: DiscreteTop, base: Base): Float64Array {
    const { count, state } = this;
    const total = new Float64Array(count);
    const row = new Float64Array(count);
    const before = new Float64Array(count);
    for (let q = 0; q < top.laminateOf.length; q++) {
      if (sameQuad(state.top, top, q)) continue;
      if (sameCorners(state.top, top, q)) {
        this.addSlopes(top, q, base, total);
        continue;
      }
      this.quad(top, q, row, 0);
      this.quad(state.top, q, before, 0);
      for (let k = 0; k < count; k++) total[k]! += row[k]! - before[k]!;
    }
    for (let r = 0; r < top.mesh.ribBrace.length; r++) {
      if (samePiece(state.top, top, r)) continue;
      this.piece(top, r, row, 0);
      for (let k = 0; k < count; k++) total[k]! += row[k]! - base.pieces[count * r + k]!;
    }
    this.addRim(top, total);
    this.addRiding(top, total);
    return total;
  }

  private quadSlopes(top: DiscreteTop, q: number, { slopes, phi }: Base): void {
    const { element, state, local, strains, pairs } = this;
    const { inPlane } = state.unknowns.support;
    const kept = element.kept!;
    corners(top, q, this.px, this.py, this.pz);
    const row = top.laminateOf[q]! * LAMINATE_SIZE;
    element.compute(this.px, this.py, this.pz, top.laminates, row, inPlane);
    phi.set(kept.phi, 4 * q);
    const [dx, dy] = [element.parts[SLOPE_X]!, element.parts[SLOPE_Y]!];
    const nodes = top.mesh.quads.subarray(4 * q, 4 * q + 4);
    this.vectors.forEach((vector, k) => {
      this.gather(vector, nodes, local[k]!);
      strainsOf(kept, local[k]!, dx, dy, inPlane, top.laminates, row, this.stretched, this.bent, strains[k]!);
    });
    pairs.forEach(({ left, right, stiffness, square }, k) => {
      const to = NUMBERS * (this.count * q + k);
      if (stiffness) slopesBetween(kept, strains[left]!, strains[right]!, slopes, to);
      if (square !== 0) addMassSlopes(element.mass, local[left]!, local[right]!, -square, slopes, to + SLOPES);
    });
  }

  private addSlopes(top: DiscreteTop, q: number, { slopes, phi }: Base, total: Float64Array): void {
    const { count, state, delta, newPhi } = this;
    const now = top.laminateOf[q]! * LAMINATE_SIZE;
    const then = state.top.laminateOf[q]! * LAMINATE_SIZE;
    ROW_PLACES.forEach((place, i) => (delta[i] = top.laminates[now + place]! - state.top.laminates[then + place]!));
    corners(top, q, this.px, this.py, this.pz);
    this.element.kept!.phiFor(this.px, this.py, top.laminates, now, newPhi);
    for (let k = 0; k < 4; k++) delta[BY_PHI + k] = newPhi[k]! - phi[4 * q + k]!;
    for (let k = 0; k < 3; k++) {
      delta[SLOPES + k] = top.laminates[now + AT_MASS + k]! - state.top.laminates[then + AT_MASS + k]!;
    }
    for (let k = 0; k < count; k++) {
      const from = NUMBERS * (count * q + k);
      let sum = 0;
      for (let i = 0; i < NUMBERS; i++) sum += delta[i]! * slopes[from + i]!;
      total[k]! += sum;
    }
  }

  private quad(top: DiscreteTop, q: number, out: Float64Array, at: number): void {
    const { element, state, local } = this;
    corners(top, q, this.px, this.py, this.pz);
    const row = top.laminateOf[q]! * LAMINATE_SIZE;
    element.compute(this.px, this.py, this.pz, top.laminates, row, state.unknowns.support.inPlane);
    this.vectors.forEach((vector, k) => this.gather(vector, top.mesh.quads.subarray(4 * q, 4 * q + 4), local[k]!));
    const moments = top.laminates.subarray(row + AT_MASS, row + AT_MASS + 3);
    this.energies(element.whole(), 20, local, element.mass, moments, local, out, at);
  }

  private piece(top: DiscreteTop, r: number, out: Float64Array, at: number): void {
    const { rib } = this;
    const length = ribStiffness(top, r, rib);
    const nodes = top.mesh.ribs.subarray(2 * r, 2 * r + 2);
    const { local, five } = (this.gathered[r] ??= this.gatherPieces(nodes, r));
    const row = r * RIB_SIZE + RIB_MASS;
    const own = (5 / 12) * length;
    const other = (1 / 12) * length;
    const bar = Float64Array.of(own, other, other, own);
    this.energies(rib, 12, local, bar, top.ribs.subarray(row, row + 3), five, out, at);
  }

  /** `moved`: the vectors on the unknowns of the stiffness; `five`: on five unknowns a node. */
  private energies(
    stiffness: Float64Array,
    n: number,
    moved: readonly Float64Array[],
    scalar: Float64Array,
    moments: Float64Array,
    five: readonly Float64Array[],
    out: Float64Array,
    at: number,
  ): void {
    const { forces, pairs } = this;
    for (const right of this.rights) product(stiffness, n, moved[right]!, forces[right]!);
    pairs.forEach(({ left, right, stiffness: stiff, square }, k) => {
      let sum = 0;
      if (stiff) for (let i = 0; i < n; i++) sum += moved[left]![i]! * forces[right]![i]!;
      if (square !== 0) sum -= square * massForm(scalar, moments, five[left]!, five[right]!);
      out[at + k] = sum;
    });
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

  /** The vectors at the ends of a brace piece, with its own rotations and on five unknowns an end. */
  private gatherPieces(nodes: Int32Array, r: number): Gathered {
    const local = this.vectors.map((vector) => this.gatherPiece(vector, nodes, r));
    const five = local.map((each) => {
      const ten = new Float64Array(10);
      ten.set(each.subarray(0, 5));
      ten.set(each.subarray(6, 11), 5);
      return ten;
    });
    return { local, five };
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

  /** What rides on the plate, heavier or lighter than before: mass on the movements of the corners alone. */
  private addRiding(top: DiscreteTop, total: Float64Array): void {
    const before = this.state.top.riding;
    for (const q of new Set([...before.keys(), ...top.riding.keys()])) {
      const [old, now] = [before.get(q), top.riding.get(q)];
      const more = Float64Array.from({ length: 16 }, (_, i) => (now?.[i] ?? 0) - (old?.[i] ?? 0));
      if (more.every((each) => each === 0)) continue;
      const nodes = top.mesh.quads.subarray(4 * q, 4 * q + 4);
      this.vectors.forEach((vector, k) => this.gather(vector, nodes, this.local[k]!));
      this.pairs.forEach(({ left, right, square }, k) => {
        if (square !== 0) total[k]! -= square * massForm(more, LEVEL, this.local[left]!, this.local[right]!);
      });
    }
  }

  /** What holds the edge, firmer or softer than before. */
  private addRim(top: DiscreteTop, total: Float64Array): void {
    if (sameSprings(this.state.top, top)) return;
    this.addSprings(rimSprings(top), top.mesh, 1, total);
    this.addSprings(rimSprings(this.state.top), top.mesh, -1, total);
  }

  private addSprings({ nodes, braces }: RimSprings, { ribs }: TopMesh, sign: number, total: Float64Array): void {
    const { slot, ribSlot, pattern } = this.state.unknowns;
    const add = (node: number, at: number, spring: number): void => {
      if (at < 0) return;
      const place = pattern.first[node]! + at;
      this.pairs.forEach(({ left, right, stiffness }, k) => {
        total[k]! += sign * stiffness * spring * this.vectors[left]![place]! * this.vectors[right]![place]!;
      });
    };
    for (const { node, spring } of nodes) for (const d of [3, 4]) add(node, slot[5 * node + d]!, spring);
    for (const { end, spring } of braces) add(ribs[end]!, ribSlot[end]!, spring);
  }
}

/** Mass that moves with the mid-surface and has no depth. */
const LEVEL = Float64Array.of(1, 0, 0);

/** out ← K b */
function product(k: Float64Array, n: number, b: Float64Array, out: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let row = 0;
    for (let j = 0; j < n; j++) row += k[n * i + j]! * b[j]!;
    out[i] = row;
  }
}

/** `factor` times the slopes of aᵀ M b by m0, m1 and m2. */
function addMassSlopes(
  scalar: Float64Array,
  a: Float64Array,
  b: Float64Array,
  factor: number,
  out: Float64Array,
  to: number,
): void {
  for (let i = 0; i < 4; i++) {
    for (let j = 0; j < 4; j++) {
      const [p, q, m] = [5 * i, 5 * j, factor * scalar[4 * i + j]!];
      out[to]! += m * (a[p]! * b[q]! + a[p + 1]! * b[q + 1]! + a[p + 2]! * b[q + 2]!);
      out[to + 1]! += m * (a[p]! * b[q + 3]! + a[p + 3]! * b[q]! + a[p + 1]! * b[q + 4]! + a[p + 4]! * b[q + 1]!);
      out[to + 2]! += m * (a[p + 3]! * b[q + 3]! + a[p + 4]! * b[q + 4]!);
    }
  }
}

/** aᵀ M b from the scalar node matrix and the moments of mass m0, m1, m2. */
function massForm(scalar: Float64Array, moments: Float64Array, a: Float64Array, b: Float64Array): number {
  const nodes = Math.sqrt(scalar.length);
  const [m0, m1, m2] = moments as unknown as [number, number, number];
  let sum = 0;
  for (let i = 0; i < nodes; i++) {
    for (let j = 0; j < nodes; j++) {
      const [p, q] = [5 * i, 5 * j];
      const level = a[p]! * b[q]! + a[p + 1]! * b[q + 1]! + a[p + 2]! * b[q + 2]!;
      const mixed = a[p]! * b[q + 3]! + a[p + 3]! * b[q]! + a[p + 1]! * b[q + 4]! + a[p + 4]! * b[q + 1]!;
      const turn = a[p + 3]! * b[q + 3]! + a[p + 4]! * b[q + 4]!;
      sum += scalar[nodes * i + j]! * (m0 * level + m1 * mixed + m2 * turn);
    }
  }
  return sum;
}
