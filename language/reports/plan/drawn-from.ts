/** What the drawing asks of the instrument, in millimetres and with x to the treble side: the one place where SI ends. */
import { braceHeight } from '../../mechanics/braces/brace-height.js';
import { type Body } from '../../mechanics/body/cutaway-outline.js';
import { fretPlace } from '../../mechanics/strings/frets.js';
import { braceOf } from '../../recipes/derived/brace-quantities.js';
import { bridgeMiddle } from '../../recipes/derived/layout/bridge-place.js';
import { braceLineOf } from '../../recipes/derived/layout/brace-line.js';
import { bodyOf } from '../../recipes/derived/layout/outline.js';
import { taken } from '../../recipes/derived/taken.js';
import { soundholeOf } from '../../recipes/derived/layout/soundhole.js';
import type { Ask } from '../../recipes/evaluation/evaluation.js';
import type { Point } from './plan.js';

/** Points along each side of the outline: a chord misses the curve by less than a hundredth of a millimetre. */
const POINTS_A_SIDE = 400;

export function mmOf(metres: number): number {
  return metres * 1000;
}

export function inMm(ask: Ask, path: string): number {
  return mmOf(ask.number(path));
}

export function inMmIf(ask: Ask, path: string): number | undefined {
  const metres = ask.numberIf(path);
  return metres === undefined ? undefined : mmOf(metres);
}

/** Station and offset as the plan has them: x the offset, y the station. */
export function placed([station, offset]: readonly [number, number]): Point {
  return [mmOf(offset), mmOf(station)];
}

/** The outline, from the tail up the bass side and down the treble side. */
export function outlineRing(ask: Ask): readonly Point[] {
  const body = bodyOf(ask);
  const stations = stationsOf(body);
  return [
    [0, 0],
    ...stations.map((x) => placed([x, -body.bassWidth(x)])),
    ...endOf(body),
    ...[...stations].reverse().map((x) => placed([x, body.trebleWidth(x)])),
  ];
}

/** At the neck the two sides meet on the centre line, or, with a cutaway, the treble side ends short of it. */
function endOf({ outline }: Body): readonly Point[] {
  return [placed([outline.length, 0])];
}

/** Closer together towards the ends, where the outline turns fastest; the tip of a horn is one of them. */
function stationsOf({ outline: { length }, cutaway }: Body): readonly number[] {
  const even = Array.from({ length: POINTS_A_SIDE - 1 }, (_, i) => {
    return (length * (1 - Math.cos((Math.PI * (i + 1)) / POINTS_A_SIDE))) / 2;
  });
  return cutaway ? [...even, length - cutaway.length].sort((a, b) => a - b) : even;
}

/** The half widths at a station, mm: bass side, treble side. */
export function halfWidths(ask: Ask, station: number): readonly [number, number] {
  const body = bodyOf(ask);
  return [mmOf(body.bassWidth(station / 1000)), mmOf(body.trebleWidth(station / 1000))];
}

export interface DrawnBrace {
  readonly part: string;
  readonly member: string;
  /** Its line: the middle of the glued face. */
  readonly line: readonly Point[];
  readonly length: number;
  readonly width: number;
  readonly height: number;
  /** mm at mm from its first end */
  readonly heightAt: (at: number) => number;
  readonly stations: readonly { readonly at: number; readonly height: number }[];
}

export function braceDrawn(ask: Ask, root: string, member: string): DrawnBrace {
  const brace = braceOf(ask, root, member);
  const heightAt = braceHeight(brace);
  return {
    part: `${root}.${member}`,
    member,
    line: braceLineOf(ask, root, member).points.map(placed),
    length: mmOf(brace.length),
    width: mmOf(brace.width),
    height: mmOf(brace.height),
    heightAt: (at) => mmOf(heightAt(at / 1000)),
    stations: (brace.stations ?? []).map(({ distance, height }) => ({ at: mmOf(distance), height: mmOf(height) })),
  };
}

export interface DrawnHole {
  readonly centre: Point;
  /** Half axes across and along the guitar. */
  readonly half: Point;
}

export function holeDrawn(ask: Ask): DrawnHole {
  const { centre, along, across } = soundholeOf(ask);
  return { centre: placed(centre), half: [mmOf(across) / 2, mmOf(along) / 2] };
}

/** The bridge: its middle, length across and width along. */
export function bridgeDrawn(ask: Ask): { readonly middle: Point; readonly across: number; readonly along: number } {
  const width = ask.number('bridge.width');
  return {
    middle: placed([bridgeMiddle(ask, width), taken(ask, 'bridge.offset')]),
    across: inMm(ask, 'bridge.length'),
    along: mmOf(width),
  };
}

export function bridgePlateDrawn(ask: Ask): ReturnType<typeof bridgeDrawn> {
  const stated = inMmIf(ask, 'bridge.plate.station');
  return {
    middle: [mmOf(taken(ask, 'bridge.offset')), stated ?? bridgeDrawn(ask).middle[1]],
    across: inMm(ask, 'bridge.plate.length'),
    along: inMm(ask, 'bridge.plate.width'),
  };
}

/** Stations of the nut and of the saddle before compensation, mm. */
export function stringEnds(ask: Ask): { readonly nut: number; readonly saddle: number; readonly scale: number } {
  const scale = inMm(ask, 'scale');
  const nut = inMm(ask, 'body.length') + mmOf(fretPlace(ask.number('scale'), ask.number('neck.join-fret')));
  return { nut, saddle: nut - scale, scale };
}
