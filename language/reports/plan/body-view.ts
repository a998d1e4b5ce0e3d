/** The box in the plan: outline, centre line, linings, blocks, soundhole and rosette. */
import type { Ask } from '../../recipes/evaluation/evaluation.js';
import { taken } from '../../recipes/derived/taken.js';
import { holeDrawn, inMm, outlineRing } from './drawn-from.js';
import { inset } from './geometry.js';
import type { Point, Shape } from './plan.js';
import { rectangle } from './shapes.js';

export function outlineShapes(ask: Ask): readonly Shape[] {
  return [{ kind: 'path', layer: 'outline', line: 'visible', part: 'body', points: outlineRing(ask), closed: true }];
}

/** mm beyond the body. */
const PAST = 12;

export function centreLine(ask: Ask): readonly Shape[] {
  const length = inMm(ask, 'body.length');
  return [
    {
      ...{ kind: 'path', layer: 'centre-line', line: 'centre', closed: false },
      points: [
        [0, -PAST],
        [0, length + PAST],
      ],
    },
  ];
}

/** The inner edge of the lining, which stands inside the sides: hidden under the plate. */
export function liningShapes(ask: Ask, plate: 'top' | 'back'): readonly Shape[] {
  const part = plate === 'top' ? 'lining' : 'back-lining';
  const ring = inset(outlineRing(ask), inMm(ask, 'sides.thickness') + inMm(ask, `${part}.width`));
  return [{ kind: 'path', layer: 'rim', line: 'hidden', part, points: ring, closed: true }];
}

export function sideShapes(ask: Ask): readonly Shape[] {
  const ring = inset(outlineRing(ask), inMm(ask, 'sides.thickness'));
  return [{ kind: 'path', layer: 'rim', line: 'thin', part: 'sides', points: ring, closed: true }];
}

/** Blocks stand within the sides at the two ends of the centre line. */
export function neckBlock(ask: Ask): readonly Shape[] {
  const top = inMm(ask, 'body.length') - inMm(ask, 'sides.thickness');
  const [long, wide] = [inMm(ask, 'neck-block.length'), inMm(ask, 'neck-block.width')];
  return [rectangle('rim', 'hidden', 'neck-block', [0, top - long / 2], [wide, long])];
}

export function tailBlock(ask: Ask): readonly Shape[] {
  const bottom = inMm(ask, 'sides.thickness');
  const [thick, wide] = [inMm(ask, 'tail-block.thickness'), inMm(ask, 'tail-block.width')];
  return [rectangle('rim', 'hidden', 'tail-block', [0, bottom + thick / 2], [wide, thick])];
}

export function holeShapes(ask: Ask): readonly Shape[] {
  const { centre, half } = holeDrawn(ask);
  return [round('soundhole', 'visible', 'soundhole', centre, half), ...cross(centre, Math.max(...half))];
}

/** The rosette as two rings; where only its width is known it is not placed. */
export function rosetteShapes(ask: Ask): readonly Shape[] {
  const { centre } = holeDrawn(ask);
  const inner = inMm(ask, 'rosette.inner-diameter') / 2;
  const outer = inner + inMm(ask, 'rosette.width');
  return [inner, outer].map((radius) => round('rosette', 'thin', 'rosette', centre, [radius, radius]));
}

function round(
  layer: 'soundhole' | 'rosette',
  line: 'visible' | 'thin',
  part: string,
  centre: Point,
  half: Point,
): Shape {
  const drawn = { layer, line, part } as const;
  return half[0] === half[1]
    ? { ...drawn, kind: 'circle', centre, radius: half[0] }
    : { ...drawn, kind: 'ellipse', centre, half };
}

/** Its middle: a short cross of centre lines. */
function cross([x, y]: Point, radius: number): readonly Shape[] {
  const arm = Math.min(8, radius / 3);
  const stroke = (points: readonly Point[]): Shape => ({
    ...{ kind: 'path', layer: 'centre-line', line: 'thin', closed: false },
    points,
  });
  return [
    stroke([
      [x - arm, y],
      [x + arm, y],
    ]),
    stroke([
      [x, y - arm],
      [x, y + arm],
    ]),
  ];
}

/** The way the grain runs: a double arrow beside the centre line, turned as the recipe says. */
export function grainShapes(ask: Ask, plate: 'top' | 'back'): readonly Shape[] {
  const angle = taken(ask, `${plate}.grain-angle`);
  const y = inMm(ask, 'body.length') * 0.16;
  const [long, head] = [30, 5];
  const turn = ([x, up]: Point): Point => [
    x * Math.cos(angle) + up * Math.sin(angle) - 45,
    -x * Math.sin(angle) + up * Math.cos(angle) + y,
  ];
  const stroke = (points: readonly Point[]): Shape => ({
    ...{ kind: 'path', layer: 'grain', line: 'thin', closed: false, part: plate },
    points: points.map(turn),
  });
  return [
    stroke([
      [0, -long],
      [0, long],
    ]),
    ...[1, -1].map((way) =>
      stroke([
        [-head / 2.5, way * (long - head)],
        [0, way * long],
        [head / 2.5, way * (long - head)],
      ]),
    ),
  ];
}
