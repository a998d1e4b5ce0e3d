/**
 * Dimensions as data: a vector of exponents over the base dimensions, and a name for those the trade uses.
 * Relative humidity, moisture content, musical interval and angle are base dimensions of their own, so that none can
 * be mistaken for another or for a bare number.
 */
export const BASES = ['length', 'mass', 'time', 'temperature', 'angle', 'humidity', 'moisture', 'interval'] as const;
export type Base = (typeof BASES)[number];

export interface Dimension {
  /** One exponent per base, in the order of `BASES`. */
  readonly exponents: readonly number[];
  /** `length`, `pressure`, … or a product such as `kg·m⁻³` for a dimension without a name. */
  readonly name: string;
}
