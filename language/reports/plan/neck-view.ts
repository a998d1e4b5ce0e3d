/** Neck, fingerboard with its frets to the last, nut, head and strings in the plan. */
import { fretPlace } from '../../mechanics/strings/frets.js';
import type { Ask } from '../../recipes/evaluation/evaluation.js';
import { holeDrawn, inMm, inMmIf, mmOf, stringEnds } from './drawn-from.js';
import { saddleLine } from './bridge-view.js';
import type { Point, Shape } from './plan.js';
import { corners, stroke } from './shapes.js';

export interface Board {
  readonly nut: number;
  /** Station of its end on the body. */
  readonly end: number;
  /** Half width at a station. */
  readonly half: (station: number) => number;
  readonly frets: number;
}

/** Straight edges from the nut through its width at the twelfth fret, or to its end. */
export function boardOf(ask: Ask): Board {
  const { nut, scale } = stringEnds(ask);
  const frets = Math.round(ask.number('frets.count'));
  const at = (fret: number) => nut - mmOf(fretPlace(scale / 1000, fret));
  const atNut = inMm(ask, 'nut.width') / 2;
  // It ends where one more fret would stand, and never in the soundhole. (common practice)
  const next = at(frets + 1);
  const hole = edgeOfHole(ask);
  const end = hole !== undefined && hole < at(frets) ? Math.max(next, hole) : next;
  const twelfth = inMmIf(ask, 'fingerboard.width.fret-12');
  const last = inMmIf(ask, 'fingerboard.width.end');
  const slope =
    twelfth !== undefined
      ? (twelfth / 2 - atNut) / (nut - at(12))
      : last !== undefined
        ? (last / 2 - atNut) / (nut - end)
        : (inMm(ask, 'fingerboard.width.fret-12') / 2 - atNut) / (nut - at(12));
  return { nut, end, frets, half: (station) => atNut + slope * (nut - station) };
}

function edgeOfHole(ask: Ask): number | undefined {
  try {
    const { centre, half } = holeDrawn(ask);
    return centre[1] + half[1];
  } catch {
    return undefined;
  }
}

export function boardShapes(ask: Ask): readonly Shape[] {
  const { nut, end, half } = boardOf(ask);
  return [
    {
      ...{ kind: 'path', layer: 'neck', line: 'visible', part: 'fingerboard', closed: true },
      points: [
        [-half(end), end],
        [half(end), end],
        [half(nut), nut],
        [-half(nut), nut],
      ],
    },
  ];
}

/** Each fret as its line; the one at the body wide. Fanned ones slant between the scales of the outer strings. */
export function fretShapes(ask: Ask): readonly Shape[] {
  const board = boardOf(ask);
  const join = ask.numberIf('neck.join-fret');
  return Array.from({ length: board.frets }, (_, i): Shape => {
    const ends = fretEnds(ask, board, i + 1);
    return stroke('frets', i + 1 === join ? 'visible' : 'thin', 'frets', ...ends);
  });
}

/** From the bass edge to the treble edge. */
export function fretEnds(ask: Ask, { nut, half }: Board, fret: number): readonly [Point, Point] {
  const { scale } = stringEnds(ask);
  const [bass, treble] = [inMmIf(ask, 'scale-bass'), inMmIf(ask, 'scale-treble')];
  const isFanned = bass !== undefined && treble !== undefined && ask.word('frets.fanned') !== 'no';
  const square = isFanned ? ask.number('frets.perpendicular') : 0;
  const line = nut - mmOf(fretPlace(scale / 1000, square));
  const on = (length: number) => line + mmOf(fretPlace(length / 1000, square)) - mmOf(fretPlace(length / 1000, fret));
  const [yb, yt] = isFanned ? [on(bass), on(treble)] : [on(scale), on(scale)];
  return [
    [-half(yb), yb],
    [half(yt), yt],
  ];
}

export function nutShapes(ask: Ask): readonly Shape[] {
  const { nut, half } = boardOf(ask);
  const thick = inMm(ask, 'nut.thickness');
  return [
    {
      kind: 'path',
      layer: 'neck',
      line: 'visible',
      part: 'nut',
      points: corners([0, nut + thick / 2], 2 * half(nut), thick),
      closed: true,
    },
  ];
}

/** The head, whose outline every maker draws himself: its length and its width, with the slots where it has some. */
export function headShapes(ask: Ask): readonly Shape[] {
  const { nut, half } = boardOf(ask);
  const [long, wide] = [inMm(ask, 'headstock.length'), inMm(ask, 'headstock.width')];
  const foot = nut + inMm(ask, 'nut.thickness');
  const top = nut + long;
  const shoulder = foot + long * 0.16;
  const head: Shape = {
    ...{ kind: 'path', layer: 'neck', line: 'phantom', part: 'headstock', closed: true },
    points: [
      [-half(nut), foot],
      [-wide / 2, shoulder],
      [-wide / 2 + wide * 0.06, top],
      [wide / 2 - wide * 0.06, top],
      [wide / 2, shoulder],
      [half(nut), foot],
    ],
  };
  if (ask.word('headstock.kind') !== 'slotted' && ask.word('tuners.kind') !== 'slotted-head') return [head];
  const slot = (side: number): Shape => ({
    ...{ kind: 'path', layer: 'neck', line: 'phantom', part: 'headstock', closed: true },
    points: corners([side * wide * 0.22, (shoulder + top) / 2 + 4], SLOT, top - shoulder - 22),
  });
  return [head, slot(-1), slot(1)];
}

/** mm: a usual slot of a slotted head. (common practice) */
const SLOT = 13;

/** mm of the nut beside the outer strings, where their spread is not told. (common practice) */
const BESIDE_STRINGS = 3.5;

/** From nut to saddle; the outer two as wide apart as they are spread, those between evenly. */
export function stringShapes(ask: Ask): readonly Shape[] {
  const { nut, half } = boardOf(ask);
  const { bass, treble } = saddleLine(ask);
  const spread = (inMmIf(ask, 'nut.string-spread') ?? 2 * (half(nut) - BESIDE_STRINGS)) / 2;
  const count = Math.round(ask.number('strings.count'));
  return Array.from({ length: count }, (_, i): Shape => {
    const share = count === 1 ? 0.5 : i / (count - 1);
    const from: Point = [-spread + 2 * spread * share, nut];
    const to: Point = [bass[0] + (treble[0] - bass[0]) * share, bass[1] + (treble[1] - bass[1]) * share];
    return stroke('strings', 'thin', 'strings', from, to);
  });
}
