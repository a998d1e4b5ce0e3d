/** Shape functions and integrals on the eight-node quadrilaterals of a plan. */
import type { PlanMesh } from './plan-mesh.js';

const XI = [-1, 1, 1, -1];
const ETA = [-1, -1, 1, 1];

/** Eight-node serendipity functions: four corners, then the middles of sides 0–1, 1–2, 2–3, 3–0. */
export function serendipity(xi: number, eta: number): number[] {
  const corners = XI.map((x, i) => ((1 + xi * x) * (1 + eta * ETA[i]!) * (xi * x + eta * ETA[i]! - 1)) / 4);
  return [
    ...corners,
    ((1 - xi * xi) * (1 - eta)) / 2,
    ((1 - eta * eta) * (1 + xi)) / 2,
    ((1 - xi * xi) * (1 + eta)) / 2,
    ((1 - eta * eta) * (1 - xi)) / 2,
  ];
}

/**
 * Functions of the twenty-node brick in its middle surface, for nodes in the order lower face 8, upper face 8 (each as above), and
 * the four nodes of the upright edges.
 */
export function midSurface(xi: number, eta: number): number[] {
  const corners = XI.map((x, i) => ((1 + xi * x) * (1 + eta * ETA[i]!) * (xi * x + eta * ETA[i]! - 2)) / 8);
  const sides = serendipity(xi, eta)
    .slice(4)
    .map((n) => n / 2);
  const upright = XI.map((x, i) => ((1 + xi * x) * (1 + eta * ETA[i]!)) / 4);
  return [...corners, ...sides, ...corners, ...sides, ...upright];
}

function slopes(xi: number, eta: number): { readonly dXi: number[]; readonly dEta: number[] } {
  const dXi = XI.map((x, i) => (x * (1 + eta * ETA[i]!) * (2 * xi * x + eta * ETA[i]!)) / 4);
  const dEta = XI.map((x, i) => (ETA[i]! * (1 + xi * x) * (2 * eta * ETA[i]! + xi * x)) / 4);
  dXi.push(-xi * (1 - eta), (1 - eta * eta) / 2, -xi * (1 + eta), -(1 - eta * eta) / 2);
  dEta.push(-(1 - xi * xi) / 2, -eta * (1 + xi), (1 - xi * xi) / 2, -eta * (1 - xi));
  return { dXi, dEta };
}

function frame(
  { x, y }: PlanMesh,
  quad: Int32Array,
  xi: number,
  eta: number,
): { x: number; y: number; j: number[]; det: number } {
  const n = serendipity(xi, eta);
  const { dXi, dEta } = slopes(xi, eta);
  const sum = (w: readonly number[], v: Float64Array): number => w.reduce((total, f, k) => total + f * v[quad[k]!]!, 0);
  const j = [sum(dXi, x), sum(dXi, y), sum(dEta, x), sum(dEta, y)];
  return { x: sum(n, x), y: sum(n, y), j, det: j[0]! * j[3]! - j[1]! * j[2]! };
}

/** Three by three Gauss points of one quadrilateral: `area` is the weight in mm². */
export function gaussPoints(
  plan: PlanMesh,
  quad: Int32Array,
): { xi: number; eta: number; x: number; y: number; area: number }[] {
  const at = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)];
  const weight = [5 / 9, 8 / 9, 5 / 9];
  return at.flatMap((xi, i) =>
    at.map((eta, k) => {
      const { x, y, det } = frame(plan, quad, xi, eta);
      if (!(det > 0)) throw new Error('A quadrilateral of the plan is turned inside out.');
      return { xi, eta, x, y, area: weight[i]! * weight[k]! * det };
    }),
  );
}

/** Quadrilateral that holds a point, and the place in it; undefined off the plate. */
export function locate(plan: PlanMesh, px: number, py: number): { quad: number; xi: number; eta: number } | undefined {
  for (let q = 0; q < plan.quads.length; q++) {
    const quad = plan.quads[q]!;
    const reach = Math.hypot(plan.x[quad[0]!]! - plan.x[quad[2]!]!, plan.y[quad[0]!]! - plan.y[quad[2]!]!);
    if (Math.hypot(plan.x[quad[0]!]! - px, plan.y[quad[0]!]! - py) > 3 * reach) continue;
    let xi = 0;
    let eta = 0;
    for (let step = 0; step < 15; step++) {
      const { x, y, j, det } = frame(plan, quad, xi, eta);
      xi += (j[3]! * (px - x) - j[2]! * (py - y)) / det;
      eta += (j[0]! * (py - y) - j[1]! * (px - x)) / det;
      if (!(Math.abs(xi) < 3 && Math.abs(eta) < 3)) break;
    }
    const end = frame(plan, quad, xi, eta);
    const exact = Math.hypot(end.x - px, end.y - py) < 1e-6;
    if (exact && Math.abs(xi) < 1 + 1e-6 && Math.abs(eta) < 1 + 1e-6) return { quad: q, xi, eta };
  }
  return undefined;
}
