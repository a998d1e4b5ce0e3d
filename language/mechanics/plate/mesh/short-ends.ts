/** Ends of braces that stop a little short of the outline or of a hole. */
import type { Layout } from './mesh-lines.js';
import type { Point } from '../model.js';
import { signedArea } from './polygon.js';

/**
 * The piece of plate between such an end and the curve bends sharply, and the first modes hang on it: 2 mm less of it is 1 to 3 % more
 * in frequency. So it is divided alike on every mesh: in squares of one size beside the end.
 */
export interface ShortEnd {
  readonly end: Point;
  /** Along the curve there, and from the end into the brace. */
  readonly tangent: Point;
  readonly along: Point;
  /** 0 outline, 1… holes, and the distance along it of the foot. */
  readonly curve: number;
  readonly s: number;
  /** m, from the end to the foot. */
  readonly gap: number;
  /** m, side of the squares before they are divided. */
  readonly size: number;
}

/** Of the plate's size: 14 mm on a guitar. Divided once, it gives nodes about a brace's width apart. */
const SQUARE = 0.038;
/** Farther from the curve, in squares, an end is no short one. */
const FARTHEST = 1.8;

export function shortEndsOf({ ribs, outline, holes }: Layout): readonly ShortEnd[] {
  const curves = [outline, ...holes];
  const square = SQUARE * Math.sqrt(signedArea(outline.points));
  return ribs.flatMap(({ points }) =>
    [points, [...points].reverse()].flatMap(([end, next]) => {
      const [x, y] = end!;
      const near = curves
        .map((curve, index) => ({ ...curve.nearest(x, y), curve: index }))
        .reduce((best, each) => (each.distance < best.distance ? each : best));
      const gap = near.distance;
      if (gap === 0 || gap > FARTHEST * square) return [];
      const [fx, fy] = curves[near.curve]!.at(near.s);
      const length = Math.hypot(next![0] - x, next![1] - y);
      return [
        {
          end: end!,
          tangent: [(y - fy) / gap, (fx - x) / gap] as const,
          along: [(next![0] - x) / length, (next![1] - y) / length] as const,
          curve: near.curve,
          s: near.s,
          gap,
          size: square,
        },
      ];
    }),
  );
}
