/** Five tops with knobs, to be moved in small steps. Sizes are common practice for their kind. */
import type { Brace, Point, TopModel } from '../../../../language/mechanics/plate/index.js';
import { bridgeParts, guitarOutline, HELD, spruce } from '../reference-tops.js';

type Line = readonly [x0: number, y0: number, x1: number, y1: number];

/** mm */
export interface Knobs {
  readonly holeDiameter: number;
  readonly holeStation: number;
  readonly bridgeStation: number;
  /** Half of the bridge plate's length across, and how far it reaches in front of the bridge's middle. */
  readonly plateHalf: number;
  readonly plateAhead: number;
  readonly lines: readonly Line[];
}

export interface MovableTop {
  readonly name: string;
  readonly base: Knobs;
  readonly make: (knobs: Knobs) => TopModel;
}

interface Sizes {
  readonly lines: readonly Line[];
  readonly widths: readonly number[];
  readonly heights: readonly number[];
  readonly hole?: number;
  readonly half?: number;
}

const metres = (points: readonly (readonly [number, number])[]): readonly Point[] =>
  points.map(([x, y]) => [x / 1000, y / 1000]);

const block = (x0: number, x1: number, half: number): readonly Point[] =>
  metres([
    [x0, -half],
    [x1, -half],
    [x1, half],
    [x0, half],
  ]);

function movable(name: string, { lines, widths, heights, hole = 90, half = 75 }: Sizes): MovableTop {
  const base = { holeDiameter: hole, holeStation: 335, bridgeStation: 155, plateHalf: half, plateAhead: 25, lines };
  const make = (knobs: Knobs): TopModel => ({
    outline: guitarOutline,
    holes: [{ centre: [knobs.holeStation / 1000, 0], diameter: knobs.holeDiameter / 1000 }],
    plate: { wood: spruce, thickness: 0.0028, grain: 0 },
    braces: knobs.lines.map(([x0, y0, x1, y1], i): Brace => {
      const axis = metres([
        [x0, y0],
        [x1, y1],
      ]);
      const [width, height] = [widths[i]! / 1000, heights[i]! / 1000];
      return { name: `brace ${i + 1}`, axis, wood: spruce, profile: 'rectangular', width, height };
    }),
    patches: [
      {
        ...bridgeParts[0]!,
        outline: block(knobs.bridgeStation - 25, knobs.bridgeStation + knobs.plateAhead, knobs.plateHalf),
      },
      { ...bridgeParts[1]!, outline: block(knobs.bridgeStation - 14, knobs.bridgeStation + 14, 75) },
    ],
    edge: HELD,
    load: { patch: 'bridge', couple: 8.76 },
  });
  return { name, base, make };
}

const mirrored = ([x0, y0, x1, y1]: Line): Line => [x0, -y0, x1, -y1];
const both = (line: Line): readonly Line[] => [line, mirrored(line)];

const xLines: readonly Line[] = [...both([104, 173.4, 360, -105.68]), [115, -120, 41, 119], [410, -115, 410, 115]];
const xSizes = { lines: xLines, widths: [8, 8, 6, 8], heights: [14, 14, 10, 12] };

export const FIVE_TOPS: readonly MovableTop[] = [
  movable('X', xSizes),
  movable('X through the hole', { ...xSizes, hole: 116 }),
  movable('ladder', {
    lines: [
      [60, -150, 60, 150],
      [215, -130, 215, 130],
      [275, -105, 275, 105],
      [400, -125, 400, 125],
    ],
    widths: [7, 8, 8, 8],
    heights: [12, 14, 14, 13],
    half: 90,
  }),
  movable('seven fans', {
    lines: [
      [40, 0, 270, 0],
      ...both([40, 30, 270, 14]),
      ...both([48, 62, 268, 30]),
      ...both([62, 96, 262, 48]),
      [280, -102, 280, 102],
      [396, -120, 396, 120],
    ],
    widths: [4.5, 4.5, 4.5, 4.5, 4.5, 4.5, 4.5, 7, 8],
    heights: [5, 5, 5, 5, 5, 5, 5, 14, 14],
    half: 80,
  }),
  movable('lattice of six', {
    lines: [
      ...both([60, -100, 240, 80]),
      ...both([100, -150, 270, 20]),
      ...both([40, -40, 200, 120]),
      [290, -100, 290, 100],
    ],
    widths: [4, 4, 4, 4, 4, 4, 7],
    heights: [7, 7, 7, 7, 7, 7, 14],
    half: 80,
  }),
];

const withLine = (knobs: Knobs, index: number, move: Line): Knobs => ({
  ...knobs,
  lines: knobs.lines.map((line, i) =>
    i === index ? [line[0] + move[0], line[1] + move[1], line[2] + move[2], line[3] + move[3]] : line,
  ),
});

/** What is moved, by `d` mm. */
export const MOVES: Readonly<Record<string, (knobs: Knobs, d: number) => Knobs>> = {
  'hole diameter': (knobs, d) => ({ ...knobs, holeDiameter: knobs.holeDiameter + d }),
  'hole station': (knobs, d) => ({ ...knobs, holeStation: knobs.holeStation + d }),
  'bridge station': (knobs, d) => ({ ...knobs, bridgeStation: knobs.bridgeStation + d }),
  'bridge plate, length': (knobs, d) => ({ ...knobs, plateHalf: knobs.plateHalf + d }),
  'bridge plate, reach ahead': (knobs, d) => ({ ...knobs, plateAhead: knobs.plateAhead + 0.6 * d }),
  'first brace, first end': (knobs, d) => withLine(knobs, 0, [0, d / 2, 0, 0]),
  'first brace, second end': (knobs, d) => withLine(knobs, 0, [0, 0, 0, d]),
  'last brace, sideways': (knobs, d) => withLine(knobs, knobs.lines.length - 1, [d, 0, d, 0]),
};
