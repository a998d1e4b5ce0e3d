/** A plate that is not even: one number for its mass and one for its stiffness. SI throughout. */
import { type Body, bodyArea } from '../body/cutaway-outline.js';
import { MechanicsError, computed, positive } from '../error.js';

export interface EdgeTaper {
  /** m, over the middle of the plate */
  readonly centre: number;
  /** m, at the outline */
  readonly edge: number;
  /** m, width of the band along the outline over which thickness goes evenly from edge to centre */
  readonly band: number;
}

export interface TaperedPlate {
  /** m³ */
  readonly volume: number;
  /** m, volume over area */
  readonly mean: number;
  /** m, cube root of the mean of h³: the even plate with the same bending stiffness averaged over its area */
  readonly stiff: number;
}

/**
 * Volume and mean thicknesses of a plate of area `area` (m²) and outline length `perimeter` (m) whose thickness
 * depends only on the distance d from the outline. The strip at distance d has area (P − 2πd) dd (J. Steiner's formula
 * for inner parallel curves, exact while d is below every radius of the outline; within 1 % of volume on guitar
 * outlines with a 60 mm band). Throws if a length is not above zero or the band holds more area than the plate has.
 */
export function taperedPlate(taper: EdgeTaper, area: number, perimeter: number): TaperedPlate {
  positive('thickness', taper.centre);
  positive('edge thickness', taper.edge);
  positive('width of the thinned edge', taper.band);
  positive('area', area);
  const bandArea = positive('perimeter', perimeter) * taper.band - Math.PI * taper.band ** 2;
  if (bandArea > area || perimeter <= 2 * Math.PI * taper.band) {
    throw new MechanicsError('width of the thinned edge', 'The thinned edge is wider than the plate allows.');
  }
  const moment = (power: number): number =>
    taper.centre ** power * (area - bandArea) +
    bandIntegral((d) => (taper.edge + ((taper.centre - taper.edge) * d) / taper.band) ** power, taper.band, perimeter);
  const volume = computed('volume', moment(1));
  const stiff = computed('mean thickness', Math.cbrt(moment(3) / area));
  return { volume, mean: computed('mean thickness', volume / area), stiff };
}

/** ∫ f(d) (P − 2πd) dd over the band; three-point Gauss is exact for the polynomials of degree 4 met here. */
function bandIntegral(f: (d: number) => number, band: number, perimeter: number): number {
  const offset = Math.sqrt(0.6);
  const points: [number, number][] = [
    [-offset, 5 / 18],
    [0, 8 / 18],
    [offset, 5 / 18],
  ];
  return points.reduce((sum, [at, weight]) => {
    const d = (band / 2) * (1 + at);
    return sum + weight * band * f(d) * (perimeter - 2 * Math.PI * d);
  }, 0);
}

export interface MappedPoint {
  /** m: station and offset. */
  readonly at: readonly [number, number];
  /** m */
  readonly thickness: number;
}

/**
 * m at `(x, y)`, from thicknesses at some points: weighted by the inverse square of the distance (D. Shepard, Proc. 23rd ACM
 * National Conference, 1968, 517–524).
 */
export function thicknessBetween(points: readonly MappedPoint[], x: number, y: number): number {
  let sum = 0;
  let weights = 0;
  for (const { at, thickness } of points) {
    const squared = (x - at[0]) ** 2 + (y - at[1]) ** 2;
    if (squared < 1e-12) return thickness;
    sum += thickness / squared;
    weights += 1 / squared;
  }
  return sum / weights;
}

/** Stations and, at each, offsets at which a mapped plate is looked at: enough for a part in a thousand. */
const [STATIONS, OFFSETS] = [80, 40];

/** Volume and mean thicknesses of a plate of this outline, soundhole included. Throws if a thickness is not above zero. */
export function mappedPlate(points: readonly MappedPoint[], body: Body): TaperedPlate {
  for (const { thickness } of points) positive('thickness', thickness);
  const { length } = body.outline;
  const sums = { area: 0, volume: 0, cubes: 0 };
  for (let i = 0; i < STATIONS; i++) {
    const x = ((i + 0.5) * length) / STATIONS;
    const [bass, treble] = [body.bassWidth(x), body.trebleWidth(x)];
    const patch = ((length / STATIONS) * (bass + treble)) / OFFSETS;
    for (let j = 0; j < OFFSETS; j++) {
      const h = thicknessBetween(points, x, -bass + ((j + 0.5) * (bass + treble)) / OFFSETS);
      sums.area += patch;
      sums.volume += patch * h;
      sums.cubes += patch * h ** 3;
    }
  }
  const mean = computed('mean thickness', sums.volume / sums.area);
  return { volume: mean * bodyArea(body), mean, stiff: computed('mean thickness', Math.cbrt(sums.cubes / sums.area)) };
}
