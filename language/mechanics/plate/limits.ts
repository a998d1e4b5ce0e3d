/**
 * How much of one plate is solved at most: each far beyond what is built, and near enough that the solver ends within some
 * seconds. What goes beyond is not solved at all; half of the braces would be another instrument.
 */
export const PLATE_LIMITS = {
  /** The most that is built has some thirty. */
  braces: 60,
  /** Points of a thickness map; a plate gone over with a gauge every three centimetres has some hundred and fifty. */
  mapPoints: 200,
} as const;
