/** A cutaway: the upper treble side taken back so that the hand reaches the high frets. SI throughout. */
import { MechanicsError, positive } from '../error.js';
import { integrateAlong, outlinePolyline, polylineLength, type Outline, type OutlinePoint } from './half-widths.js';
import type { PlanPoint } from './plan.js';

/** Venetian: a round horn. Florentine: a pointed one. */
export type CutawayKind = 'venetian' | 'florentine';

export interface Cutaway {
  readonly kind: CutawayKind;
  /** m, from the neck end back to the tip of the horn */
  readonly length: number;
  /** m, how far the treble edge is moved in at the neck end */
  readonly depth: number;
}

/** Half widths of a body whose two sides may differ. */
export interface Body {
  readonly outline: Outline;
  readonly cutaway?: Cutaway;
  /** m, bass side */
  bassWidth(x: number): number;
  /** m, treble side */
  trebleWidth(x: number): number;
}

/**
 * A body with or without a cutaway. A simple model of the shape: from the horn's tip to the neck end the treble edge
 * is no farther out than b_tip − depth · s(t), t = 0 … 1, with s = (1 − cos πt)/2 for the round horn and s = √(1 − (1
 * − t)²), a quarter ellipse that leaves the outline steeply, for the pointed one. No claim to any maker's shape; good
 * enough for area and volume. Throws when the cut is longer than half the body or reaches past the centre line.
 */
export function bodyWithCutaway(outline: Outline, cutaway?: Cutaway): Body {
  const bassWidth = (x: number): number => outline.halfWidth(x);
  if (!cutaway) return { outline, bassWidth, trebleWidth: bassWidth };
  const { length, depth, kind } = cutaway;
  if (positive('cutaway length', length) > outline.length / 2) {
    throw new MechanicsError('cutaway length', 'The cutaway is longer than half the body.');
  }
  const tip = outline.length - length;
  const widthAtTip = outline.halfWidth(tip);
  if (positive('cutaway depth', depth) >= widthAtTip) {
    throw new MechanicsError('cutaway depth', 'The cutaway would cut past the centre line.');
  }
  const trebleWidth = (x: number): number => {
    const full = outline.halfWidth(x);
    if (x <= tip) return full;
    const t = Math.min(1, (x - tip) / length);
    const share = kind === 'venetian' ? (1 - Math.cos(Math.PI * t)) / 2 : Math.sqrt(1 - (1 - t) ** 2);
    return Math.min(full, widthAtTip - depth * share);
  };
  return { outline, cutaway, bassWidth, trebleWidth };
}

/** Area (m²) of the plate, soundhole included. */
export function bodyArea(body: Body): number {
  return integrateAlong(body.outline, (x, b) => b + body.trebleWidth(x));
}

/** Length (m) around the plate, flat ends included. */
export function bodyPerimeter(body: Body): number {
  const { length } = body.outline;
  const flat = [0, length].reduce((sum, end) => sum + body.bassWidth(end) + body.trebleWidth(end), 0);
  const bass = outlinePolyline(body.outline, 800);
  return polylineLength(bass) + polylineLength(treblePolyline(body, 800)) + flat;
}

/**
 * The whole outline as a closed ring of 2 · `perSide` points, `[station, offset]`, bass side first; closer together towards
 * the ends, where it turns fastest. An end that is flat has two points, not one.
 */
export function bodyRing(body: Body, perSide: number): readonly PlanPoint[] {
  const { length } = body.outline;
  const stations = Array.from(
    { length: perSide - 1 },
    (_, i) => (length * (1 - Math.cos((Math.PI * (i + 1)) / perSide))) / 2,
  );
  const bass = stations.map((x): PlanPoint => [x, -body.bassWidth(x)]);
  const treble = stations.map((x): PlanPoint => [x, body.trebleWidth(x)]);
  return [...endOf(body, 0), ...bass, ...endOf(body, length), ...treble.reverse()];
}

/** In the order of the ring: at the tail from treble to bass, at the neck from bass to treble. */
function endOf(body: Body, x: number): readonly PlanPoint[] {
  const [bass, treble] = [body.bassWidth(x), body.trebleWidth(x)];
  if (!(bass > 0 && treble > 0)) return [[x, 0]];
  return x === 0
    ? [
        [x, treble],
        [x, -bass],
      ]
    : [
        [x, -bass],
        [x, treble],
      ];
}

/** The treble edge from tail to neck as `count` + 1 points, y counted from the centre line outwards. */
export function treblePolyline(body: Body, count = 100): OutlinePoint[] {
  return outlinePolyline(body.outline, count).map(({ x }) => ({ x, y: body.trebleWidth(x) }));
}
