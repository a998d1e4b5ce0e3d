/** How a dimension is drawn, after ISO 129-1: extension lines, the line with its arrowheads, the figure. mm. */
import { direction, distance, moved } from './geometry.js';
import type { Dimension, Label, Note, Point, Shape } from './plan.js';

/** Height of figures, and what else goes with it: ISO 3098 has 2.5 mm and 3.5 mm. */
const FIGURE = 3.5;
const ARROW = 3;
/** The gap before an extension line begins, and how far it passes the line. */
const GAP = 1;
const BEYOND = 2;
/** From one line to the next beside it. */
const ROW = 7;

export interface DrawnDimension {
  readonly shapes: readonly Shape[];
  readonly labels: readonly Label[];
}

/** `scale`: of the paper; figures and arrows keep their size on it. */
export function dimensionLines(dimension: Dimension | Note, scale = 1): DrawnDimension {
  return dimension.kind === 'note' ? noteLines(dimension, scale) : lengthLines(dimension, scale);
}

function lengthLines(dimension: Dimension, scale: number): DrawnDimension {
  const { from, to, along, text, part, row = 0 } = dimension;
  const size = 1 / scale;
  const away = dimension.away + Math.sign(dimension.away) * row * ROW * size;
  const way = wayOf(from, to, along);
  const side: Point = [-way[1], way[0]];
  const level = side[0] * from[0] + side[1] * from[1] + away;
  const onLine = (p: Point): Point => {
    const lift = level - (side[0] * p[0] + side[1] * p[1]);
    return [p[0] + side[0] * lift, p[1] + side[1] * lift];
  };
  const [a, b] = [onLine(from), onLine(to)];
  const stroke = (points: readonly Point[]): Shape => ({
    ...{ kind: 'path', layer: 'dimensions', line: 'thin', closed: false },
    ...(part === undefined ? {} : { part }),
    points,
  });
  const extension = (p: Point, end: Point): readonly Shape[] => {
    const long = distance(p, end);
    if (long < GAP * size) return [];
    const out = direction(p, end);
    return [
      stroke([
        moved(p, [out[0] * GAP * size, out[1] * GAP * size]),
        moved(end, [out[0] * BEYOND * size, out[1] * BEYOND * size]),
      ]),
    ];
  };
  // Where there is no room between them the arrows stand outside and point in.
  const isTight = distance(a, b) < (3 * ARROW + FIGURE) * size;
  const inwards: Point = isTight ? [-way[0], -way[1]] : way;
  const outwards: Point = [-inwards[0], -inwards[1]];
  const tail = (p: Point, d: Point): Point => moved(p, [d[0] * 2.5 * ARROW * size, d[1] * 2.5 * ARROW * size]);
  const line = isTight ? [tail(a, [-way[0], -way[1]]), tail(b, way)] : [a, b];
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const turned = upright((Math.atan2(way[1], way[0]) * 180) / Math.PI);
  const up = (turned * Math.PI) / 180;
  const lift = 1 * size;
  return {
    shapes: [
      ...extension(from, a),
      ...extension(to, b),
      stroke(line),
      stroke(arrow(a, inwards, size)),
      stroke(arrow(b, outwards, size)),
    ],
    labels: [
      {
        layer: 'dimensions',
        at: [middle[0] - Math.sin(up) * lift, middle[1] + Math.cos(up) * lift],
        text,
        height: FIGURE * size,
        anchor: 'middle',
        turned,
        ...(part === undefined ? {} : { part }),
      },
    ],
  };
}

function noteLines({ at, from, text, part }: Note, scale: number): DrawnDimension {
  const size = 1 / scale;
  const isLeft = at[0] < from[0];
  const shelf: Point = [at[0] + (isLeft ? -3 : 3) * size, at[1]];
  const named = part === undefined ? {} : { part };
  const stroke = { kind: 'path', layer: 'dimensions', line: 'thin', closed: false, ...named } as const;
  return {
    shapes: [
      { ...stroke, points: [from, at, shelf] },
      { ...stroke, points: arrow(from, direction(from, at), size) },
    ],
    labels: [
      {
        layer: 'dimensions',
        at: [shelf[0] + (isLeft ? -1 : 1) * size, at[1] - 1.2 * size],
        text,
        height: FIGURE * size,
        anchor: isLeft ? 'end' : 'start',
        ...named,
      },
    ],
  };
}

/** Its point at `tip`, its back towards `back`: open, 30° wide. */
function arrow(tip: Point, back: Point, size: number): readonly Point[] {
  const half = (15 * Math.PI) / 180;
  const wing = (turn: number): Point => [
    tip[0] + ARROW * size * (back[0] * Math.cos(turn) - back[1] * Math.sin(turn)),
    tip[1] + ARROW * size * (back[0] * Math.sin(turn) + back[1] * Math.cos(turn)),
  ];
  return [wing(half), tip, wing(-half)];
}

function wayOf(from: Point, to: Point, along: 'x' | 'y' | undefined): Point {
  if (along === 'x') return [to[0] < from[0] ? -1 : 1, 0];
  if (along === 'y') return [0, to[1] < from[1] ? -1 : 1];
  return direction(from, to);
}

/** Readable from below or from the right. */
function upright(degrees: number): number {
  const turned = ((degrees % 360) + 360) % 360;
  return turned > 90.001 && turned <= 270.001 ? turned - 180 : turned > 270.001 ? turned - 360 : turned;
}
