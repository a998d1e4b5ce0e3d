/** Checks shared by plate, braces and patches. */
import type { OrthotropicWood, Point, TopProblem } from './model.js';

export class Findings {
  readonly list: TopProblem[] = [];

  get failed(): boolean {
    return this.list.some(({ severity }) => severity === 'error');
  }

  error(path: string, message: string): void {
    this.list.push({ severity: 'error', path, message });
  }

  warning(path: string, message: string): void {
    this.list.push({ severity: 'warning', path, message });
  }
}

export function finitePoints(points: readonly Point[]): boolean {
  return points.every(([x, y]) => Number.isFinite(x) && Number.isFinite(y));
}

/** Whether `value` is a number above zero; if not, says so. */
export function above(found: Findings, path: string, what: string, value: number): boolean {
  if (Number.isFinite(value) && value > 0) return true;
  found.error(path, Number.isFinite(value) ? `The ${what} must be more than zero.` : `The ${what} is not a number.`);
  return false;
}

const MODULI = [
  ['eAlong', 'stiffness along the grain'],
  ['eAcross', 'stiffness across the grain'],
  ['shearInPlane', 'shear stiffness in the plane'],
  ['shearAlong', 'shear stiffness through the thickness along the grain'],
  ['shearAcross', 'shear stiffness through the thickness across the grain'],
] as const;

/** Pa: softer than foam or stiffer than diamond is a slip of units. */
const SOFTEST = 1e5;
const STIFFEST = 2e12;

/** Wood with moduli that no material has would only give nonsense. */
export function validateWood(found: Findings, path: string, what: string, wood: OrthotropicWood): void {
  let sound = true;
  for (const [key, name] of MODULI) {
    const value = wood[key];
    const place = `${path}.${key}`;
    if (!above(found, place, `${name} of the ${what}`, value)) sound = false;
    else if (value < SOFTEST || value > STIFFEST) {
      found.error(place, `The ${name} of the ${what} is far outside what any material has: check the unit.`);
      sound = false;
    }
  }
  if (
    above(found, `${path}.density`, `density of the ${what}`, wood.density) &&
    (wood.density < 1 || wood.density > 30000)
  ) {
    found.error(`${path}.density`, `The density of the ${what} is far outside what any material has: check the unit.`);
  }
  if (!Number.isFinite(wood.poisson))
    found.error(`${path}.poisson`, `The Poisson's ratio of the ${what} is not a number.`);
  else if (sound && !(wood.poisson * wood.poisson * wood.eAcross < 0.99 * wood.eAlong)) {
    found.error(`${path}.poisson`, `The Poisson's ratio of the ${what} is too large for its two stiffnesses.`);
  }
}
