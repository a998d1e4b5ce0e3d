/**
 * Neck angle and action from a few heights. SI throughout, angles in rad. Straight-line geometry; relief is a shallow
 * parabola.
 */
import { MechanicsError, computed, finite, notNegative, positive } from '../error.js';
import { fretPlace } from './frets.js';

/**
 * Angle (rad, positive: neck tilted back) between neck and top from the height of a straightedge on the frets above
 * the top: `atJoin` at the body join, `atBridge` at the bridge, `distance` between the two (m).
 */
export function neckAngle(atJoin: number, atBridge: number, distance: number): number {
  const rise = finite('height at the bridge', atBridge) - finite('height at the join', atJoin);
  return Math.atan2(rise, positive('distance from join to bridge', distance));
}

export interface Setup {
  /** m */
  readonly scale: number;
  /**
   * m, underside of the string above the plane of the frets at the nut (absent: as over the frets, 0.4 mm, common
   * practice)
   */
  readonly atNut?: number;
  /** m, underside of the string above the plane of the frets, carried on to the saddle */
  readonly atSaddle: number;
  /** m, bow of the neck at its deepest; absent: straight */
  readonly relief?: number;
  /** Fret at the body join, where the bow ends; absent: 14 */
  readonly joinFret?: number;
}

/**
 * Action (m): string above a fret. The string is straight from nut to saddle; the bow is a parabola from nut to join
 * with the relief as its depth, and the frets beyond the join lie in the plane of the heights.
 */
export function actionAt(setup: Setup, fret: number): number {
  const { scale, relief = 0, joinFret = 14, atNut = 0.0004 } = setup;
  notNegative('string height at the nut', atNut);
  positive('string height at the saddle', setup.atSaddle);
  notNegative('relief', relief);
  if (!Number.isInteger(joinFret) || joinFret < 8 || joinFret > 20) {
    throw new MechanicsError('join fret', 'The body join lies at a fret from 8 to 20.');
  }
  const x = fretPlace(scale, fret);
  const join = fretPlace(scale, joinFret);
  const straight = atNut + ((setup.atSaddle - atNut) * x) / scale;
  const bow = x < join ? (4 * relief * x * (join - x)) / join ** 2 : 0;
  return computed('action', straight + bow);
}

/**
 * Height at the saddle (m) above the plane of the frets that gives action `action` (m) at `fret`, the rest as in
 * `setup`.
 */
export function saddleHeightForAction(setup: Omit<Setup, 'atSaddle'>, action: number, fret = 12): number {
  const { scale } = setup;
  const share = fretPlace(scale, fret) / scale;
  if (share <= 0) throw new MechanicsError('fret', 'Action is set at a fret above the nut.');
  const flat = actionAt({ ...setup, atSaddle: 1 }, fret) - share;
  const height = computed('height at the saddle', (positive('action', action) - flat) / share);
  if (height <= 0) throw new MechanicsError('action', 'With this relief and nut the strings cannot come so low.');
  return height;
}

/**
 * String height over the top at the saddle (m): the straightedge's height over the top there plus the string's above
 * it.
 */
export function stringHeightOverTop(straightedgeAtSaddle: number, atSaddle: number): number {
  return positive(
    'string height over the top',
    finite('straightedge height', straightedgeAtSaddle) + finite('string height at the saddle', atSaddle),
  );
}
