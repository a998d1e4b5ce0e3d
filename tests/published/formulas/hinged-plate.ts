/**
 * A rectangular orthotropic plate hinged along all edges: the one plate whose modes and deflections have a closed
 * form.
 */
import { computed, notNegative, positive, MechanicsError } from '../../../language/mechanics/error.js';
import type { PlateBending } from '../../../language/mechanics/wood/orthotropic-plate.js';

/**
 * Frequency (Hz) of the mode with `m` half-waves along the grain (side `length`, m) and `n` across (side `width`, m):
 * f = (π/2) √{[D11 (m/a)⁴ + 2 (D12 + 2 D66)(m/a)²(n/b)² + D22 (n/b)⁴] / ρh}. Thin-plate theory: no shear, no rotary
 * inertia. Source: A.W. Leissa, Vibration of Plates, NASA SP-160, Eq. 9.25 (from memory).
 */
export function hingedFrequency(
  bending: PlateBending,
  massPerArea: number,
  length: number,
  width: number,
  m: number,
  n: number,
): number {
  const stiffness = modalStiffness(bending, length, width, halfWaves(m), halfWaves(n));
  return computed('frequency', (Math.PI / 2) * Math.sqrt(stiffness / positive('mass per area', massPerArea)));
}

/**
 * Centre deflection (m) under a uniform pressure (Pa): Navier's double sine series, odd terms up to `terms`.
 * Source: S. Timoshenko & S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959, art. 30 and 85.
 */
export function hingedUniformDeflection(
  bending: PlateBending,
  pressure: number,
  length: number,
  width: number,
  terms = 61,
): number {
  return oddSum(terms, (m, n) => {
    const sign = (m + n) % 4 === 2 ? 1 : -1;
    return (
      (16 * positive('pressure', pressure) * sign) /
      (Math.PI ** 6 * m * n * modalStiffness(bending, length, width, m, n))
    );
  });
}

/** Centre deflection (m) under a point load (N) at the centre: same series and source, art. 34. */
export function hingedPointDeflection(
  bending: PlateBending,
  load: number,
  length: number,
  width: number,
  terms = 401,
): number {
  const scale =
    (4 * notNegative('load', load)) / (Math.PI ** 4 * positive('length', length) * positive('width', width));
  return oddSum(terms, (m, n) => scale / modalStiffness(bending, length, width, m, n));
}

function modalStiffness(bending: PlateBending, length: number, width: number, m: number, n: number): number {
  const p = (m / positive('length', length)) ** 2;
  const q = (n / positive('width', width)) ** 2;
  return bending.along * p * p + 2 * (bending.coupling + 2 * bending.twist) * p * q + bending.across * q * q;
}

function oddSum(terms: number, term: (m: number, n: number) => number): number {
  let sum = 0;
  for (let m = 1; m <= terms; m += 2) for (let n = 1; n <= terms; n += 2) sum += term(m, n);
  return computed('deflection', sum);
}

function halfWaves(count: number): number {
  if (!Number.isInteger(count) || count < 1) {
    throw new MechanicsError('mode number', 'A mode number is a whole number from 1 up.');
  }
  return count;
}
