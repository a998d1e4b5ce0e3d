/** The lengths a maker's drawing of the plan tells, each where it is measured. */
import type { Ask } from '../../recipes/evaluation/evaluation.js';
import { saddleLine } from './bridge-view.js';
import { crossings } from './braces-view.js';
import { bridgeDrawn, type DrawnBrace, halfWidths, holeDrawn, inMm, stringEnds } from './drawn-from.js';
import { boardOf } from './neck-view.js';
import { direction } from './geometry.js';
import type { Dimension, Note, Point } from './plan.js';

export type Told = Dimension | Note;

export interface DimensionWords {
  /** mm as the shop writes a length in a drawing. */
  readonly length: (mm: number) => string;
  readonly angle: (rad: number) => string;
  readonly text: (english: string) => string;
}

/** A drawing of each; what cannot be told is left out by itself. */
export const PLAN_DIMENSIONS: readonly {
  readonly part: string;
  readonly of: (ask: Ask, words: DimensionWords) => readonly Told[];
}[] = [
  { part: 'body', of: bodyDimensions },
  { part: 'soundhole', of: holeDimensions },
  { part: 'scale', of: scaleDimensions },
  { part: 'bridge', of: bridgeDimensions },
  { part: 'saddle', of: saddleDimensions },
  { part: 'fingerboard', of: boardDimensions },
];

const BOUTS = ['lower-bout', 'waist', 'upper-bout'] as const;

function bodyDimensions(ask: Ask, { length: say }: DimensionWords): readonly Told[] {
  const length = inMm(ask, 'body.length');
  const widest = Math.max(...BOUTS.map((bout) => inMm(ask, `body.${bout}.width`))) / 2;
  const part = 'body';
  const widths = BOUTS.flatMap((bout, i): readonly Told[] => {
    const station = inMm(ask, `body.${bout}.station`);
    const width = inMm(ask, `body.${bout}.width`);
    const [bass, treble] = halfWidths(ask, station);
    const edge: Point = [-bass, station];
    return [
      // Widths lie on their stations, told in full even where a cutaway takes some of the treble side.
      {
        kind: 'length',
        from: edge,
        to: [Math.max(treble, width / 2), station],
        along: 'x',
        away: 0,
        text: say(width),
        part,
      },
      { kind: 'length', from: [0, 0], to: edge, along: 'y', away: widest + 14, row: i, text: say(station), part },
    ];
  });
  return [
    ...widths,
    {
      kind: 'length',
      from: [0, 0],
      to: [0, length],
      along: 'y',
      away: widest + 14,
      row: BOUTS.length,
      text: say(length),
      part,
    },
  ];
}

function holeDimensions(ask: Ask, { length: say }: DimensionWords): readonly Told[] {
  const { centre, half } = holeDrawn(ask);
  const widest = Math.max(...BOUTS.map((bout) => inMm(ask, `body.${bout}.width`))) / 2;
  const part = 'soundhole';
  const isRound = half[0] === half[1];
  const edge: Point = [centre[0] + half[0] * 0.707, centre[1] + half[1] * 0.707];
  const size = isRound ? `Ø ${say(2 * half[0])}` : `${say(2 * half[0])} × ${say(2 * half[1])}`;
  return [
    { kind: 'note', from: edge, at: [centre[0] + half[0] + 28, centre[1] + half[1] + 8], text: size, part },
    { kind: 'length', from: [0, 0], to: centre, along: 'y', away: -(widest + 14), text: say(centre[1]), part },
  ];
}

function scaleDimensions(ask: Ask, { length: say, text }: DimensionWords): readonly Told[] {
  const { nut, saddle, scale } = stringEnds(ask);
  const widest = Math.max(...BOUTS.map((bout) => inMm(ask, `body.${bout}.width`))) / 2;
  const x = 0;
  return [
    {
      ...{ kind: 'length', along: 'y', part: 'scale' },
      from: [x, saddle],
      to: [x, nut],
      away: -(widest + 14),
      row: 2,
      text: `${text('Scale')} ${say(scale)}`,
    },
    {
      ...{ kind: 'length', along: 'y', part: 'saddle' },
      from: [x, 0],
      to: [x, saddle],
      away: -(widest + 14),
      row: 1,
      text: say(saddle),
    },
  ];
}

function bridgeDimensions(ask: Ask, { length: say }: DimensionWords): readonly Told[] {
  const { middle, across, along } = bridgeDrawn(ask);
  const left = middle[0] - across / 2;
  return [
    {
      ...{ kind: 'length', along: 'x', part: 'bridge' },
      from: [left, middle[1] - along / 2],
      to: [left + across, middle[1] - along / 2],
      away: -10,
      text: say(across),
    },
    {
      ...{ kind: 'length', along: 'y', part: 'bridge' },
      from: [left, middle[1] - along / 2],
      to: [left, middle[1] + along / 2],
      away: 8,
      text: say(along),
    },
  ];
}

function saddleDimensions(ask: Ask, { angle, text }: DimensionWords): readonly Told[] {
  const { bass, treble } = saddleLine(ask);
  const slant = Math.atan2(treble[1] - bass[1], treble[0] - bass[0]);
  if (Math.abs(slant) < 1e-4) return [];
  const at: Point = [treble[0] + 34, treble[1] + 26];
  return [{ kind: 'note', from: treble, at, text: `${text('Saddle')} ${angle(slant)}`, part: 'saddle' }];
}

function boardDimensions(ask: Ask, { length: say, text }: DimensionWords): readonly Told[] {
  const { nut, half, end } = boardOf(ask);
  const join = ask.numberIf('neck.join-fret');
  const body = inMm(ask, 'body.length');
  return [
    {
      ...{ kind: 'length', along: 'x', part: 'nut' },
      from: [-half(nut), nut],
      to: [half(nut), nut],
      away: 14,
      text: say(2 * half(nut)),
    },
    {
      ...{ kind: 'length', along: 'x', part: 'fingerboard' },
      from: [-half(end), end],
      to: [half(end), end],
      away: -8,
      text: say(2 * half(end)),
    },
    ...(join === undefined
      ? []
      : [
          {
            ...({ kind: 'note', part: 'neck' } as const),
            from: [half(body), body] as const,
            at: [half(body) + 30, body + 14] as const,
            text: `${text('Fret')} ${Math.round(join)}`,
          },
        ]),
  ];
}

/** The angle of the two main braces that cross, on the side of the tail, and how far their crossing is from the tail. */
export function crossingDimensions(
  braces: readonly DrawnBrace[],
  { length: say, angle }: DimensionWords,
): readonly Told[] {
  const main = [...crossings(braces)].sort((a, b) => b.a.length + b.b.length - a.a.length - a.b.length)[0];
  if (!main) return [];
  const { a, b, at } = main;
  const [u, v] = [a, b].map(({ line }) => {
    const [first, last] = [line[0]!, line[line.length - 1]!];
    return first[1] < last[1] ? direction(at, first) : direction(at, last);
  }) as [Point, Point];
  const between = Math.acos(Math.max(-1, Math.min(1, u[0] * v[0] + u[1] * v[1])));
  return [
    { kind: 'note', from: at, at: [at[0] - 52, at[1] + 20], text: `${angle(between)} · ${say(at[1])}`, part: a.part },
  ];
}
