/**
 * What moving from one climate to another does to a piece of wood once it has settled. Temperatures °C, the rest SI
 * and fractions.
 */
import { equilibriumMoisture, moistureFactor, movement, USUAL_INTERSECTION_MOISTURE } from './moisture.js';

export interface Climate {
  readonly celsius: number;
  /** fraction */
  readonly humidity: number;
}

export interface WoodInClimate {
  /** m, across the grain in the plate's plane */
  readonly width: number;
  /** m */
  readonly thickness: number;
  /** per per cent of moisture, in the plane (radial when quartersawn) */
  readonly widthCoefficient: number;
  /** per per cent of moisture, through the thickness */
  readonly thicknessCoefficient: number;
  /** Pa, bending modulus at 12 % and green; absent: the change of stiffness is not computed */
  readonly at12?: number;
  readonly green?: number;
  /** fraction; absent: 0.25 */
  readonly intersection?: number;
}

export interface ClimateChange {
  /** fractions */
  readonly moistureFrom: number;
  readonly moistureTo: number;
  /** m, positive: wider */
  readonly width: number;
  readonly thickness: number;
  /** new over old; length along the grain does not move */
  readonly mass: number;
  readonly stiffness?: number;
  /** E h³, bending stiffness along the grain, new over old */
  readonly bending?: number;
}

/**
 * Change from one climate to another: moisture by Wood Handbook Eq. 4-5, movement by Table 13-5, mass (1 + M₂)/(1 +
 * M₁), stiffness by Eq. 5-3 (room temperature; the small effect of temperature itself on E is left out).
 */
export function climateChange(wood: WoodInClimate, from: Climate, to: Climate): ClimateChange {
  const moistureFrom = equilibriumMoisture(from.celsius, from.humidity);
  const moistureTo = equilibriumMoisture(to.celsius, to.humidity);
  const thickness = movement(wood.thickness, wood.thicknessCoefficient, moistureFrom, moistureTo);
  const stiffness =
    wood.at12 === undefined || wood.green === undefined
      ? undefined
      : moistureFactor(
          wood.at12,
          wood.green,
          moistureFrom,
          moistureTo,
          wood.intersection ?? USUAL_INTERSECTION_MOISTURE,
        );
  return {
    moistureFrom,
    moistureTo,
    width: movement(wood.width, wood.widthCoefficient, moistureFrom, moistureTo),
    thickness,
    mass: (1 + moistureTo) / (1 + moistureFrom),
    stiffness,
    bending: stiffness === undefined ? undefined : stiffness * (1 + thickness / wood.thickness) ** 3,
  };
}
