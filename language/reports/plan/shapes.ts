/** Shapes that several parts of a drawing are made of. */
import type { Layer, LineType, Point, Shape } from './plan.js';

/** Its middle, its size along x and along y. */
export function rectangle(
  layer: Layer,
  line: LineType,
  part: string,
  middle: Point,
  [wide, high]: readonly [wide: number, high: number],
): Shape {
  return { kind: 'path', layer, line, part, points: corners(middle, wide, high), closed: true };
}

export function corners([x, y]: Point, wide: number, high: number): readonly Point[] {
  return [
    [x - wide / 2, y - high / 2],
    [x + wide / 2, y - high / 2],
    [x + wide / 2, y + high / 2],
    [x - wide / 2, y + high / 2],
  ];
}

export function stroke(layer: Layer, line: LineType, part: string, ...points: readonly Point[]): Shape {
  return { kind: 'path', layer, line, part, points, closed: false };
}
