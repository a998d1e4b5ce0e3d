/** All elastic constants of a species at once, as the handbook’s worked tables give them. */
import { computed, positive } from '../../../language/mechanics/error.js';
import { alongFromBendingModulus, reciprocalPoisson } from '../../../language/mechanics/wood/handbook.js';

/** Ratios to E_L as tabulated (Wood Handbook FPL-GTR-282, 2021, Tables 5-1 and 5-2, about 12 % moisture). */
export interface ElasticRatios {
  readonly acrossRadial: number;
  readonly acrossTangential: number;
  readonly shearLR: number;
  readonly shearLT?: number;
  readonly shearRT?: number;
  readonly poissonLR: number;
  readonly poissonLT?: number;
}

export interface HandbookElasticity {
  /** Pa */
  readonly along: number;
  readonly acrossRadial: number;
  readonly acrossTangential: number;
  readonly shearLR: number;
  readonly shearLT?: number;
  readonly shearRT?: number;
  readonly poissonLR: number;
  readonly poissonRL: number;
  readonly poissonLT?: number;
  readonly poissonTL?: number;
}

/**
 * The elastic constants (Pa) of a species from its bending modulus (Pa) and ratios. ν_RL is derived, never tabulated.
 */
export function handbookElasticity(bendingModulus: number, ratios: ElasticRatios): HandbookElasticity {
  const along = alongFromBendingModulus(bendingModulus);
  const acrossRadial = scaled(along, 'ratio of E across to E along', ratios.acrossRadial);
  const acrossTangential = scaled(along, 'ratio of E across to E along', ratios.acrossTangential);
  return {
    along,
    acrossRadial,
    acrossTangential,
    shearLR: scaled(along, 'ratio of G to E along', ratios.shearLR),
    shearLT: ratios.shearLT === undefined ? undefined : scaled(along, 'ratio of G to E along', ratios.shearLT),
    shearRT: ratios.shearRT === undefined ? undefined : scaled(along, 'ratio of G to E along', ratios.shearRT),
    poissonLR: ratios.poissonLR,
    poissonRL: reciprocalPoisson(ratios.poissonLR, along, acrossRadial),
    poissonLT: ratios.poissonLT,
    poissonTL:
      ratios.poissonLT === undefined ? undefined : reciprocalPoisson(ratios.poissonLT, along, acrossTangential),
  };
}

function scaled(along: number, quantity: string, ratio: number): number {
  return positive('stiffness', computed('stiffness', along * positive(quantity, ratio)));
}
