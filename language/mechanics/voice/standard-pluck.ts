/**
 * The one pluck by which instruments are compared: the string is drawn straight up from the top with 5 N at 120 mm from the
 * saddle, and let go. A real player does something else; this is the same for all.
 */
import { positive } from '../error.js';

/** N and m */
export const STANDARD_PLUCK = { force: 5, fromSaddle: 0.12 } as const;

/**
 * Amplitude (N) of the force of partial `number` on an unmoving saddle: (2F/nπ) sin(nπd/L), the Fourier series of a string
 * of sounding length `length` (m) released from a corner. Textbook; whatever the string's weight and tension.
 */
export function pluckForce(length: number, number: number): number {
  const { force, fromSaddle } = STANDARD_PLUCK;
  return (
    (2 * force * Math.sin((number * Math.PI * fromSaddle) / positive('sounding length', length))) / (number * Math.PI)
  );
}
