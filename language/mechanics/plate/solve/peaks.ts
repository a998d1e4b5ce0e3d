/**
 * The lowest point in front of the bridge and the highest behind it, between the nodes: a paraboloid through the movement of the
 * nodes around the one that moves most, fitted by least squares, the nearer ones counting more. So the answer does not jump when
 * another node comes to move most. It is a weighted sum of movements, whose weights are also its slope.
 */
import type { SolvedState } from '../solution.js';
import { solveDense } from '../../linear-algebra/dense-system.js';

/** Weights on the movement w of some nodes. */
export interface Peak {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
}

/** Absent where nothing sinks or rises. `centre`: of the bridge along the load's direction; absent: the whole plate counts. */
export function peaksOf(
  state: Pick<SolvedState, 'top' | 'model'>,
  deflection: Float64Array,
  centre: number | undefined,
): { readonly dip?: Peak; readonly belly?: Peak } {
  const { top, model } = state;
  const c = Math.cos(model.load?.direction ?? 0);
  const s = Math.sin(model.load?.direction ?? 0);
  const onPlate = new Uint8Array(deflection.length);
  for (const node of top.mesh.quads) onPlate[node] = 1;
  let [dip, belly] = [-1, -1];
  for (let node = 0; node < deflection.length; node++) {
    if (!onPlate[node]) continue;
    const along = c * top.x[node]! + s * top.y[node]!;
    const w = deflection[node]!;
    if ((centre === undefined || along > centre) && w < (dip < 0 ? 0 : deflection[dip]!)) dip = node;
    if ((centre === undefined || along < centre) && w > (belly < 0 ? 0 : deflection[belly]!)) belly = node;
  }
  return {
    dip: dip < 0 ? undefined : peakAt(state.top, onPlate, deflection, dip),
    belly: belly < 0 ? undefined : peakAt(state.top, onPlate, deflection, belly),
  };
}

export function valueOfPeak({ nodes, weights }: Peak, deflection: Float64Array): number {
  return nodes.reduce((sum, node, i) => sum + weights[i]! * deflection[node]!, 0);
}

/** Nodes that take part, at least: a paraboloid has six coefficients. */
const AROUND = 14;

function peakAt(top: SolvedState['top'], onPlate: Uint8Array, w: Float64Array, at: number): Peak {
  const { x, y } = top;
  const alone: Peak = { nodes: [at], weights: [1] };
  const far = Float64Array.from(x, (px, i) => (onPlate[i] ? Math.hypot(px - x[at]!, y[i]! - y[at]!) : Infinity));
  const order = Array.from(far, (_, i) => i).filter((i) => far[i]! < Infinity);
  order.sort((p, q) => far[p]! - far[q]! || p - q);
  if (order.length <= AROUND) return alone;
  // Counts for nothing at the distance of the first node that does not take part.
  const reach = far[order[AROUND]!]!;
  const nodes = order.slice(0, AROUND);
  const rows = nodes.map((i) => terms((x[i]! - x[at]!) / reach, (y[i]! - y[at]!) / reach));
  const share = nodes.map((i) => (1 - (far[i]! / reach) ** 2) ** 2);
  const normal = terms(0, 0).map((_, p) =>
    terms(0, 0).map((__, q) => rows.reduce((sum, row, i) => sum + share[i]! * row[p]! * row[q]!, 0)),
  );
  const sums = terms(0, 0).map((_, p) => rows.reduce((sum, row, i) => sum + share[i]! * row[p]! * w[nodes[i]!]!, 0));
  const k = solveDense(normal, sums);
  if (!k) return alone;
  // Where the paraboloid is level, if that lies near.
  const det = 4 * k[3]! * k[5]! - k[4]! ** 2;
  let [px, py] = [k[4]! * k[2]! - 2 * k[5]! * k[1]!, k[4]! * k[1]! - 2 * k[3]! * k[2]!];
  // Never farther than NEAR; where it is nowhere level, as far as that along the way to it.
  const away = Math.hypot(px, py);
  const scale = away > 0 ? Math.min(det > 0 ? 1 / det : Infinity, NEAR / away) : 0;
  [px, py] = [px * scale, py * scale];
  const half = solveDense(normal, terms(px, py))!;
  return { nodes, weights: rows.map((row, i) => share[i]! * row.reduce((sum, term, p) => sum + term * half[p]!, 0)) };
}

/** Share of the reach. */
const NEAR = 0.5;

function terms(x: number, y: number): number[] {
  return [1, x, y, x * x, x * y, y * y];
}
