/**
 * Wood and moisture. Moisture contents and relative humidities are fractions (0.08 = 8 %), temperatures are °C as in
 * the source's equations.
 */
import { between, computed, finite, notNegative, positive, MechanicsError } from '../error.js';

const percent = (bound: number): string => `${bound * 100} %`;

/**
 * Equilibrium moisture content (fraction) of wood at temperature `celsius` and relative humidity `humidity`
 * (fraction). Source: Wood Handbook FPL-GTR-190 (2010) Eq. 4-5 with the coefficients for °C; within 0.055 percentage
 * points of each of the 95 points of Table 4-2 read, which are printed to 0.1. Valid −1 … 130 °C and 0 … 0.98; used
 * down to −30 °C; throws outside −30 … 130 °C and 0 … 1.
 */
export function equilibriumMoisture(celsius: number, humidity: number): number {
  const t = between('temperature', celsius, -30, 130, (bound) => `${bound} °C`);
  const h = between('relative humidity', humidity, 0, 1, percent);
  const w = 349 + 1.29 * t + 0.0135 * t * t;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const kh = k * h;
  const dissolved = kh / (1 - kh);
  const hydrated = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
  return (18 / w) * (dissolved + hydrated);
}

/**
 * Relative humidity (fraction) in equilibrium with moisture content `moisture` (fraction): Eq. 4-5 solved by halving.
 */
export function humidityForMoisture(celsius: number, moisture: number): number {
  notNegative('moisture content', moisture);
  const wettest = equilibriumMoisture(celsius, 1);
  if (moisture > wettest) {
    throw new MechanicsError(
      'moisture content',
      `Air at this temperature cannot hold wood at more than ${(wettest * 100).toFixed(1)} % moisture.`,
    );
  }
  let [low, high] = [0, 1];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (equilibriumMoisture(celsius, middle) < moisture) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Moisture content (fraction) Mp at which drying begins to change strength and stiffness, of a species that is not listed.
 * Source: Wood Handbook FPL-GTR-282 (2021) Table 5-13.
 */
export const USUAL_INTERSECTION_MOISTURE = 0.25;

/**
 * A clear-wood property at moisture content `moisture` (fraction) from its values at 12 % and green, at room
 * temperature: P = P12 (P12/Pg)^((12−M)/(Mp−12)), constant above Mp. Source: Wood Handbook FPL-GTR-282 (2021) Eq. 5-3.
 * Not for work to maximum load, impact bending or tension across the grain. Data behind it end near 4 % moisture;
 * throws outside 0 … 1 and when Mp is not above 0.12.
 */
export function propertyAtMoisture(
  at12: number,
  green: number,
  moisture: number,
  intersection = USUAL_INTERSECTION_MOISTURE,
): number {
  positive('property at 12 % moisture', at12);
  positive('property of green wood', green);
  between('moisture content', moisture, 0, 1, percent);
  if (!(finite('intersection moisture', intersection) > 0.12)) {
    throw new MechanicsError('intersection moisture', 'The intersection moisture content must be above 12 %.');
  }
  if (moisture >= intersection) return green;
  return computed('property', at12 * (at12 / green) ** ((0.12 - moisture) / (intersection - 0.12)));
}

/** Factor by which a property changes between two moisture contents, by the same equation. */
export function moistureFactor(
  at12: number,
  green: number,
  from: number,
  to: number,
  intersection = USUAL_INTERSECTION_MOISTURE,
): number {
  return propertyAtMoisture(at12, green, to, intersection) / propertyAtMoisture(at12, green, from, intersection);
}

/**
 * Change of a dimension (m) between two moisture contents (fractions): ΔD = D C ΔM, with `coefficient` as the table
 * prints it, per per cent of moisture (about 0.0015 radial, 0.0026 tangential for spruce). Source: Wood Handbook
 * FPL-GTR-190 (2010) Eq. 13-2 and Table 13-5, for 6 … 14 %; used beyond, where it stays within a tenth down to 4 %.
 * Throws outside 0 … 0.30.
 */
export function movement(dimension: number, coefficient: number, from: number, to: number): number {
  between('moisture content', from, 0, 0.3, percent);
  between('moisture content', to, 0, 0.3, percent);
  const strain = between('movement coefficient', coefficient, 0, 0.02) * 100 * (to - from);
  return computed('movement', positive('dimension', dimension) * strain);
}

/**
 * Movement coefficient (per per cent of moisture) from the total shrinkage green to ovendry, for a species the table
 * does not list: the even shrinkage of Eq. 4-9 below fibre saturation F, told on the dimension at 10 % moisture: C =
 * (S0 / 100F) / (1 − S0 (F − 0.10)/F). With F = 0.30 it gives Table 13-5 from Table 4-3 to the last digit for native
 * woods; woods rich in extractives (redwood, western redcedar) need F = 0.22, tropical ones may be lower still.
 */
export function movementCoefficient(totalShrinkage: number, fibreSaturation = 0.3): number {
  between('total shrinkage', totalShrinkage, 0, 0.5, percent);
  between('fibre saturation point', fibreSaturation, 0.1, 0.5, percent);
  const perPercent = totalShrinkage / (100 * fibreSaturation);
  return perPercent / (1 - (totalShrinkage * (fibreSaturation - 0.1)) / fibreSaturation);
}
