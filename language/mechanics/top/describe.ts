/** From solved vectors to the numbers a maker asks for. */
import { AT_MASS, LAMINATE_SIZE } from './laminate.js';
import { loadedPatch, overArea } from './loads.js';
import { RIB_MASS, RIB_SIZE } from './ribSection.js';
import type { BridgeMotion, SolvedState, TopMode, TopSolution, TopStatics } from './solution.js';

export function describe(state: SolvedState): TopSolution {
  const { top, model } = state;
  const patch = loadedPatch(model);
  let area = 0;
  overArea(top, -1, (_nodes, _shape, dA) => (area += dA));
  return {
    modes: state.vectors.map((vector, i) => modeOf(state, vector, state.squares[i]!, patch)),
    statics: state.displacement ? staticsOf(state, state.displacement, patch) : undefined,
    mesh: { x: top.x, y: top.y, quads: top.mesh.quads },
    mass: massOf(state),
    area,
    state,
  };
}

/** w of each node. */
function heightsOf({ unknowns, top }: SolvedState, vector: Float64Array): Float64Array {
  return Float64Array.from(top.x, (_, node) => {
    const s = unknowns.slot[5 * node + 2]!;
    return s < 0 ? 0 : vector[unknowns.pattern.first[node]! + s]!;
  });
}

function modeOf(state: SolvedState, vector: Float64Array, square: number, patch: number): TopMode {
  const shape = heightsOf(state, vector);
  const volumeDisplacement = integral(state, shape, -1);
  const frequency = Math.sqrt(Math.max(0, square)) / (2 * Math.PI);
  return { frequency, shape, volumeDisplacement, bridge: bridgeOf(state, shape, square, volumeDisplacement, patch) };
}

function bridgeOf(
  state: SolvedState,
  shape: Float64Array,
  square: number,
  volume: number,
  patch: number,
): BridgeMotion | undefined {
  if (patch < 0) return undefined;
  const { mean, slope } = planeOver(state, shape, patch);
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

function integral({ top }: SolvedState, shape: Float64Array, patch: number): number {
  let sum = 0;
  overArea(top, patch, (nodes, weights, dA) => {
    for (let k = 0; k < 4; k++) sum += weights[k]! * dA * shape[nodes[k]!]!;
  });
  return sum;
}

/** Mean height of a patch, its least-squares slope (positive leaning in the load's direction) and where its middle lies. */
function planeOver(
  { top, model }: SolvedState,
  shape: Float64Array,
  patch: number,
): { mean: number; slope: number; centre: number } {
  const c = Math.cos(model.load?.direction ?? 0);
  const s = Math.sin(model.load?.direction ?? 0);
  let area = 0;
  let first = 0;
  let second = 0;
  let w0 = 0;
  let w1 = 0;
  overArea(top, patch, (nodes, weights, dA, px, py) => {
    const along = c * px + s * py;
    let w = 0;
    for (let k = 0; k < 4; k++) w += weights[k]! * shape[nodes[k]!]!;
    area += dA;
    first += dA * along;
    second += dA * along * along;
    w0 += dA * w;
    w1 += dA * w * along;
  });
  const centre = first / area;
  return { mean: w0 / area, slope: -(w1 - centre * w0) / (second - first * centre), centre };
}

function staticsOf(state: SolvedState, displacement: Float64Array, patch: number): TopStatics {
  const { top, model } = state;
  const deflection = heightsOf(state, displacement);
  const { slope, centre } = patch < 0 ? { slope: 0, centre: 0 } : planeOver(state, deflection, patch);
  const c = Math.cos(model.load?.direction ?? 0);
  const s = Math.sin(model.load?.direction ?? 0);
  let dip = 0;
  let belly = 0;
  for (let node = 0; node < deflection.length; node++) {
    const along = c * top.x[node]! + s * top.y[node]!;
    if (patch < 0 || along > centre) dip = Math.min(dip, deflection[node]!);
    if (patch < 0 || along < centre) belly = Math.max(belly, deflection[node]!);
  }
  return { deflection, rotation: slope, dip, belly };
}

function massOf({ top }: SolvedState): number {
  const { mesh, laminates, laminateOf, ribs, x, y } = top;
  let sum = 0;
  for (let q = 0; q < laminateOf.length; q++) {
    const [a, b, c, d] = mesh.quads.subarray(4 * q, 4 * q + 4) as unknown as [number, number, number, number];
    const area = ((x[c]! - x[a]!) * (y[d]! - y[b]!) - (x[d]! - x[b]!) * (y[c]! - y[a]!)) / 2;
    sum += area * laminates[laminateOf[q]! * LAMINATE_SIZE + AT_MASS]!;
  }
  for (let r = 0; r < mesh.ribBrace.length; r++) {
    const [a, b] = [mesh.ribs[2 * r]!, mesh.ribs[2 * r + 1]!];
    sum += Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!) * ribs[r * RIB_SIZE + RIB_MASS]!;
  }
  return sum;
}
