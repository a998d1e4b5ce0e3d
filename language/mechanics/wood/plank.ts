/**
 * A plate or plank resting on two supports with a weight on it: the shop's deflection test, both ways. SI throughout.
 */
import { MechanicsError, computed, positive } from '../error.js';

export interface PlankTest {
  /** m, between the supports */
  readonly span: number;
  /** N */
  readonly load: number;
  /** m, distance of the load from one support; absent: mid-span */
  readonly loadAt?: number;
  /** m, distance of the dial gauge from the same support; absent: under the load */
  readonly readAt?: number;
  /** m, width of the plate at the test */
  readonly width: number;
  /** m */
  readonly thickness: number;
}

/**
 * Deflection (m) of a plank of modulus `modulus` (Pa, along the span) at the gauge: simple beam, load anywhere.
 * For x ≤ a: y = F b x (L² − b² − x²) / (6 L E I), with b = L − a and I = w h³ / 12.
 * Shear and the plate's sideways (anticlastic) bending are neglected: good to about 1 % for spans above 25 thicknesses
 * times √(E/G). Source: Young & Budynas, Roark's Formulas, Table 8.1 (from memory). Throws on a load off the span.
 */
export function plankDeflection(test: PlankTest, modulus: number): number {
  return computed('deflection', plankFlexibility(test) / positive('stiffness', modulus));
}

/** Young's modulus (Pa) along the span from the measured deflection (m). Same model and limits as `plankDeflection`. */
export function modulusFromPlank(test: PlankTest, deflection: number): number {
  return computed('stiffness', plankFlexibility(test) / positive('deflection', deflection));
}

/** Deflection times modulus (Pa·m): everything about the test but the wood. */
export function plankFlexibility(test: PlankTest): number {
  const span = positive('span', test.span);
  const secondMoment = (positive('width', test.width) * positive('thickness', test.thickness) ** 3) / 12;
  const loadAt = onSpan('place of the load', test.loadAt ?? span / 2, span);
  const readAt = onSpan('place of the gauge', test.readAt ?? loadAt, span);
  const [far, x] = readAt <= loadAt ? [span - loadAt, readAt] : [loadAt, span - readAt];
  const shape = (far * x * (span ** 2 - far ** 2 - x ** 2)) / (6 * span);
  return computed('deflection', (positive('load', test.load) * shape) / secondMoment);
}

function onSpan(quantity: string, place: number, span: number): number {
  if (!(place > 0 && place < span)) {
    throw new MechanicsError(quantity, `The ${quantity} must lie between the two supports.`);
  }
  return place;
}
