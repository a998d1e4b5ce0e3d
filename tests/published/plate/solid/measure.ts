/** From printed movements to what is kept: shapes on a grid of places, air moved, movement of the bridge, static rotation. */
import { contains, distanceToRim } from '../../../../language/mechanics/plate/mesh/polygon.js';
import { braceHeight, patchCorners, type PointMm, type SolidPatch, type SolidTop, type Woods } from './inputs.js';
import { plateThickness, type PlanMesh } from './plan-mesh.js';
import { gaussPoints, locate, midSurface, serendipity } from './shapes.js';
import type { SolidMesh } from './solid-mesh.js';
import { stripOf } from './strips.js';

/** Movement up of a node, m (or 1/√kg in a mode of unit modal mass). */
export type Up = (node: number) => number;

export interface ModeMeasures {
  /** ∫ φ dA over the mid-plane, m²/√kg */
  readonly volumeDisplacement: number;
  /** Mean of φ over the loaded patch, 1/√kg; 0 without one. */
  readonly bridge: number;
  /** φ at the grid places, 1/√kg; the greatest is positive. */
  readonly shape: readonly number[];
}

export interface StaticMeasures {
  /** Degrees, positive leaning to the neck: least squares of w at the plate's upper face over the loaded patch … */
  readonly rotation_deg: number;
  /** … and along its middle line, across its width. */
  readonly rotationMiddleLine_deg: number;
  /** Mid-plane: lowest point on the neck side of the patch's middle, highest on the tail side. */
  readonly dip_mm: number;
  readonly belly_mm: number;
  /** w at the grid places, mm */
  readonly shape_mm: readonly number[];
}

/** About `count` places, evenly spread, at least 12 mm from the outline and on the wood. */
export function gridOf({ outline_mm: outline, hole_mm: hole }: SolidTop, count: number): PointMm[] {
  const xs = outline.map((p) => p[0]);
  const ys = outline.map((p) => p[1]);
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const places = (step: number): PointMm[] => {
    const found: PointMm[] = [];
    for (let x = minX + step / 2; x < maxX; x += step) {
      for (let y = minY + step / 2; y < maxY; y += step) {
        const clear = contains(outline, x, y) && distanceToRim(outline, x, y) > 12;
        if (!clear || (hole && Math.hypot(x - hole.x, y - hole.y) < hole.diameter / 2 + 3)) continue;
        found.push([Math.round(x * 100) / 100, Math.round(y * 100) / 100]);
      }
    }
    return found;
  };
  let step = 60;
  while (places(step).length < count) step *= 0.98;
  return places(step);
}

export class Measure {
  private readonly places: readonly { readonly quad: number; readonly xi: number; readonly eta: number }[];
  private readonly patch: SolidPatch | undefined;

  constructor(
    private readonly top: SolidTop,
    private readonly mesh: SolidMesh,
    grid: readonly PointMm[],
  ) {
    this.places = grid.map(([x, y]) => {
      const found = locate(mesh.plan, x, y);
      if (!found) throw new Error(`${top.name}: the place ${x}, ${y} lies off the plate.`);
      return found;
    });
    this.patch = top.patches.find(({ name }) => name === top.load?.patch);
  }

  mode(up: Up): ModeMeasures {
    const shape = this.sampled(up);
    const greatest = shape.reduce((most, w) => (Math.abs(w) > Math.abs(most) ? w : most), 0);
    const sign = greatest < 0 ? -1 : 1;
    let volume = 0;
    let bridge = 0;
    let under = 0;
    const { plan } = this.mesh;
    plan.quads.forEach((quad, q) => {
      const covered = this.covered(q);
      for (const { xi, eta, area } of gaussPoints(plan, quad)) {
        volume += area * this.middle(q, xi, eta, up);
        if (!covered) continue;
        bridge += area * this.upper(q, xi, eta, up);
        under += area;
      }
    });
    return {
      volumeDisplacement: sign * volume * 1e-6,
      bridge: under > 0 ? (sign * bridge) / under : 0,
      shape: shape.map((w) => sign * w),
    };
  }

  statics(up: Up): StaticMeasures {
    const { plan } = this.mesh;
    const samples: [number, number, number][] = [];
    plan.quads.forEach((quad, q) => {
      if (!this.covered(q)) return;
      for (const { xi, eta, x, area } of gaussPoints(plan, quad)) samples.push([x, this.upper(q, xi, eta, up), area]);
    });
    const [x0, x1] = this.patch!.x_mm;
    const y = (this.patch!.y_mm[0] + this.patch!.y_mm[1]) / 2;
    const line = Array.from({ length: 21 }, (_, k): [number, number, number] => {
      const x = x0 + ((k + 0.5) / 21) * (x1 - x0);
      const at = locate(plan, x, y)!;
      return [x, this.upper(at.quad, at.xi, at.eta, up), 1];
    });
    let dip = 0;
    let belly = 0;
    for (let node = 0; node < plan.corners; node++) {
      const w = up(this.mesh.node(node, 1));
      if (plan.x[node]! > (x0 + x1) / 2) dip = Math.min(dip, w);
      else belly = Math.max(belly, w);
    }
    const degrees = (slope: number): number => (-Math.atan(slope * 1000) * 180) / Math.PI;
    return {
      rotation_deg: degrees(slopeOf(samples)),
      rotationMiddleLine_deg: degrees(slopeOf(line)),
      dip_mm: dip * 1000,
      belly_mm: belly * 1000,
      shape_mm: this.sampled(up).map((w) => w * 1000),
    };
  }

  private sampled(up: Up): number[] {
    return this.places.map(({ quad, xi, eta }) => this.middle(quad, xi, eta, up));
  }

  private covered(q: number): boolean {
    return this.mesh.plan.patchesOf[q]!.some((patch) => this.top.patches[patch] === this.patch);
  }

  /** In the plate's mid-plane. */
  private middle(q: number, xi: number, eta: number, up: Up): number {
    const quad = this.mesh.plan.quads[q]!;
    const face = (level: number): number[] => Array.from(quad, (node) => up(this.mesh.node(node, level)));
    const upright = Array.from(quad.subarray(0, 4), (node) => up(this.mesh.node(node, 1)));
    return weighted(midSurface(xi, eta), [...face(0), ...face(2), ...upright]);
  }

  /** At the plate's upper face. */
  private upper(q: number, xi: number, eta: number, up: Up): number {
    const quad = this.mesh.plan.quads[q]!;
    return weighted(
      serendipity(xi, eta),
      Array.from(quad, (node) => up(this.mesh.node(node, 2))),
    );
  }
}

const weighted = (weights: readonly number[], values: readonly number[]): number =>
  weights.reduce((sum, weight, k) => sum + weight * values[k]!, 0);

/** Least-squares slope of [x, w, weight]. */
function slopeOf(samples: readonly (readonly [number, number, number])[]): number {
  let [n, sx, sw, sxx, sxw] = [0, 0, 0, 0, 0];
  for (const [x, w, weight] of samples) {
    n += weight;
    sx += weight * x;
    sw += weight * w;
    sxx += weight * x * x;
    sxw += weight * x * w;
  }
  return (n * sxw - sx * sw) / (n * sxx - sx * sx);
}

/** kg and m²: plate with everything glued to it, and the plate's area without its hole. */
export function massAndArea(
  top: SolidTop,
  woods: Woods,
  plan: PlanMesh,
): { readonly mass_kg: number; readonly area_m2: number } {
  let mass = 0;
  let area = 0;
  plan.quads.forEach((quad) => {
    for (const { x, y, area: dA } of gaussPoints(plan, quad)) {
      area += dA * 1e-6;
      mass += dA * 1e-9 * plateThickness(top, x, y) * woods[top.plate.wood].rho_kg_m3;
    }
  });
  for (const patch of top.patches) {
    const [a, b, c] = patchCorners(patch) as [PointMm, PointMm, PointMm];
    mass += (b[0] - a[0]) * (c[1] - b[1]) * patch.thickness_mm * 1e-9 * woods[patch.wood].rho_kg_m3;
  }
  // A crossing belongs to one brace only.
  plan.quads.forEach((quad, q) => {
    const [brace] = plan.bracesOf[q]!;
    if (brace === undefined) return;
    const { along, length } = stripOf(top.braces[brace]!, brace);
    const [x0, y0] = top.braces[brace]!.from_mm;
    for (const { x, y, area: dA } of gaussPoints(plan, quad)) {
      const s = Math.min(length, Math.max(0, (x - x0) * along[0] + (y - y0) * along[1]));
      mass += dA * 1e-9 * braceHeight(top.braces[brace]!, s) * woods[top.braces[brace]!.wood].rho_kg_m3;
    }
  });
  return { mass_kg: mass, area_m2: area };
}
