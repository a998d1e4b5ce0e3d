/** Stiffness and mass of a brace piece between two nodes, from its section at stations along it. */
import { braceSection, type Profile, type GabledShape } from '../../braces/sections.js';
import type { Brace, OrthotropicWood } from '../model.js';

/** Numbers per piece and their places. Stiffness is about the glue line, the height counted upward from it. */
export const RIB_SIZE = 10;
/** N, N·m, N·m²: ∫ E (1, ζ, ζ²) dA */
export const RIB_AXIAL = 0;
export const RIB_COUPLING = 1;
export const RIB_BENDING = 2;
/** N: shear stiffness, and N·m²: bending about the own centroid */
export const RIB_SHEAR = 3;
export const RIB_OWN_BENDING = 4;
/** N·m²: torsion */
export const RIB_TORSION = 5;
/** kg/m, kg, kg·m: moments of mass about the plate's mid-surface */
export const RIB_MASS = 6;
/** m: from the mid-surface down to the glue line */
export const RIB_DEPTH = 9;

/** A stretch of a brace where another one crosses. */
export interface LapZone {
  readonly from: number;
  readonly to: number;
  /** Which half of the own height is kept; `whole`: both braces run through. */
  readonly kept: 'glued' | 'free' | 'whole';
  /** Wood of the other brace, which fills the other half across its grain. */
  readonly filler: OrthotropicWood;
}

/** A brace tapered to nothing keeps this height, m. */
const LEAST_HEIGHT = 0.0003;

/** m: height at distance `s` from the first point of the brace. */
export function heightAt(height: Brace['height'], s: number): number {
  if (typeof height === 'number') return Math.max(height, LEAST_HEIGHT);
  const after = height.findIndex((station) => station.at >= s);
  if (after === 0) return Math.max(height[0]!.height, LEAST_HEIGHT);
  if (after < 0) return Math.max(height[height.length - 1]!.height, LEAST_HEIGHT);
  const a = height[after - 1]!;
  const b = height[after]!;
  const t = b.at > a.at ? (s - a.at) / (b.at - a.at) : 1;
  return Math.max(a.height + t * (b.height - a.height), LEAST_HEIGHT);
}

/**
 * Fills `out[at…]` for the piece from `from` to `to` (m along the brace) under a plate of thickness `plate`. Along the piece the
 * flexibilities are averaged, as its sections carry the same force.
 */
export function ribPiece(
  brace: Brace,
  shearFactor: number,
  zones: readonly LapZone[],
  from: number,
  to: number,
  plate: number,
  out: Float64Array,
  at: number,
): void {
  const low = Math.min(from, to);
  const high = Math.max(from, to);
  const cuts = [low, ...stationsBetween(brace, zones, low, high), high];
  let f11 = 0;
  let f12 = 0;
  let f22 = 0;
  let shear = 0;
  let torsion = 0;
  out.fill(0, at, at + RIB_SIZE);
  for (let k = 0; k + 1 < cuts.length; k++) {
    const length = cuts[k + 1]! - cuts[k]!;
    if (length <= 0) continue;
    for (const place of [0.5 - 0.5 / Math.sqrt(3), 0.5 + 0.5 / Math.sqrt(3)]) {
      const s = cuts[k]! + place * length;
      const weight = length / 2 / (high - low);
      const station = stationAt(brace, shearFactor, zones, s, plate);
      const det = station.axial * station.bending - station.coupling ** 2;
      f11 += (weight * station.bending) / det;
      f12 -= (weight * station.coupling) / det;
      f22 += (weight * station.axial) / det;
      shear += weight / station.shear;
      torsion += weight / station.torsion;
      const centre = -plate / 2 - station.centroid;
      out[at + RIB_MASS]! += weight * station.mass;
      out[at + RIB_MASS + 1]! += weight * station.mass * centre;
      out[at + RIB_MASS + 2]! += weight * station.mass * (centre ** 2 + station.gyration2);
    }
  }
  const det = f11 * f22 - f12 * f12;
  out[at + RIB_AXIAL] = f22 / det;
  out[at + RIB_COUPLING] = -f12 / det;
  out[at + RIB_BENDING] = f11 / det;
  out[at + RIB_SHEAR] = 1 / shear;
  out[at + RIB_OWN_BENDING] = 1 / f22;
  out[at + RIB_TORSION] = 1 / torsion;
  out[at + RIB_DEPTH] = plate / 2;
}

function stationsBetween(brace: Brace, zones: readonly LapZone[], low: number, high: number): number[] {
  const heights = typeof brace.height === 'number' ? [] : brace.height.map(({ at }) => at);
  return [...heights, ...zones.flatMap(({ from, to }) => [from, to])]
    .filter((s) => s > low + 1e-9 && s < high - 1e-9)
    .sort((a, b) => a - b);
}

interface Station {
  readonly axial: number;
  readonly coupling: number;
  readonly bending: number;
  readonly shear: number;
  readonly torsion: number;
  readonly mass: number;
  /** m below the glue line */
  readonly centroid: number;
  readonly gyration2: number;
}

function stationAt(brace: Brace, shearFactor: number, zones: readonly LapZone[], s: number, plate: number): Station {
  const { wood, profile, width, gable } = brace;
  const height = heightAt(brace.height, s);
  const section = braceSection(profile, width, height, gable);
  // Unequal shear moduli up and sideways are those of an equal one on a section stretched sideways.
  const stretch = Math.sqrt(wood.shearAlong / wood.shearInPlane);
  const shape = gluedTorsion(profile, width * stretch, height, plate, {
    ...section,
    area: section.area * stretch,
    secondMoment: section.secondMoment * stretch,
  });
  const torsion = (wood.shearInPlane / stretch) * shape;
  const solid: Station = {
    axial: wood.eAlong * section.area,
    coupling: -wood.eAlong * section.area * section.centroid,
    bending: wood.eAlong * (section.secondMoment + section.area * section.centroid ** 2),
    shear: shearFactor * wood.shearAlong * section.area,
    torsion,
    mass: wood.density * section.area,
    centroid: section.centroid,
    gyration2: section.secondMoment / section.area,
  };
  const zone = zones.find(({ from, to }) => s >= from && s <= to);
  if (!zone) return solid;
  return zone.kept === 'whole' ? { ...solid, mass: solid.mass / 2 } : halved(solid, brace, height, zone);
}

/** Half of the height runs through; the other half is the other brace, across its grain. Each brace counts the mass of its own half. */
function halved(solid: Station, brace: Brace, height: number, zone: LapZone): Station {
  const { wood, profile, width, gable } = brace;
  const glued = partIntegrals(profile, width, height, gable, 0, 0.5);
  const free = partIntegrals(profile, width, height, gable, 0.5, 1);
  const [own, other] = zone.kept === 'glued' ? [glued, free] : [free, glued];
  const e1 = wood.eAlong;
  const e2 = zone.filler.eAcross;
  const share = own[0] / (own[0] + other[0]);
  const softer = share + (1 - share) * (zone.filler.shearAcross / wood.shearAlong);
  return {
    ...solid,
    axial: e1 * own[0] + e2 * other[0],
    coupling: -(e1 * own[1] + e2 * other[1]),
    bending: e1 * own[2] + e2 * other[2],
    shear: solid.shear * Math.min(1, softer),
    torsion: solid.torsion * Math.min(1, softer),
    mass: wood.density * own[0],
    centroid: own[1] / own[0],
    gyration2: own[2] / own[0] - (own[1] / own[0]) ** 2,
  };
}

/** ∫ (1, ζ, ζ²) dA between two shares of the height, ζ down from the glue line. */
function partIntegrals(
  profile: Profile,
  width: number,
  height: number,
  gable: GabledShape | undefined,
  from: number,
  to: number,
): readonly [number, number, number] {
  const slices = 16;
  const sum: [number, number, number] = [0, 0, 0];
  for (let k = 0; k < slices; k++) {
    const t = from + ((to - from) * (k + 0.5)) / slices;
    const area = (widthShare(profile, gable, t) * width * height * (to - from)) / slices;
    sum[0] += area;
    sum[1] += area * t * height;
    sum[2] += area * (t * height) ** 2;
  }
  return sum;
}

/** Width at a share `t` of the height above the glue line, as a share of the width there. */
function widthShare(profile: Profile, gable: GabledShape | undefined, t: number): number {
  switch (profile) {
    case 'rectangular':
      return 1;
    case 'triangular':
      return 1 - t;
    case 'parabolic':
      return Math.sqrt(Math.max(0, 1 - t));
    case 'gabled': {
      const slope = gable?.slopeShare ?? 0.5;
      const crest = gable?.crestShare ?? 0;
      return t <= 1 - slope || slope === 0 ? 1 : crest + ((1 - crest) * (1 - t)) / slope;
    }
  }
}

/**
 * Share of G A that resists shear: I² / (A ∫ Q²/b dz) with the shear stress even across the width; 5/6 for a rectangle
 * (textbook strength of materials; from memory). It depends on the shape only, not on the sizes.
 */
export function shearFactorOf(profile: Profile, gable: GabledShape | undefined): number {
  const slices = 400;
  let area = 0;
  let first = 0;
  let second = 0;
  for (let k = 0; k < slices; k++) {
    const t = (k + 0.5) / slices;
    const b = widthShare(profile, gable, t) / slices;
    area += b;
    first += b * t;
    second += b * t * t;
  }
  const centroid = first / area;
  const inertia = second - area * centroid ** 2;
  let moment = 0;
  let energy = 0;
  for (let k = 0; k < slices; k++) {
    const t = (k + 0.5) / slices;
    const b = widthShare(profile, gable, t);
    const half = (b * (t - centroid)) / slices / 2;
    moment += half;
    if (b > 1e-9) energy += (moment * moment) / b / slices;
    moment += half;
  }
  return (inertia * inertia) / (area * energy);
}

/**
 * m⁴: a brace twists with the plate, about the plate's mid-surface, which it cannot leave sideways. By symmetry that is half of the torsion of
 * the section and its mirror image: for a rectangle Saint-Venant's fit at twice the height, other shapes by A⁴/(40 I_p)
 * (W.C. Young & R.G. Budynas, Roark's Formulas, ch. 10; from memory).
 */
function gluedTorsion(
  profile: Profile,
  width: number,
  height: number,
  plate: number,
  { area, centroid, secondMoment }: { readonly area: number; readonly centroid: number; readonly secondMoment: number },
): number {
  const depth = height + plate / 2;
  if (profile === 'rectangular') {
    const a = Math.max(width, 2 * depth);
    const b = Math.min(width, 2 * depth);
    const r = b / a;
    return (a * b ** 3 * (1 / 3 - 0.21 * r * (1 - r ** 4 / 12))) / 2;
  }
  const breadth2 = profile === 'triangular' ? 1 / 24 : profile === 'parabolic' ? 1 / 20 : 1 / 16;
  const strip = (width * plate) / 2;
  const polar =
    secondMoment +
    area * (centroid + plate / 2) ** 2 +
    (strip * plate ** 2) / 12 +
    breadth2 * area * width ** 2 +
    (strip * width ** 2) / 12;
  return (4 * (area + strip) ** 4) / (40 * polar);
}
