import type { Dimension } from './dimension.js';
import type { Unit } from './unit.js';

/** A number with a dimension, in SI, remembering the unit it was written in. */
export interface Quantity {
  /** Value in the coherent SI unit of its dimension (per cent as a fraction, %RH and %MC as fractions, degrees as radians). */
  readonly si: number;
  readonly dimension: Dimension;
  /** Absent for a number written without a unit. */
  readonly unit?: Unit;
  /** Half-width of a written tolerance (`± 0.05 mm`), SI. */
  readonly tolerance?: number;
}
