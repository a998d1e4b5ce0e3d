/**
 * Statics of the strings at saddle and bridge. Design aids: none of these figures shows that a joint or a top will
 * hold. SI throughout.
 */
import { between, computed, finite, notNegative, positive } from '../error.js';

/**
 * Couple (N·m) that the strings put on the top: total tension (N) times their height over the top at the saddle (m).
 */
export function bridgeCouple(tension: number, heightOverTop: number): number {
  return computed(
    'bridge couple',
    positive('string tension', tension) * positive('string height over the top', heightOverTop),
  );
}

/**
 * Angle (rad) by which the string drops behind the saddle towards pin or tie hole, below the line of the top:
 * atan(rise / run), from the height of the saddle's crown above the hole's edge (m) and the distance between them (m).
 */
export function pinAngle(rise: number, run: number): number {
  return Math.atan2(
    notNegative('height of the saddle over the pin hole', rise),
    positive('distance from saddle to pin', run),
  );
}

export interface SaddleForces {
  /** rad, between the string before and behind the saddle */
  readonly breakAngle: number;
  /** N, onto the saddle, square to the top */
  readonly down: number;
  /** N, on the saddle towards the nut: it leans that way when positive */
  readonly forward: number;
}

/**
 * Forces on the saddle from strings of `tension` (N) that come in `playing` (rad) below the horizontal on the side of
 * the nut and leave `behind` (rad) below it: down = T (sin p + sin b), forward = T (cos p − cos b). No friction in the
 * slot. Angles 0 … 80°.
 */
export function saddleForces(tension: number, behind: number, playing = 0): SaddleForces {
  positive('string tension', tension);
  const limit = (80 * Math.PI) / 180;
  const degrees = (bound: number): string => `${Math.round((bound * 180) / Math.PI)}°`;
  between('angle behind the saddle', behind, 0, limit, degrees);
  between('angle before the saddle', playing, 0, limit, degrees);
  return {
    breakAngle: behind + playing,
    down: computed('force on the saddle', tension * (Math.sin(playing) + Math.sin(behind))),
    forward: tension * (Math.cos(playing) - Math.cos(behind)),
  };
}

export interface GlueFace {
  /** m, across the strings */
  readonly length: number;
  /** m, along the strings */
  readonly width: number;
}

export interface GlueLine {
  /** Pa, mean over the footprint */
  readonly shear: number;
  /** Pa, pulling the rear edge off, if the bridge stays flat */
  readonly peel: number;
}

/**
 * Mean shear T / (l w) on the glue line and the pull at its rear edge 6 M / (l w²) from the couple M = T h about the
 * joint, the stress varying evenly from neck side to tail side. A stiff bridge on a stiff top; a real top gives and
 * moves the peak.
 */
export function bridgeGlueLine(face: GlueFace, tension: number, heightOverJoint: number): GlueLine {
  const area = positive('bridge length', face.length) * positive('bridge width', face.width);
  const pull = positive('string tension', tension);
  return {
    shear: computed('shear on the glue', pull / area),
    peel: computed(
      'pull at the rear edge',
      (6 * pull * notNegative('string height over the top', heightOverJoint)) / (area * face.width),
    ),
  };
}

/**
 * Moment (N·m, positive: its top towards the neck) on the block of a bridge whose strings are anchored by pins under
 * the top: T (1 − cos b) h + T sin b · a, with b the angle behind the saddle (rad), h the string height over the top
 * (m) and a how far the saddle stands towards the neck from the middle of the footprint (m, negative: behind it). The
 * rest of the couple T h reaches the top through the bridge plate. With the strings tied to the bridge itself the
 * block takes the whole couple: `bridgeCouple`.
 */
export function pinBridgeTipping(tension: number, behind: number, heightOverTop: number, saddleAhead: number): number {
  const { down, forward } = saddleForces(tension, behind);
  const lean = forward * positive('string height over the top', heightOverTop);
  return computed('tipping', lean + down * finite('place of the saddle', saddleAhead));
}
