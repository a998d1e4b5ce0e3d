/** Mass and stiffness of a carved brace, free and glued to its plate. SI throughout. */
import { braceHeight, type BraceCarving } from './brace-height.js';
import { MechanicsError, computed, positive } from '../error.js';
import {
  braceSection,
  compositeSection,
  type GabledShape,
  type Layer,
  type Profile,
  type Section,
} from './sections.js';

export interface Brace extends BraceCarving {
  /** m, at the glued face */
  readonly width: number;
  readonly profile: Profile;
  readonly gable?: GabledShape;
}

/** Plate that works with a brace: a strip under it. */
export interface PlateStrip {
  /**
   * m, width counted with the brace; half the distance to each neighbour, or the brace's width plus 20 thicknesses
   * (common practice)
   */
  readonly width: number;
  /** m */
  readonly thickness: number;
  /** Pa, in the direction of the brace */
  readonly modulus: number;
}

/** Volume (m³) of a carved brace. */
export function braceVolume(brace: Brace): number {
  const sectionAt = sections(brace);
  return integrate(brace, (x) => sectionAt(x)?.area ?? 0);
}

/** Mass (kg) of a carved brace. */
export function braceMass(brace: Brace, density: number): number {
  return computed('brace mass', positive('density', density) * braceVolume(brace));
}

/** Bending stiffness EI (N·m²) at `x` of the brace glued to its strip of plate: transformed section, parallel axis. */
export function gluedStiffnessAt(brace: Brace, modulus: number, strip: PlateStrip, x: number): number {
  return glued(sections(brace), modulus, strip)(place(brace, x));
}

export interface EffectiveStiffness {
  /** N·m²: ∫ EI dx / L, the mean; what an even curvature feels, an upper bound */
  readonly mean: number;
  /**
   * N·m²: L / ∫ dx / EI, the springs in series; what an even bending moment feels, a lower bound; zero if carved to
   * nothing anywhere
   */
  readonly series: number;
  /**
   * N·m²: (2/L) ∫ EI sin²(πx/L) dx, Rayleigh's quotient for one half-wave over the brace: near what the main top mode
   * feels
   */
  readonly halfWave: number;
}

/**
 * One number for the stiffness of a brace whose EI varies, three ways, because no single one is right for every use.
 */
export function effectiveStiffness(brace: Brace, modulus: number, strip?: PlateStrip): EffectiveStiffness {
  const at = stiffnessAlong(brace, modulus, strip);
  const { length } = brace;
  const give = integrate(brace, (x) => 1 / at(x));
  return {
    mean: computed('stiffness', integrate(brace, at) / length),
    series: computed('stiffness', Number.isFinite(give) ? length / give : 0),
    halfWave: halfWaveStiffness(brace, modulus, strip),
  };
}

/** The `halfWave` of `effectiveStiffness` (N·m²) by itself, at a third of the cost. */
export function halfWaveStiffness(brace: Brace, modulus: number, strip?: PlateStrip): number {
  const at = stiffnessAlong(brace, modulus, strip);
  const { length } = brace;
  const felt = integrate(brace, (x) => at(x) * Math.sin((Math.PI * x) / length) ** 2);
  return computed('stiffness', (2 / length) * felt);
}

function stiffnessAlong(brace: Brace, modulus: number, strip: PlateStrip | undefined): (x: number) => number {
  positive('stiffness', modulus);
  const sectionAt = sections(brace);
  return strip ? glued(sectionAt, modulus, strip) : (x) => modulus * (sectionAt(x)?.secondMoment ?? 0);
}

/**
 * Share (0 … 1) of the braced strip's bending stiffness at `x` that the brace adds: 1 − EI of the bare strip / EI
 * glued.
 */
export function braceShareAt(brace: Brace, modulus: number, strip: PlateStrip, x: number): number {
  const bare = (positive('stiffness', strip.modulus) * strip.width * strip.thickness ** 3) / 12;
  return 1 - bare / gluedStiffnessAt(brace, modulus, strip, x);
}

type SectionAt = (x: number) => Section | undefined;

function sections(brace: Brace): SectionAt {
  const heightAt = braceHeight(brace);
  return (x) => {
    const height = heightAt(x);
    return height > 0 ? braceSection(brace.profile, brace.width, height, brace.gable) : undefined;
  };
}

function glued(sectionAt: SectionAt, modulus: number, strip: PlateStrip): (x: number) => number {
  const thickness = positive('plate thickness', strip.thickness);
  const plate = braceSection('rectangular', positive('strip width', strip.width), thickness);
  const below: Layer = { ...plate, centroid: -thickness / 2, modulus: strip.modulus };
  return (x) => {
    const section = sectionAt(x);
    return compositeSection(section ? [below, { ...section, modulus }] : [below]).bending;
  };
}

function place(brace: Brace, x: number): number {
  if (!(x >= 0 && x <= brace.length)) throw new MechanicsError('place along the brace', 'That place is off the brace.');
  return x;
}

/** Simpson's rule over every stretch between the places where the carving has a corner. */
function integrate(brace: Brace, f: (x: number) => number): number {
  const { length, ends, scallops = [], stations = [] } = brace;
  positive('brace length', length);
  const corners = [0, length, ...stations.map((station) => station.distance)];
  if (ends) corners.push(ends.length, length - ends.length);
  for (const { at, length: hollow } of scallops) corners.push(at - hollow / 2, at, at + hollow / 2);
  const sorted = [...new Set(corners.filter((x) => x >= 0 && x <= length))].sort((a, b) => a - b);
  let sum = 0;
  for (let i = 1; i < sorted.length; i += 1) {
    const h = (sorted[i]! - sorted[i - 1]!) / STEPS;
    for (let k = 0; k <= STEPS; k += 1) {
      const weight = k === 0 || k === STEPS ? 1 : k % 2 === 1 ? 4 : 2;
      sum += (weight * h * f(Math.min(length, sorted[i - 1]! + k * h))) / 3;
    }
  }
  return sum;
}

const STEPS = 24;
