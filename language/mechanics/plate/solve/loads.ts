/** Forces on the nodes and the measuring vector of the bridge's rotation, five numbers per node. */
import { shapeAt } from '../element/shape-at.js';
import type { DiscreteTop } from './discrete.js';
import type { Load, TopModel } from '../model.js';

export interface LoadCase {
  /** Forces and moments on u, v, w, βx, βy of each node. */
  readonly forces: Float64Array;
  /** Rotation in rad = measure · displacement; zero without a loaded patch. */
  readonly measure: Float64Array;
}

const G = 1 / Math.sqrt(3);

/**
 * Couple and shear are spread over the stiff footprint of the patch: the couple as a pressure that changes evenly along `direction`, the
 * shear evenly at the plate's upper face. The rotation is the least-squares slope of w over the same footprint, positive when
 * the patch leans in `direction`.
 */
export function loadCase(model: TopModel, top: DiscreteTop): LoadCase {
  const nodes = top.x.length;
  const forces = new Float64Array(5 * nodes);
  const measure = new Float64Array(5 * nodes);
  const load = model.load ?? {};
  const patch = loadedPatch(model);
  if (patch >= 0) addBridge(top, patch, load, forces, measure);
  if (load.pressure) addPressure(top, load.pressure, forces);
  for (const { at, force } of load.forces ?? []) addForce(top, at[0], at[1], force, forces);
  return { forces, measure };
}

/** Index of the patch that carries the load, −1 when there is none. */
export function loadedPatch(model: TopModel): number {
  const name = model.load?.patch;
  return name === undefined ? -1 : (model.patches ?? []).findIndex((patch) => patch.name === name);
}

/** Calls `visit` with the shape functions and the area of each integration point of the quadrilaterals that `bit` selects (0: all). */
export function overArea(
  { mesh, x, y }: DiscreteTop,
  patch: number,
  visit: (nodes: Int32Array, shape: Float64Array, area: number, px: number, py: number) => void,
): void {
  const shape = new Float64Array(4);
  for (let q = 0; q < mesh.patchesOf.length; q++) {
    if (patch >= 0 && !(mesh.patchesOf[q]! & (1 << patch))) continue;
    const n = mesh.quads.subarray(4 * q, 4 * q + 4);
    for (let g = 0; g < 4; g++) {
      const xi = g === 0 || g === 3 ? -G : G;
      const eta = g < 2 ? -G : G;
      shape[0] = ((1 - xi) * (1 - eta)) / 4;
      shape[1] = ((1 + xi) * (1 - eta)) / 4;
      shape[2] = ((1 + xi) * (1 + eta)) / 4;
      shape[3] = ((1 - xi) * (1 + eta)) / 4;
      let px = 0;
      let py = 0;
      for (let k = 0; k < 4; k++) {
        px += shape[k]! * x[n[k]!]!;
        py += shape[k]! * y[n[k]!]!;
      }
      visit(n, shape, determinant(x, y, n, xi, eta), px, py);
    }
  }
}

function determinant(x: Float64Array, y: Float64Array, n: Int32Array, xi: number, eta: number): number {
  const [a, b, c, d] = n as unknown as [number, number, number, number];
  const xXi = ((1 - eta) * (x[b]! - x[a]!) + (1 + eta) * (x[c]! - x[d]!)) / 4;
  const yXi = ((1 - eta) * (y[b]! - y[a]!) + (1 + eta) * (y[c]! - y[d]!)) / 4;
  const xEta = ((1 - xi) * (x[d]! - x[a]!) + (1 + xi) * (x[c]! - x[b]!)) / 4;
  const yEta = ((1 - xi) * (y[d]! - y[a]!) + (1 + xi) * (y[c]! - y[b]!)) / 4;
  return xXi * yEta - xEta * yXi;
}

function addBridge(top: DiscreteTop, patch: number, load: Load, forces: Float64Array, measure: Float64Array): void {
  const c = Math.cos(load.direction ?? 0);
  const s = Math.sin(load.direction ?? 0);
  let area = 0;
  let first = 0;
  let second = 0;
  overArea(top, patch, (_nodes, _shape, dA, px, py) => {
    const along = c * px + s * py;
    area += dA;
    first += dA * along;
    second += dA * along * along;
  });
  if (!(area > 0)) return;
  const centre = first / area;
  const inertia = second - first * centre;
  const couple = load.couple ?? 0;
  const shear = (load.shear ?? 0) / area;
  overArea(top, patch, (nodes, shape, dA, px, py) => {
    const along = c * px + s * py - centre;
    for (let k = 0; k < 4; k++) {
      const node = nodes[k]!;
      const weight = shape[k]! * dA;
      const lever = top.thickness[node]! / 2;
      measure[5 * node + 2]! -= (weight * along) / inertia;
      forces[5 * node + 2]! -= (weight * along * couple) / inertia;
      forces[5 * node]! += weight * shear * c;
      forces[5 * node + 1]! += weight * shear * s;
      forces[5 * node + 3]! += weight * shear * c * lever;
      forces[5 * node + 4]! += weight * shear * s * lever;
    }
  });
}

function addPressure(top: DiscreteTop, pressure: number, forces: Float64Array): void {
  overArea(top, -1, (nodes, shape, dA) => {
    for (let k = 0; k < 4; k++) forces[5 * nodes[k]! + 2]! += shape[k]! * dA * pressure;
  });
}

/** Shares a single force among the corners of the quadrilateral it stands on, by its place within. */
function addForce(top: DiscreteTop, px: number, py: number, force: number, forces: Float64Array): void {
  const { mesh, x, y } = top;
  for (let q = 0; q < mesh.patchesOf.length; q++) {
    const n = mesh.quads.subarray(4 * q, 4 * q + 4);
    const shape = shapeAt(x, y, n, px, py);
    if (!shape) continue;
    for (let k = 0; k < 4; k++) forces[5 * n[k]! + 2]! += shape[k]! * force;
    return;
  }
}
