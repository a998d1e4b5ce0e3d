/** What the three taps of a blank say of its wood, all at once. */
import {
  type Blank,
  blankDensity,
  modulusFromBendingTap,
  shearFromTwistTap,
  shearFromTwistTapCorrected,
} from '../../../language/mechanics/wood/measured-wood.js';

export interface TapReadings {
  /** Hz, bending along the grain: two nodal lines across the plate */
  readonly along?: number;
  /** Hz, bending across the grain: two nodal lines along the plate */
  readonly across?: number;
  /** Hz, twist: one nodal line each way */
  readonly twist?: number;
}

export interface TapElasticity {
  readonly density: number;
  /** Pa; absent when its tap was not read */
  readonly along?: number;
  readonly across?: number;
  /** Pa, as the closed form reads it (about 10 % low) */
  readonly shear?: number;
  /** Pa, divided by `TWIST_TAP_SHARE` */
  readonly shearCorrected?: number;
}

/** Density and moduli of a blank from its mass and those of the three free-plate taps that were read. */
export function elasticityFromTaps(blank: Blank, mass: number, taps: TapReadings): TapElasticity {
  const density = blankDensity(blank, mass);
  const { length, width, thickness } = blank;
  return {
    density,
    along: taps.along === undefined ? undefined : modulusFromBendingTap(density, taps.along, length, thickness),
    across: taps.across === undefined ? undefined : modulusFromBendingTap(density, taps.across, width, thickness),
    shear: taps.twist === undefined ? undefined : shearFromTwistTap(density, taps.twist, blank),
    shearCorrected: taps.twist === undefined ? undefined : shearFromTwistTapCorrected(density, taps.twist, blank),
  };
}
