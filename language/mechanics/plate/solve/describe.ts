/** From solved vectors to the numbers a maker asks for. */
import { quadArea, type DiscreteTop } from './discrete.js';
import { AT_MASS, LAMINATE_SIZE } from '../element/laminate.js';
import { loadedPatch, overArea } from './loads.js';
import { type Bent, peaksOf, valueOfPeak } from './peaks.js';
import { ridingMass } from './riding.js';
import { RIB_MASS, RIB_SIZE } from '../element/rib-section.js';
import type { BridgeMotion, SolvedState, TopMode, TopSolution, TopStatics } from '../solution.js';

export function describe(state: SolvedState): TopSolution {
  const { top, model } = state;
  const patch = loadedPatch(model);
  const whole = areaWeights(state, -1);
  const bridge = patch < 0 ? undefined : areaWeights(state, patch);
  return {
    modes: state.vectors.map((vector, i) => modeOf(state, vector, state.squares[i]!, whole, bridge)),
    statics: state.displacement ? staticsOf(state, state.displacement, bridge) : undefined,
    mesh: { x: top.x, y: top.y, quads: top.mesh.quads },
    mass: massOf(top),
    area: whole.area,
    state,
  };
}

/** Integrals over a part of the plate as sums over nodes: ∫ w dA = level · w, ∫ w (ξ − centre) dA = tilt · w, ξ along the load's direction. */
export interface AreaWeights {
  readonly area: number;
  readonly centre: number;
  /** ∫ (ξ − centre)² dA */
  readonly inertia: number;
  readonly level: Float64Array;
  readonly tilt: Float64Array;
}

export function areaWeights({ top, model }: Pick<SolvedState, 'top' | 'model'>, patch: number): AreaWeights {
  const c = Math.cos(model.load?.direction ?? 0);
  const s = Math.sin(model.load?.direction ?? 0);
  const level = new Float64Array(top.x.length);
  const tilt = new Float64Array(top.x.length);
  let area = 0;
  let first = 0;
  let second = 0;
  overArea(top, patch, (nodes, shape, dA, px, py) => {
    const along = c * px + s * py;
    area += dA;
    first += dA * along;
    second += dA * along * along;
    for (let k = 0; k < 4; k++) {
      level[nodes[k]!]! += shape[k]! * dA;
      tilt[nodes[k]!]! += shape[k]! * dA * along;
    }
  });
  const centre = first / area;
  for (let node = 0; node < level.length; node++) tilt[node]! -= centre * level[node]!;
  return { area, centre, inertia: second - first * centre, level, tilt };
}

export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** w of each node. */
export function heightsOf(state: SolvedState, vector: Float64Array): Float64Array {
  return ofEachNode(state, vector, 2);
}

/** w, βx and βy of each node. */
export function bentBy(state: SolvedState, vector: Float64Array): Bent {
  return { w: heightsOf(state, vector), bx: ofEachNode(state, vector, 3), by: ofEachNode(state, vector, 4) };
}

/** Unknown `which` of each node: u, v, w, βx, βy; 0 where it is held. */
function ofEachNode({ unknowns, top }: SolvedState, vector: Float64Array, which: number): Float64Array {
  const { slot, pattern } = unknowns;
  const values = new Float64Array(top.x.length);
  for (let node = 0; node < values.length; node++) {
    const s = slot[5 * node + which]!;
    if (s >= 0) values[node] = vector[pattern.first[node]! + s]!;
  }
  return values;
}

function modeOf(
  state: SolvedState,
  vector: Float64Array,
  square: number,
  whole: AreaWeights,
  bridge: AreaWeights | undefined,
): TopMode {
  const shape = heightsOf(state, vector);
  const volumeDisplacement = dot(whole.level, shape);
  const frequency = Math.sqrt(Math.max(0, square)) / (2 * Math.PI);
  return {
    frequency,
    shape,
    // A line square to the plate turns by β, and stays nearly square to it: w falls as β turns.
    slopes: [ofEachNode(state, vector, 3).map((b) => -b), ofEachNode(state, vector, 4).map((b) => -b)],
    volumeDisplacement,
    bridge: bridge && motionOf(bridge, shape, square, volumeDisplacement),
  };
}

function motionOf(bridge: AreaWeights, shape: Float64Array, square: number, volume: number): BridgeMotion | undefined {
  const mean = dot(bridge.level, shape) / bridge.area;
  const slope = -dot(bridge.tilt, shape) / bridge.inertia;
  const greatest = shape.reduce((most, w) => Math.max(most, Math.abs(w)), 0);
  if (!(Math.abs(mean) > 1e-6 * greatest)) return undefined;
  const effectiveMass = 1 / (mean * mean);
  const effectiveStiffness = square * effectiveMass;
  return {
    effectiveMass,
    effectiveStiffness,
    effectiveArea: volume / mean,
    mobility: 1 / Math.sqrt(effectiveStiffness * effectiveMass),
    rocking: slope / mean,
  };
}

function staticsOf(state: SolvedState, displacement: Float64Array, bridge: AreaWeights | undefined): TopStatics {
  const bent = bentBy(state, displacement);
  const { dip, belly } = peaksOf(state, bent, bridge?.centre);
  const deflection = bent.w;
  const rotation = bridge ? -dot(bridge.tilt, deflection) / bridge.inertia : 0;
  return {
    deflection,
    rotation,
    dip: dip ? valueOfPeak(dip, bent) : 0,
    belly: belly ? valueOfPeak(belly, bent) : 0,
  };
}

/** kg: plate, braces, patches and what rides on them. */
export function massOf({ mesh, laminates, laminateOf, ribs, riding, x, y }: DiscreteTop): number {
  let sum = ridingMass(riding);
  for (let q = 0; q < laminateOf.length; q++) {
    sum += quadArea(mesh, x, y, q) * laminates[laminateOf[q]! * LAMINATE_SIZE + AT_MASS]!;
  }
  for (let r = 0; r < mesh.ribBrace.length; r++) {
    const [a, b] = [mesh.ribs[2 * r]!, mesh.ribs[2 * r + 1]!];
    sum += Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!) * ribs[r * RIB_SIZE + RIB_MASS]!;
  }
  return sum;
}
