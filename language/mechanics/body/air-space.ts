/** The air inside a body: its volume from outline, depths and domes. SI throughout. */
import type { Body } from './cutaway-outline.js';
import { MechanicsError, computed, positive } from '../error.js';
import { integrateAlong } from './half-widths.js';

export interface AirSpace {
  readonly body: Body;
  /** m, inside, on the centre line at the tail: between the undersides of top and back where they meet the sides */
  readonly tailDepth: number;
  /** m, inside, at the neck end */
  readonly neckDepth: number;
  /** m, radius of the sphere each plate is domed to; absent: flat */
  readonly topRadius?: number;
  readonly backRadius?: number;
  /** m³ of blocks, linings and braces inside; absent: none counted */
  readonly inside?: number;
}

/**
 * Volume (m³). Depth goes evenly from tail to neck; each dome is a sphere through both ends of the centre line, so
 * that it stands [x (L − x) − y²] / 2R above the straight line (shallow sphere: error below 0.1 % of the dome). Throws
 * on lengths not above zero and when the volume would vanish.
 */
export function airVolume(space: AirSpace): number {
  const { body } = space;
  const { length } = body.outline;
  const tail = positive('depth at the tail', space.tailDepth);
  const neck = positive('depth at the neck', space.neckDepth);
  const curvature = inverse(space.topRadius, 'top radius') + inverse(space.backRadius, 'back radius');
  const volume = integrateAlong(body.outline, (x, bass) => {
    const treble = body.trebleWidth(x);
    const flat = (tail + ((neck - tail) * x) / length) * (bass + treble);
    const dome = x * (length - x) * (bass + treble) - (bass ** 3 + treble ** 3) / 3;
    return flat + (curvature / 2) * dome;
  });
  const free = computed('air volume', volume - (space.inside ?? 0));
  if (free <= 0) throw new MechanicsError('air volume', 'What is inside the body takes up all its air.');
  return free;
}

function inverse(radius: number | undefined, quantity: string): number {
  return radius === undefined ? 0 : 1 / positive(quantity, radius);
}
