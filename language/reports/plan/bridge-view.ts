/** The bridge in the plan, the saddle with its slant, the pins, and the plate under it all. */
import type { Ask } from '../../recipes/evaluation/evaluation.js';
import { taken } from '../../recipes/derived/taken.js';
import { bridgeDrawn, bridgePlateDrawn, inMm, inMmIf, mmOf, stringEnds } from './drawn-from.js';
import { between, direction } from './geometry.js';
import type { Point, Shape } from './plan.js';
import { corners, rectangle, stroke } from './shapes.js';

export function bridgeShapes(ask: Ask): readonly Shape[] {
  const { middle, across, along } = bridgeDrawn(ask);
  const wing = inMmIf(ask, 'bridge.wing-length');
  const edges = wing === undefined ? [] : [-1, 1].map((side) => middle[0] + side * (across / 2 - wing));
  return [
    rectangle('bridge', 'visible', 'bridge', middle, [across, along]),
    ...edges.map((x) => stroke('bridge', 'thin', 'bridge', [x, middle[1] - along / 2], [x, middle[1] + along / 2])),
  ];
}

export function bridgePlateShapes(ask: Ask): readonly Shape[] {
  const { middle, across, along } = bridgePlateDrawn(ask);
  return [rectangle('bridge-plate', 'hidden', 'bridge.plate', middle, [across, along])];
}

/** Room of the saddle beyond the outer strings on each side, where its length is not told. (common practice) */
const PAST_STRINGS = 9;

export interface SaddleLine {
  /** Where the outer strings bear on it: bass, treble. */
  readonly bass: Point;
  readonly treble: Point;
  /** mm by which the middle lies behind the scale. */
  readonly middleSetback: number;
}

/**
 * The line the strings bear on: the scale from the nut, each side as much farther back as its compensation; where only a
 * slant is told, that slant about the compensated middle.
 */
export function saddleLine(ask: Ask): SaddleLine {
  const { saddle } = stringEnds(ask);
  const half = (inMmIf(ask, 'saddle.string-spread') ?? inMm(ask, 'saddle.length') - 2 * PAST_STRINGS) / 2;
  const [bass, treble] = [inMmIf(ask, 'setup.compensation.bass'), inMmIf(ask, 'setup.compensation.treble')];
  if (bass !== undefined && treble !== undefined) {
    return { bass: [-half, saddle - bass], treble: [half, saddle - treble], middleSetback: (bass + treble) / 2 };
  }
  const middle = mmOf(taken(ask, 'setup.compensation.middle'));
  const slant = half * Math.tan(taken(ask, 'saddle.angle'));
  return {
    bass: [-half, saddle - middle - slant],
    treble: [half, saddle - middle + slant],
    middleSetback: middle,
  };
}

export function saddleShapes(ask: Ask): readonly Shape[] {
  const { bass, treble } = saddleLine(ask);
  const way = direction(bass, treble);
  const long = inMmIf(ask, 'saddle.length') ?? treble[0] - bass[0] + 2 * PAST_STRINGS;
  const middle = between(bass, treble, 0.5);
  const end = (side: number): Point => [middle[0] + (side * way[0] * long) / 2, middle[1] + (side * way[1] * long) / 2];
  const thick = inMmIf(ask, 'saddle.thickness');
  const line = stroke('bridge', 'centre', 'saddle', end(-1), end(1));
  if (thick === undefined) return [line];
  const [nx, ny] = [(-way[1] * thick) / 2, (way[0] * thick) / 2];
  const slot: readonly Point[] = [
    [end(-1)[0] + nx, end(-1)[1] + ny],
    [end(1)[0] + nx, end(1)[1] + ny],
    [end(1)[0] - nx, end(1)[1] - ny],
    [end(-1)[0] - nx, end(-1)[1] - ny],
  ];
  return [{ kind: 'path', layer: 'bridge', line: 'thin', part: 'saddle', points: slot, closed: true }, line];
}

/** mm: across a usual hole for a pin. (common practice) */
const PIN_HOLE = 5.2;

/** Behind the saddle by their distance, evenly between the outer strings. */
export function pinShapes(ask: Ask): readonly Shape[] {
  const { bass, treble } = saddleLine(ask);
  const back = inMm(ask, 'bridge.pins.distance');
  const count = Math.round(ask.numberIf('bridge.pins.count') ?? ask.number('strings.count'));
  return Array.from({ length: count }, (_, i): Shape => {
    const [x, y] = between(bass, treble, count === 1 ? 0.5 : i / (count - 1));
    const drawn = { layer: 'bridge', line: 'thin', part: 'bridge.pins' } as const;
    return { ...drawn, kind: 'circle', centre: [x, y - back], radius: PIN_HOLE / 2 };
  });
}

/** The holes of a tie block: on a line behind the saddle, half its width back. */
export function tieBlock(ask: Ask): readonly Shape[] {
  const { middle, along } = bridgeDrawn(ask);
  const { bass, treble } = saddleLine(ask);
  const spread = treble[0] - bass[0] + 2 * PAST_STRINGS;
  const back = (bass[1] + treble[1]) / 2 - (middle[1] - along / 2);
  const centre: Point = [middle[0], middle[1] - along / 2 + back * 0.35];
  return [
    {
      kind: 'path',
      layer: 'bridge',
      line: 'thin',
      part: 'bridge',
      points: corners(centre, spread, back * 0.7),
      closed: true,
    },
  ];
}
