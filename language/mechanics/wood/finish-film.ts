import { computed, positive } from '../error.js';

/**
 * Density of a cured film, kg/m³, when the maker gives none: 1200, usual for shellac and lacquers (common practice).
 */
export const FILM_DENSITY = 1200;

/**
 * Mass (kg) of a finish on `area` (m²) with a cured film `film` (m) thick: A t ρ. What soaked into the pores is not in
 * it.
 */
export function finishMass(area: number, film: number, density = FILM_DENSITY): number {
  return computed(
    'finish mass',
    positive('finished area', area) * positive('film thickness', film) * positive('film density', density),
  );
}

/** Area (m²) of the sides: outline length (m) times the mean of the depths at tail and neck (m). */
export function sidesArea(perimeter: number, tailDepth: number, neckDepth: number): number {
  return (
    (positive('perimeter', perimeter) *
      (positive('depth at the tail', tailDepth) + positive('depth at the neck', neckDepth))) /
    2
  );
}
