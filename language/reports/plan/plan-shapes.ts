/** The shapes a plan is made of, in metres: stations from the tail, offsets from the centre line, bass side negative. */
import { braceHeight } from '../../mechanics/braces/brace-height.js';
import { bodyOf } from '../../recipes/derived/body-quantities.js';
import { braceOf } from '../../recipes/derived/brace-quantities.js';
import { bridgeMiddle, rectangle } from '../../recipes/derived/plate-task.js';
import type { Ask } from '../../recipes/evaluation/evaluation.js';

type Point = readonly [number, number];

export interface Outlined {
  readonly length: number;
  readonly width: number;
  readonly points: readonly Point[];
}

export interface Shape {
  readonly shape?: readonly Point[];
  readonly heights?: readonly { readonly at: number; readonly height: number }[];
}

export interface PlanPart {
  readonly path: string;
  readonly kind: 'plate' | 'soundhole' | 'brace' | 'bridge' | 'bridge-plate';
  readonly plate: 'top' | 'back';
  /** Parts of it that are parts of the plan by themselves, or drawn rather than told. */
  readonly inner: readonly string[];
  readonly draw: (ask: Ask) => Shape;
}

export const PLAN_PARTS = {
  plates: (['top', 'back'] as const).map((plate): PlanPart => ({
    path: plate,
    kind: 'plate',
    plate,
    inner: [`${plate}.rig`],
    draw: () => ({}),
  })),
  brace: (root: 'bracing' | 'back-bracing', member: string): PlanPart => ({
    path: `${root}.${member}`,
    kind: 'brace',
    plate: root === 'bracing' ? 'top' : 'back',
    inner: [`${root}.${member}.heights`, `${root}.${member}.stations`],
    draw: (ask) => braceShape(ask, root, member),
  }),
  others: [
    { path: 'soundhole', kind: 'soundhole', plate: 'top', inner: [], draw: holeShape },
    { path: 'bridge.plate', kind: 'bridge-plate', plate: 'top', inner: [], draw: bridgePlateShape },
    {
      path: 'bridge',
      kind: 'bridge',
      plate: 'top',
      inner: ['bridge.plate', 'bridge.pins'],
      draw: (ask) => ({
        shape: rectangle(
          bridgeMiddle(ask, ask.number('bridge.width')),
          ask.number('bridge.width'),
          ask.number('bridge.length'),
        ),
      }),
    },
  ] satisfies readonly PlanPart[],
};

/** Points along each side: a chord misses the curve by less than a line's width in print. */
const POINTS_A_SIDE = 60;

export function outlineOf(ask: Ask): Outlined {
  const body = bodyOf(ask);
  const { length } = body.outline;
  // Closer together towards the ends, where the outline turns fastest.
  const stations = Array.from({ length: POINTS_A_SIDE - 1 }, (_, i) => {
    return (length * (1 - Math.cos((Math.PI * (i + 1)) / POINTS_A_SIDE))) / 2;
  });
  const bass = stations.map((x): Point => [x, -body.bassWidth(x)]);
  const treble = stations.map((x): Point => [x, body.trebleWidth(x)]);
  const halfWidths = ['lower-bout', 'upper-bout'].map((bout) => body.bassWidth(ask.number(`body.${bout}.station`)));
  return { length, width: 2 * Math.max(...halfWidths), points: [[0, 0], ...bass, [length, 0], ...treble.reverse()] };
}

/** As wide as it is glued, from end to end, square-cut; what is carved shows in the heights. */
function braceShape(ask: Ask, root: string, member: string): Shape {
  const brace = braceOf(ask, root, member);
  const end = (which: 'from' | 'to'): Point => [
    ask.number(`${root}.${member}.${which}.station`),
    ask.number(`${root}.${member}.${which}.offset`),
  ];
  const [from, to] = [end('from'), end('to')];
  const across: Point = [
    (-(to[1] - from[1]) / brace.length) * (brace.width / 2),
    ((to[0] - from[0]) / brace.length) * (brace.width / 2),
  ];
  const heightAt = braceHeight(brace);
  const count = Math.max(12, Math.ceil(brace.length / 0.005));
  return {
    shape: [moved(from, across, 1), moved(to, across, 1), moved(to, across, -1), moved(from, across, -1)],
    heights: Array.from({ length: count + 1 }, (_, i) => {
      const at = (brace.length * i) / count;
      return { at, height: heightAt(at) };
    }),
  };
}

function moved([x, y]: Point, [dx, dy]: Point, times: number): Point {
  return [x + times * dx, y + times * dy];
}

/** Round, or an ellipse of its own width (across) and length (along). */
function holeShape(ask: Ask): Shape {
  const diameter = ask.numberIf('soundhole.diameter');
  const [along, across] =
    diameter === undefined ? [ask.number('soundhole.length'), ask.number('soundhole.width')] : [diameter, diameter];
  const centre: Point = [ask.number('soundhole.station'), ask.numberIf('soundhole.offset') ?? 0];
  return {
    shape: Array.from({ length: 48 }, (_, i): Point => {
      const angle = (2 * Math.PI * i) / 48;
      return [centre[0] + (along / 2) * Math.cos(angle), centre[1] + (across / 2) * Math.sin(angle)];
    }),
  };
}

function bridgePlateShape(ask: Ask): Shape {
  const [along, across] = [ask.number('bridge.plate.width'), ask.number('bridge.plate.length')];
  const middle = ask.numberIf('bridge.plate.station') ?? bridgeMiddle(ask, ask.number('bridge.width'));
  return { shape: rectangle(middle, along, across) };
}
