/**
 * Roots βL of cos(x) cosh(x) = 1, the bending modes of a bar free at both ends (L. Euler; any text on vibration).
 * The first bending mode has two nodal lines.
 */
export const FREE_BEAM_ROOTS: readonly number[] = [
  4.730040744862704, 7.853204624095838, 10.995607838001671, 14.137165491257464, 17.27875965739948,
];

/**
 * E = c ρ f² L⁴ / h² for the first bending mode of a free rectangular bar or plate: c = 48 π² / (βL)⁴ = 0.94641.
 * From f = (βL)² / (2π L²) √(E h² / 12 ρ).
 */
export const FREE_BAR_COEFFICIENT = (48 * Math.PI ** 2) / FREE_BEAM_ROOTS[0]! ** 4;

/** Frequency ratio of the second bending mode (three nodal lines) of a free bar to its first: 2.7565. */
export const SECOND_TO_FIRST_BENDING = (FREE_BEAM_ROOTS[1]! / FREE_BEAM_ROOTS[0]!) ** 2;
