/** Height of a brace along its length, as it is carved. SI throughout; x is the distance from the brace's first end. */
import { MechanicsError, notNegative, positive } from '../error.js';

export interface BraceCarving {
  /** m */
  readonly length: number;
  /** m, full height */
  readonly height: number;
  /** Carved down towards the ends; absent: square-cut. */
  readonly ends?: {
    /** m, height left at the very end */
    readonly height: number;
    /** m, length of each taper */
    readonly length: number;
  };
  /** Scallops: hollows carved between the full heights. */
  readonly scallops?: readonly Scallop[];
  /** Heights at named places; when given, they replace `height` between the first and the last of them. */
  readonly stations?: readonly { readonly distance: number; readonly height: number }[];
}

export interface Scallop {
  /** m, where it is deepest */
  readonly at: number;
  /** m, height left there */
  readonly height: number;
  /** m, length of the hollow, half on each side */
  readonly length: number;
}

/**
 * Height (m) at distance x. Tapers and the stretches between named places are straight; a scallop is a cosine hollow.
 * Where several cuts meet, the lowest counts: wood once taken off stays off. Throws on lengths not above zero, heights
 * below zero, cuts higher than the brace, tapers that overlap and places off the brace.
 */
export function braceHeight(carving: BraceCarving): (x: number) => number {
  const length = positive('brace length', carving.length);
  const height = positive('brace height', carving.height);
  const { ends, scallops = [] } = carving;
  if (ends) {
    checkCut('height of the ends', ends.height, height);
    if (2 * positive('length of the tapered ends', ends.length) > length) {
      throw new MechanicsError('length of the tapered ends', 'The two tapered ends are longer than the brace.');
    }
  }
  for (const scallop of scallops) {
    checkCut('height of the scallop', scallop.height, height);
    positive('length of the scallop', scallop.length);
    checkPlace('place of the scallop', scallop.at, length);
  }
  const named = [...(carving.stations ?? [])].sort((a, b) => a.distance - b.distance);
  for (const station of named) {
    notNegative('height', station.height);
    checkPlace('place along the brace', station.distance, length);
  }
  return (x) => {
    let lowest = named.length > 0 ? between(named, x) : height;
    if (ends) {
      const fromEnd = Math.max(0, Math.min(x, length - x));
      if (fromEnd < ends.length) {
        lowest = Math.min(lowest, ends.height + ((height - ends.height) * fromEnd) / ends.length);
      }
    }
    for (const scallop of scallops) {
      const t = (x - scallop.at) / (scallop.length / 2);
      if (Math.abs(t) < 1) {
        lowest = Math.min(lowest, height - ((height - scallop.height) * (1 + Math.cos(Math.PI * t))) / 2);
      }
    }
    return lowest;
  };
}

function between(named: readonly { readonly distance: number; readonly height: number }[], x: number): number {
  const next = named.findIndex((station) => station.distance >= x);
  if (next === 0) return named[0]!.height;
  if (next < 0) return named[named.length - 1]!.height;
  const [a, b] = [named[next - 1]!, named[next]!];
  return a.height + ((b.height - a.height) * (x - a.distance)) / (b.distance - a.distance);
}

function checkCut(quantity: string, left: number, height: number): void {
  if (notNegative(quantity, left) > height) {
    throw new MechanicsError(quantity, `The ${quantity} is more than the height of the brace.`);
  }
}

function checkPlace(quantity: string, place: number, length: number): void {
  if (notNegative(quantity, place) > length) {
    throw new MechanicsError(quantity, `The ${quantity} is beyond the end of the brace.`);
  }
}
