import { MechanicsError, computed, finite, notNegative } from '../error.js';

/** A part as a point: mass (kg) and station (m) along the centre line, tail 0, headstock beyond the body. */
export interface PointMass {
  readonly mass: number;
  readonly station: number;
}

export interface Balance {
  /** kg */
  readonly mass: number;
  /** m, from the tail */
  readonly station: number;
}

/** Total mass and balance point of parts. Throws when there are none or their mass is zero. */
export function balance(parts: readonly PointMass[]): Balance {
  let mass = 0;
  let moment = 0;
  for (const part of parts) {
    mass += notNegative('mass', part.mass);
    moment += part.mass * finite('station', part.station);
  }
  if (!(mass > 0)) throw new MechanicsError('mass', 'A balance point needs at least one part with mass.');
  return { mass: computed('mass', mass), station: computed('balance point', moment / mass) };
}
