/** Air, and the resonance of the air in a rigid box with a hole. SI throughout; temperatures in °C. */
import { MechanicsError, between, computed, notNegative, positive } from '../error.js';

/** Density (kg/m³) of dry air: p M / R T, 1.204 at 20 °C and 101325 Pa. Valid −50 … 60 °C; throws outside. */
export function airDensity(celsius = 20, pressure = 101325): number {
  return (positive('air pressure', pressure) * 0.0289652) / (8.314462618 * kelvin(celsius));
}

/**
 * Speed of sound (m/s) in dry air: 331.3 √(T / 273.15), 343.2 at 20 °C. Humid air is up to 0.4 % faster. Throws
 * outside −50 … 60 °C.
 */
export function airSoundSpeed(celsius = 20): number {
  return 331.3 * Math.sqrt(kelvin(celsius) / 273.15);
}

/**
 * How much air beyond the thickness of the plate moves with a hole of radius r:
 * - `flanged`: 8r/3π on each side, 1.6977 r in all, plus the thickness (N.H. Fletcher & T.D. Rossing, The Physics of
 *   Musical Instruments, from memory)
 * - `thin`: πr/2, a hole in a plate of no thickness, conductance 2r (Helmholtz and Rayleigh; D. Politzer,
 *   arXiv:1505.04787, reviews it)
 * - `rule`: 1.7 r in all, whatever the thickness, a rule of makers' measuring notes
 */
export type EndCorrection = 'flanged' | 'thin' | 'rule';

export interface Opening {
  /** m² */
  readonly area: number;
  /** m, thickness of the plate or side at the opening; absent: 0 */
  readonly thickness?: number;
}

/** Area (m²) of an elliptical hole with axes `long` and `short` (m, full). */
export function ellipticalHole(long: number, short: number): number {
  return (Math.PI * positive('soundhole length', long) * positive('soundhole width', short)) / 4;
}

/**
 * Effective length (m) of the air plug in an opening. A hole that is not round counts as the round one of equal area:
 * within 1 % for ellipses up to 1.5 : 1, longer slots carry more air than this says.
 */
export function effectiveLength(opening: Opening, correction: EndCorrection = 'flanged'): number {
  const radius = Math.sqrt(positive('area of the hole', opening.area) / Math.PI);
  const thickness = notNegative('thickness at the hole', opening.thickness ?? 0);
  switch (correction) {
    case 'flanged':
      return thickness + (16 / (3 * Math.PI)) * radius;
    case 'thin':
      return (Math.PI / 2) * radius;
    case 'rule':
      return 1.7 * radius;
    default:
      throw new MechanicsError('end correction', 'The end correction is flanged, thin or rule.');
  }
}

export interface RigidAir {
  /** m³ */
  readonly volume: number;
  /** Soundhole first; ports after it work in parallel. */
  readonly openings: readonly Opening[];
  readonly correction?: EndCorrection;
  readonly celsius?: number;
}

/**
 * Resonance (Hz) of the air in a rigid body: f = (c/2π) √(Σ(S/L) / V). A real body lowers it by 15 … 25 % (coupling
 * with top and back). The air is taken to be springy everywhere alike, good while body length is well below half a
 * wavelength. Source: H. von Helmholtz; Fletcher & Rossing. Throws without an opening and on sizes not above zero.
 */
export function rigidAirFrequency({ volume, openings, correction, celsius = 20 }: RigidAir): number {
  if (openings.length === 0) throw new MechanicsError('soundhole', 'Without a soundhole there is no air resonance.');
  const conductance = openings.reduce((sum, opening) => sum + opening.area / effectiveLength(opening, correction), 0);
  const rate = Math.sqrt(conductance / positive('air volume', volume));
  return computed('air resonance', (airSoundSpeed(celsius) / (2 * Math.PI)) * rate);
}

function kelvin(celsius: number): number {
  return 273.15 + between('temperature', celsius, -50, 60, (bound) => `${bound} °C`);
}
