/**
 * A side laid flat: how deep it is all along its edge, so that it can be cut before it is bent. The plates are parts of
 * spheres with their highest point over the middle of the body; the depths told for tail and neck hold at the two ends.
 */
import type { Ask } from '../../recipes/evaluation/evaluation.js';
import { inMm, inMmIf, outlineRing } from './drawn-from.js';
import { distance } from './geometry.js';
import type { Point } from './plan.js';

export interface SideOfBody {
  /** mm */
  readonly length: number;
  /** Height of the top over the plane through the two ends of its edge, at a place of the plan; mm. */
  readonly topAt: (p: Point) => number;
  /** From there to the back, mm. */
  readonly depthAt: (p: Point) => number;
}

export function sideOfBody(ask: Ask): SideOfBody {
  const length = inMm(ask, 'body.length');
  const [tail, neck] = [inMm(ask, 'body.depth.tail'), inMm(ask, 'body.depth.neck')];
  const rise = (radius: number | undefined) => (p: Point) => {
    if (radius === undefined) return 0;
    const fall = (r: number) => radius - Math.sqrt(Math.max(0, radius * radius - r * r));
    return fall(length / 2) - fall(Math.hypot(p[0], p[1] - length / 2));
  };
  const [top, back] = [rise(inMmIf(ask, 'body.top-radius')), rise(inMmIf(ask, 'body.back-radius'))];
  return {
    length,
    topAt: top,
    depthAt: (p) => tail + ((neck - tail) * p[1]) / length + top(p) + back(p),
  };
}

export interface UnrolledSide {
  /** Closed: along the top's edge, which is straight at the ends, and back along the back's. From the tail. */
  readonly ring: readonly Point[];
  /** mm, from the tail's centre line to the neck's */
  readonly length: number;
  readonly tailDepth: number;
  readonly neckDepth: number;
  /** Where bouts and waist come to lie: mm along the side. */
  readonly places: readonly { readonly name: 'lower-bout' | 'waist' | 'upper-bout'; readonly at: number }[];
}

/** The bass side, or the treble side, which differs where there is a cutaway. */
export function unrolledSide(ask: Ask, side: 'bass' | 'treble'): UnrolledSide {
  const { length, topAt, depthAt } = sideOfBody(ask);
  const ring = outlineRing(ask);
  const neck = ring.findIndex(([x, y]) => x === 0 && y >= length - 1e-6);
  const path = side === 'bass' ? ring.slice(0, neck + 1) : [ring[0]!, ...ring.slice(neck).reverse()];
  let along = 0;
  const walked = path.map((point, i) => {
    if (i > 0) along += distance(path[i - 1]!, point);
    return { point, along };
  });
  const upper = walked.map(({ point, along: at }): Point => [at, topAt(point)]);
  const lower = walked.map(({ point, along: at }): Point => [at, topAt(point) - depthAt(point)]);
  const places = (['lower-bout', 'waist', 'upper-bout'] as const).map((name) => {
    const station = inMm(ask, `body.${name}.station`);
    const next = walked.findIndex(({ point }) => point[1] >= station);
    return { name, at: walked[Math.max(0, next)]!.along };
  });
  return {
    ring: [...upper, ...lower.reverse()],
    length: along,
    tailDepth: depthAt([0, 0]),
    neckDepth: depthAt([0, length]),
    places,
  };
}
