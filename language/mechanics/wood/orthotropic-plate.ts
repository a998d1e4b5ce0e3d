/** An orthotropic plate of constant thickness, grain along x. SI throughout. */
import { computed, positive } from '../error.js';
import { reciprocalPoisson } from './handbook.js';

export interface PlateElasticity {
  /** Pa, along the grain */
  readonly along: number;
  /** Pa, across the grain, in the plate's plane */
  readonly across: number;
  /** Pa, in-plane */
  readonly shear: number;
  /** ν_LR: sideways strain over lengthwise strain when pulled along the grain */
  readonly poissonLR: number;
}

/** Plane-stress stiffness (Pa): σ_x = Q11 ε_x + Q12 ε_y, σ_y = Q12 ε_x + Q22 ε_y, τ = Q66 γ. */
export interface ReducedStiffness {
  readonly q11: number;
  readonly q22: number;
  readonly q12: number;
  readonly q66: number;
}

/** N·m: bending stiffness per unit width. */
export interface PlateBending {
  readonly along: number;
  readonly across: number;
  /** D12, Poisson coupling */
  readonly coupling: number;
  /** D66 = G h³/12, twist */
  readonly twist: number;
}

/**
 * Reduced stiffness with ν_RL derived from ν_LR. Source: R.M. Jones, Mechanics of Composite Materials, Eq. 2.61 (from
 * memory). Throws on a modulus not above zero and on 1 − ν_LR ν_RL ≤ 0.
 */
export function reducedStiffness({ along, across, shear, poissonLR }: PlateElasticity): ReducedStiffness {
  const poissonRL = reciprocalPoisson(poissonLR, along, across);
  const denominator = 1 - poissonLR * poissonRL;
  return {
    q11: computed('stiffness', along / denominator),
    q22: computed('stiffness', across / denominator),
    q12: computed('stiffness', (poissonLR * across) / denominator),
    q66: positive('shear stiffness', shear),
  };
}

/** Bending stiffnesses D = Q h³/12 of a plate of thickness `thickness` (m). */
export function plateBending(elasticity: PlateElasticity, thickness: number): PlateBending {
  const q = reducedStiffness(elasticity);
  const cube = positive('thickness', thickness) ** 3 / 12;
  return {
    along: computed('stiffness', q.q11 * cube),
    across: computed('stiffness', q.q22 * cube),
    coupling: computed('stiffness', q.q12 * cube),
    twist: computed('stiffness', q.q66 * cube),
  };
}

/** Mass per area (kg/m²). */
export function massPerArea(density: number, thickness: number): number {
  return computed('mass per area', positive('density', density) * positive('thickness', thickness));
}
