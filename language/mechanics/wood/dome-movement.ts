/**
 * A domed plate when its moisture changes: the braces hold their length, the plate across its grain does not. SI
 * throughout.
 */
import { MechanicsError, computed, finite, positive } from '../error.js';

/**
 * Rise (m) of a dome of radius `radius` over a chord `chord`: R − √(R² − c²/4). Throws if the chord is wider than the
 * sphere.
 */
export function domeRise(radius: number, chord: number): number {
  const half = positive('chord', chord) / 2;
  if (half > positive('dome radius', radius)) {
    throw new MechanicsError('dome radius', 'The dome radius is less than half the width it has to cover.');
  }
  // R − √(R² − c²) written so that a 9 m radius over 0.4 m loses no digits.
  return computed('dome rise', (half * half) / (radius + Math.sqrt((radius - half) * (radius + half))));
}

export interface BracedStrip {
  /** N: E A of the plate strip across its grain */
  readonly plateAxial: number;
  /** N·m²: E I of the strip about its own middle */
  readonly plateBending: number;
  readonly braceAxial: number;
  readonly braceBending: number;
  /** m, between the two centroids */
  readonly offset: number;
}

/**
 * Curvature (1/m) that a strip of plate glued to a brace takes when the plate alone would stretch by `strain`
 * (positive: it swells; the dome rises, the plate being on the outside): κ = ε d / [(1/EA_p + 1/EA_b)(EI_p + EI_b) +
 * d²]. Source: S. Timoshenko, Analysis of bi-metal thermostats, J. Opt. Soc. Am. 11 (1925) 233 (from memory), for two
 * layers of any section. The rim is taken to let the plate bend freely: an upper bound of the movement.
 */
export function swellingCurvature(strip: BracedStrip, strain: number): number {
  const d = positive('distance from plate to brace', strip.offset);
  const give = 1 / positive('plate strip', strip.plateAxial) + 1 / positive('brace', strip.braceAxial);
  const bending = positive('plate strip', strip.plateBending) + positive('brace', strip.braceBending);
  return computed('curvature', (finite('swelling', strain) * d) / (give * bending + d * d));
}

/**
 * Change of the dome's rise (m) over a chord `chord` when its curvature 1/`radius` changes by `curvature` (1/m).
 * Shallow dome: rise = chord² / 8R. Negative: the dome falls. A flat plate is `radius` = Infinity.
 */
export function domeRiseChange(chord: number, curvature: number): number {
  return computed('dome rise', (positive('chord', chord) ** 2 * finite('curvature', curvature)) / 8);
}
