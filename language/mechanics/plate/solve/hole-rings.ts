/**
 * Rings glued under the plate around its holes. The mesh does not follow them: each quadrilateral has as much of the ring as it is
 * covered by, so that a ring moves smoothly with its width and leaves mesh and order of elimination as they are.
 */
import { closedCurve } from '../mesh/curve.js';
import { holeOutline, withoutRepeats } from '../mesh/mesh-lines.js';
import type { TopMesh } from '../mesh/mesh.js';
import { distanceToRim, signedArea } from '../mesh/polygon.js';
import type { HoleRing, OrthotropicWood, TopModel } from '../model.js';

export interface RingCover {
  /** What it was worked out for. */
  readonly width: number;
  /** Share of each quadrilateral that the ring covers, 0 to 1. */
  readonly shares: Float64Array;
  /** Area of the ring over the area counted: a little off 1, since shares are sampled. */
  readonly massShare: number;
}

/** Points a side at which a quadrilateral is looked at. */
const SAMPLES = 5;

/** Share by which the sampled area of a whole ring may be off. */
const WELL_SAMPLED = 0.05;

/** One for each ring of the model. */
export function ringCovers(model: TopModel, mesh: TopMesh, x: Float64Array, y: Float64Array): readonly RingCover[] {
  return (model.rings ?? []).map((ring) => coverOf(ring, model, mesh, x, y));
}

/** Whether covers of the same mesh and node places hold for another model too. */
export function sameRings(covers: readonly RingCover[], { rings = [] }: TopModel): boolean {
  return covers.length === rings.length && covers.every(({ width }, i) => width === rings[i]!.width);
}

function coverOf(
  { hole, width }: HoleRing,
  { holes = [] }: TopModel,
  { quads }: TopMesh,
  x: Float64Array,
  y: Float64Array,
): RingCover {
  const edge = withoutRepeats(holeOutline(holes[hole]!));
  const shares = new Float64Array(quads.length / 4);
  let counted = 0;
  for (let q = 0; q < shares.length; q++) {
    const [a, b, c, d] = [quads[4 * q]!, quads[4 * q + 1]!, quads[4 * q + 2]!, quads[4 * q + 3]!];
    const long = Math.max(Math.hypot(x[c]! - x[a]!, y[c]! - y[a]!), Math.hypot(x[d]! - x[b]!, y[d]! - y[b]!));
    if (distanceToRim(edge, (x[a]! + x[c]!) / 2, (y[a]! + y[c]!) / 2) > width + long) continue;
    // Between two samples the ring's rim fades, so that no sample switches.
    const fade = long / SAMPLES;
    let sum = 0;
    for (let i = 0; i < SAMPLES * SAMPLES; i++) {
      const [s, t] = [((i % SAMPLES) + 0.5) / SAMPLES, (Math.floor(i / SAMPLES) + 0.5) / SAMPLES];
      const across = (p: Float64Array): number =>
        (1 - t) * ((1 - s) * p[a]! + s * p[b]!) + t * ((1 - s) * p[d]! + s * p[c]!);
      const inside = (width - distanceToRim(edge, across(x), across(y))) / fade + 0.5;
      sum += Math.min(1, Math.max(0, inside));
    }
    shares[q] = sum / SAMPLES ** 2;
    counted += shares[q]! * Math.abs(signedArea([a, b, c, d].map((node) => [x[node]!, y[node]!])));
  }
  const ratio = ringArea(edge, width) / counted;
  // A ring that goes on beyond the plate is no whole ring: what is counted is what there is of it.
  return { width, shares, massShare: Math.abs(ratio - 1) < WELL_SAMPLED ? ratio : 1 };
}

/** m², of a ring of even width around a hole that is nowhere hollow (Steiner’s formula). */
function ringArea(edge: readonly (readonly [number, number])[], width: number): number {
  return closedCurve(edge).length * width + Math.PI * width ** 2;
}

/** As stiff as the share of it that is there. */
export function thinned(wood: OrthotropicWood, share: number): OrthotropicWood {
  return {
    ...wood,
    eAlong: wood.eAlong * share,
    eAcross: wood.eAcross * share,
    shearInPlane: wood.shearInPlane * share,
    shearAlong: wood.shearAlong * share,
    shearAcross: wood.shearAcross * share,
    density: wood.density * share,
  };
}
