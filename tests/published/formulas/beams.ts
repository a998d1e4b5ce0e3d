/**
 * Textbook deflections (m) of a uniform beam of bending stiffness EI (N·m²). From memory; each is checked here by
 * integration.
 */
import type { CompositeSection } from '../../../language/mechanics/braces/sections.js';
import { computed, positive } from '../../../language/mechanics/error.js';

/** Load F (N) at the middle of a simple span L (m): F L³ / (48 EI). */
export function simpleBeamCentreLoad(force: number, span: number, bendingStiffness: number): number {
  return stem(force, span, bendingStiffness) / 48;
}

/** Load F in two halves at the third points of a simple span, at the centre: 23 F L³ / (1296 EI). */
export function simpleBeamThirdPoints(force: number, span: number, bendingStiffness: number): number {
  return (23 / 1296) * stem(force, span, bendingStiffness);
}

/** Uniform load q (N/m) on a simple span, at the centre: 5 q L⁴ / (384 EI). */
export function simpleBeamUniform(forcePerLength: number, span: number, bendingStiffness: number): number {
  return computed('deflection', (5 / 384) * positive('span', span) * stem(forcePerLength, span, bendingStiffness));
}

/** Load F at the end of a cantilever: F L³ / (3 EI). */
export function cantileverEndLoad(force: number, length: number, bendingStiffness: number): number {
  return stem(force, length, bendingStiffness) / 3;
}

/** Load F at the middle of a beam clamped at both ends: F L³ / (192 EI). */
export function clampedBeamCentreLoad(force: number, span: number, bendingStiffness: number): number {
  return stem(force, span, bendingStiffness) / 192;
}

/** Frequency (Hz) of a bending mode of root βL: (βL)² / (2π L²) √(EI / mass per length). */
export function beamFrequency(root: number, length: number, bendingStiffness: number, massPerLength: number): number {
  const speed = Math.sqrt(positive('bending stiffness', bendingStiffness) / positive('mass per length', massPerLength));
  const curvature = (positive('root', root) / positive('length', length)) ** 2;
  return computed('frequency', (curvature * speed) / (2 * Math.PI));
}

function stem(force: number, span: number, bendingStiffness: number): number {
  const bending = positive('bending stiffness', bendingStiffness);
  return computed('deflection', (positive('load', force) * positive('span', span) ** 3) / bending);
}

/**
 * Stress (Pa) in the layer of modulus `modulus` at height z under bending moment `moment` (N·m): E M (z − z₀) / EI.
 * Positive: pulled, when the moment stretches the upper side.
 */
export function bendingStress(section: CompositeSection, moment: number, modulus: number, height: number): number {
  return computed('stress', (modulus * moment * (height - section.neutralAxis)) / section.bending);
}

/**
 * Share by which shear adds to the mid-span bending deflection of a centre-loaded rectangular beam: 1.2 (E/G) (h/L)².
 * Source: S.P. Timoshenko, Strength of Materials, shear coefficient 6/5 (from memory).
 */
export function shearShareOfDeflection(modulus: number, shear: number, thickness: number, span: number): number {
  const slenderness = positive('thickness', thickness) / positive('span', span);
  return computed(
    'shear deflection',
    1.2 * (positive('stiffness', modulus) / positive('shear stiffness', shear)) * slenderness ** 2,
  );
}

/** Roots βL of cos(x) cosh(x) = −1, the bending modes of a bar clamped at one end. */
export const CANTILEVER_ROOTS: readonly number[] = [1.875104068711961, 4.694091132974175, 7.854757438237613];
