/** The weight test: what seems to move at the bridge, from two readings of one peak with a known weight and without. */
import { type AddedMassResult, effectiveMassFromAddedMass } from '../../mechanics/body/coupled-body.js';
import { MechanicsError } from '../../mechanics/error.js';
import type { Held } from '../instrument/instrument.js';
import type { Reading } from './builds.js';

export interface WeightTest extends AddedMassResult {
  /** Relative standard uncertainty of the mass, for half a hertz in either peak. */
  readonly uncertainty: number;
}

/** Hz: how closely a peak is read. (common practice) */
const PEAK = 0.5;

/** Undefined where a reading is missing, or the weight did not lower the peak. */
export function weightTestOf({ values }: Pick<Reading, 'values'>): WeightTest | undefined {
  const [before, after, added] = ['resonance.top', 'resonance.top-loaded', 'added-mass'].map((path) =>
    numberOf(values.get(path)),
  );
  if (before === undefined || after === undefined || added === undefined) return undefined;
  try {
    const result = effectiveMassFromAddedMass(before, after, added);
    const apart = before ** 2 - after ** 2;
    // d ln M/df of M = m f₁²/(f₀² − f₁²).
    const uncertainty = PEAK * Math.hypot((2 * before) / apart, 2 / after + (2 * after) / apart);
    return { ...result, uncertainty };
  } catch (error) {
    if (error instanceof MechanicsError) return undefined;
    throw error;
  }
}

function numberOf(held: Held | undefined): number | undefined {
  return held?.value.kind === 'quantity' ? held.value.quantity.si : undefined;
}
