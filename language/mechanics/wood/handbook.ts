/** Elastic constants of a species from its tabulated bending modulus and ratios, when this piece was not measured. */
import { between, computed, positive, MechanicsError } from '../error.js';

/**
 * Tabulated bending moduli come from a centre-loaded beam of span/depth 14, whose shear deflection makes them read low.
 * E_L = 1.10 × modulus of elasticity in bending. Source: Wood Handbook, note to Table 5-1.
 */
export const BENDING_TO_ALONG = 1.1;

/** E_L (Pa) from the tabulated bending modulus (Pa). Throws if not above zero. */
export function alongFromBendingModulus(bendingModulus: number): number {
  return computed('stiffness along', BENDING_TO_ALONG * positive('bending modulus', bendingModulus));
}

/**
 * ν_RL from ν_LR: ν_RL = ν_LR E_R / E_L (symmetry of the compliance matrix, S.G. Lekhnitskii, Anisotropic Plates).
 * The handbook's two columns are separate measurements and do not obey it, so the second is never read.
 * Throws unless 1 − ν_LR ν_RL is positive, without which a plate would have negative stiffness.
 */
export function reciprocalPoisson(poissonLR: number, along: number, across: number): number {
  const major = between('Poisson ratio', poissonLR, -1, 3);
  const minor = computed(
    'Poisson ratio',
    (major * positive('stiffness across', across)) / positive('stiffness along', along),
  );
  if (1 - major * minor <= 0) {
    throw new MechanicsError(
      'Poisson ratio',
      'The Poisson ratio is too large for this pair of stiffnesses: no real plate has it.',
    );
  }
  return minor;
}

/**
 * Medians of the tabulated ratios, for wood of an unlisted species. Softwoods: ten species of Wood Handbook Tables
 * 5-1/5-2 (spruces, cedars, redwood, Douglas-fir, hemlock, pines, cypress); hardwoods: fourteen (balsa left out), some
 * of the ratios from memory. The scatter between species is wide: `scatter` is the relative standard deviation of E
 * across to carry as uncertainty.
 */
export const TYPICAL_RATIOS: Readonly<Record<'softwood' | 'hardwood', TypicalRatios>> = {
  softwood: { acrossRadial: 0.0825, acrossTangential: 0.0525, shearLR: 0.065, poissonLR: 0.349, scatter: 0.4 },
  hardwood: { acrossRadial: 0.113, acrossTangential: 0.06, shearLR: 0.087, poissonLR: 0.3665, scatter: 0.3 },
};

export interface TypicalRatios {
  readonly acrossRadial: number;
  readonly acrossTangential: number;
  readonly shearLR: number;
  readonly poissonLR: number;
  readonly scatter: number;
}

/** E across (Pa) guessed from E along (Pa) when only the long tap was read. */
export function guessedAcross(along: number, kind: 'softwood' | 'hardwood', cut: 'quartersawn' | 'flatsawn'): number {
  const ratios = TYPICAL_RATIOS[kind];
  return positive('stiffness along', along) * (cut === 'quartersawn' ? ratios.acrossRadial : ratios.acrossTangential);
}

/** In-plane shear modulus (Pa) guessed from E along (Pa) when the twist was not read. */
export function guessedShear(along: number, kind: 'softwood' | 'hardwood'): number {
  return positive('stiffness along', along) * TYPICAL_RATIOS[kind].shearLR;
}
