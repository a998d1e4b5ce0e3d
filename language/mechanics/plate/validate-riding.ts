/** Checks of what rides on the plate or is glued around its holes: rings, small masses and the coat. */
import { onPlate, holeOutline, withoutRepeats } from '../plate/mesh/mesh-lines.js';
import { closedCurve } from '../plate/mesh/curve.js';
import type { TopModel } from '../plate/model.js';
import { above, finitePoints, type Findings, validateWood } from '../plate/validate-parts.js';

export function validateRiding(found: Findings, { outline, holes = [], masses = [], film }: TopModel): void {
  if (film && !(film.massPerArea >= 0 && film.massPerArea < 50)) {
    found.error(
      'film.massPerArea',
      'The mass of the finish must be a number from zero up, in kilograms per square metre.',
    );
  }
  if (film?.stiffness !== undefined && !(film.stiffness >= 0 && film.stiffness < 1e9)) {
    found.error('film.stiffness', 'The stiffness of the finish must be a number from zero up.');
  }
  if (masses.length === 0) return;
  const rim = closedCurve(withoutRepeats(outline));
  const gaps = holes.map((hole) => closedCurve(withoutRepeats(holeOutline(hole))));
  masses.forEach(({ name, x, y, mass, radius }, i) => {
    const path = `masses.${i}`;
    const what = name ?? 'added mass';
    if (!above(found, `${path}.mass`, `mass of the ${what}`, mass)) return;
    if (!finitePoints([[x, y]])) found.error(path, `The place of the ${what} is not a number.`);
    else if (radius !== undefined && !(radius >= 0 && Number.isFinite(radius))) {
      found.error(`${path}.radius`, `The radius of the ${what} must be a number from zero up.`);
    } else if (!onPlate(x, y, rim, gaps)) {
      found.warning(path, `The ${what} lies off the top: what of it rests on no wood is not counted there.`);
    }
  });
}

export function validateRings(found: Findings, { holes = [], rings = [] }: TopModel): void {
  rings.forEach(({ name, hole, width, wood, thickness, grain }, i) => {
    const path = `rings.${i}`;
    if (!holes[hole]) found.error(`${path}.hole`, `There is no hole for the ${name} to lie around.`);
    validateWood(found, `${path}.wood`, name, wood);
    if (!Number.isFinite(grain))
      found.error(`${path}.grain`, `The direction of the grain of the ${name} is not a number.`);
    above(found, `${path}.thickness`, `thickness of the ${name}`, thickness);
    above(found, `${path}.width`, `width of the ${name}`, width);
  });
}
