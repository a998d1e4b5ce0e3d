/**
 * The instrument from the treble side, its neck up as in the plan: x is the height over the plane through the two ends of the
 * top's edge, to the right.
 */
import type { Ask } from '../../recipes/evaluation/evaluation.js';
import { bridgeDrawn, inMm, inMmIf, stringEnds } from './drawn-from.js';
import { boardOf } from './neck-view.js';
import type { Dimension, Point, Shape } from './plan.js';
import { stroke } from './shapes.js';
import { sideOfBody } from './unrolled-side.js';

const STEPS = 60;

export function sideOutline(ask: Ask): readonly Shape[] {
  const { length, topAt, depthAt } = sideOfBody(ask);
  const stations = Array.from({ length: STEPS + 1 }, (_, i) => (length * i) / STEPS);
  const front = stations.map((y): Point => [topAt([0, y]), y]);
  const back = stations.map((y): Point => [topAt([0, y]) - depthAt([0, y]), y]);
  return [
    {
      ...{ kind: 'path', layer: 'outline', line: 'visible', part: 'body', closed: true },
      points: [...front, ...back.reverse()],
    },
  ];
}

/** The edges of the sides, which the domes rise over. */
export function rimEdges(ask: Ask, ring: readonly Point[]): readonly Shape[] {
  const { topAt, depthAt } = sideOfBody(ask);
  const treble = ring.slice(Math.floor(ring.length / 2)).filter((_, i) => i % 4 === 0);
  const edge = (height: (p: Point) => number) => treble.map((p): Point => [height(p), p[1]]);
  return [
    stroke('rim', 'thin', 'sides', ...edge((p) => topAt(p))),
    stroke('rim', 'thin', 'sides', ...edge((p) => topAt(p) - depthAt(p))),
  ];
}

/** Bridge and saddle on the dome. */
export function bridgeFromSide(ask: Ask): readonly Shape[] {
  const { middle, along } = bridgeDrawn(ask);
  const { topAt } = sideOfBody(ask);
  const [low, high] = [middle[1] - along / 2, middle[1] + along / 2];
  const [foot, crest] = [topAt([0, middle[1]]), topAt([0, middle[1]]) + inMm(ask, 'bridge.height')];
  const bridge: Shape = {
    ...{ kind: 'path', layer: 'bridge', line: 'visible', part: 'bridge', closed: true },
    points: [
      [foot, low],
      [crest, low],
      [crest, high],
      [foot, high],
    ],
  };
  const showing = inMmIf(ask, 'saddle.protrusion');
  if (showing === undefined) return [bridge];
  const { saddle } = stringEnds(ask);
  return [bridge, stroke('bridge', 'visible', 'saddle', [crest, saddle], [crest + showing, saddle])];
}

/** The fingerboard on the neck, leaning back by the neck's angle about the edge of the body. */
export function neckFromSide(ask: Ask): readonly Shape[] {
  const { nut, end } = boardOf(ask);
  const angle = ask.number('neck.angle');
  const joint = inMm(ask, 'body.length');
  const board = inMm(ask, 'fingerboard.thickness');
  const depths = ['fret-1', 'fret-3', 'fret-9', 'fret-10', 'fret-12'].flatMap(
    (fret) => inMmIf(ask, `neck.depth.${fret}`) ?? [],
  );
  const [first, last] = [depths[0], depths[depths.length - 1]];
  const lean = ([x, y]: Point): Point => [
    x * Math.cos(angle) - (y - joint) * Math.sin(angle),
    joint + x * Math.sin(angle) + (y - joint) * Math.cos(angle),
  ];
  const ring = (layer: 'neck', part: string, ...points: readonly Point[]): Shape => ({
    ...{ kind: 'path', layer, line: 'visible', closed: true },
    part,
    points: points.map(lean),
  });
  const fingerboard = ring('neck', 'fingerboard', [0, end], [board, end], [board, nut], [0, nut]);
  if (first === undefined || last === undefined) return [fingerboard];
  return [
    fingerboard,
    ring(
      'neck',
      'neck',
      [0, joint],
      [0, nut],
      [board - first, nut],
      [board - last, joint + 25],
      [board - last - 12, joint],
    ),
  ];
}

/** Depths at tail and neck, and the rise of the domes over the ends. */
export function sideDimensions(ask: Ask, written: (mm: number) => string): readonly Dimension[] {
  const { length, topAt, depthAt } = sideOfBody(ask);
  const across = (part: string, y: number, away: number): Dimension => ({
    ...{ kind: 'length', along: 'x', part, away },
    from: [topAt([0, y]) - depthAt([0, y]), y],
    to: [topAt([0, y]), y],
    text: written(depthAt([0, y])),
  });
  return [across('body', 0, -14), across('body', length, 14)];
}
