/** Parts that lie where there is no plate: outside the outline, or partly so. */
import type { PointValue } from '../../facts/facts.js';
import { type Body, bodyRing } from '../../mechanics/body/cutaway-outline.js';
import { beside, isWithin, lengthInside, outsideBy, type PlanPoint } from '../../mechanics/body/plan.js';
import { type Soundhole, soundholeEdge } from '../../mechanics/body/soundhole.js';
import { BRIDGE, BRIDGE_PLATE } from '../../recipes/derived/layout/bridge-place.js';
import { type BraceRoot, braceLine } from '../../recipes/derived/layout/brace-line.js';
import { BODY } from '../../recipes/derived/layout/outline.js';
import { SOUNDHOLE } from '../../recipes/derived/layout/soundhole.js';
import type { Workshop } from '../../recipes/workshop.js';
import { placeOf } from '../mending.js';
import type { Report, Rule } from '../rule.js';
import { bridgeOffTheScale } from './bridge-place.js';
import { anotherPoint, laidOut, type LaidOut, length, lineOf, roughly } from './laid-out.js';

const BODY_TEXT = `body {
    length: 495 mm
    lower-bout { width: 390 mm  station: 112 mm }
    waist { width: 243 mm  station: 292 mm }
    upper-bout { width: 286 mm  station: 422 mm }
  }`;

export const OFF_THE_PLATE: Rule = {
  code: 'off-the-plate',
  severity: 'warning',
  title: 'A part that lies outside the body',
  reason:
    'Stations are measured from the tail along the centre line, offsets from it, bass side negative. A place outside the outline is usually a slip in one of them.',
  bad: `model tarn {
  ${BODY_TEXT}
  bracing { x-bass { from: (78 mm, -250 mm)  to: (405 mm, 92 mm)  width: 8 mm  height: 15 mm } }
}`,
  good: `model tarn {
  ${BODY_TEXT}
  bracing { x-bass { from: (78 mm, -150 mm)  to: (405 mm, 92 mm)  width: 8 mm  height: 15 mm } }
}`,
  of: ['model', 'recipe'],
  check(definition, workshop, report) {
    const laid = laidOut(definition, workshop, ABOUT);
    const body = laid?.made(BODY);
    if (!laid || !body) return;
    const plan = new Plan(laid, body, workshop, report);
    for (const root of ['bracing', 'back-bracing'] as const) {
      for (const member of laid.braces(root)) brace(plan, root, member);
    }
    const hole = laid.made(SOUNDHOLE);
    if (hole) holeOff(plan, hole);
    if (!bridgeOffTheScale(laid, workshop)) bridgeOff(plan);
  },
};

/** What decides whether something lies on the plate. */
const ABOUT =
  /^(?:body\.|cutaway\.|soundhole\.|bridge\.|scale$|neck\.join-fret$|(?:back-)?bracing\.[^.]+\.(?:from|to|curve|width)$)/;
const OUTLINE = /^(?:body|cutaway)\./;

/** A brace let into the lining ends at the outline; a millimetre beyond it is drawing, not a mistake. */
const EDGE = 1e-3;
/** A square-cut end is trimmed to the outline; a corner that stands out by more is wood that is not there. */
const CORNER = 2e-3;

class Plan {
  private made: readonly PlanPoint[] | undefined;

  constructor(
    readonly laid: LaidOut,
    readonly body: Body,
    readonly workshop: Workshop,
    readonly report: Report,
  ) {}

  /** The edge of the plate, drawn only when something is to be held against it: most definitions move nothing. */
  get ring(): readonly PlanPoint[] {
    return (this.made ??= bodyRing(this.body, 400));
  }
}

function brace(plan: Plan, root: BraceRoot, member: string): void {
  const { laid } = plan;
  const at = `${root}.${member}`;
  const mine = laid.own(['from', 'to', 'curve', 'width'].map((word) => `${at}.${word}`));
  if (!mine && !outlineHere(laid)) return;
  const line = laid.made(braceLine(root, member));
  if (!line) {
    // One end may be known where the other is not.
    for (const word of ['from', 'to'] as const) endOff(plan, `${at}.${word}`);
    return;
  }
  const off = (['from', 'to'] as const).filter((word) => endOff(plan, `${at}.${word}`));
  if (off.length > 0) return;
  const width = laid.number(`${at}.width`);
  const { points } = line;
  if (width !== undefined && cornersOff(plan, at, points, width)) return;
  const { ring } = plan;
  const over = Math.max(
    ...(width === undefined ? [0] : [-width / 2, 0, width / 2]).map(
      (by) => line.length - lengthInside(ring, beside(points, by)),
    ),
  );
  // Up to a corner's worth at either end is trimmed.
  if (over <= 2 * (width === undefined ? CORNER : Math.max(CORNER, width))) return;
  const { say } = plan.workshop.wording;
  plan.report(
    lineOf(laid.definition, mine),
    say`${at} leaves the body between its ends: ${roughly(over)} of it lie beyond the edge.`,
    related(plan, `${at}.from`, mine?.path),
  );
}

/** Tells of an end whose middle lies outside. */
function endOff(plan: Plan, path: string): boolean {
  const { laid, body, workshop, report } = plan;
  const held = laid.values.get(path);
  const point = held && pointOf(held.value);
  const own = held?.from.definition === laid.definition;
  if (!held || !point || (!own && !outlineHere(laid)) || outsideBy(plan.ring, point) <= EDGE) return false;
  const { say } = workshop.wording;
  const [station, offset] = point;
  const { length: bodyLength } = body.outline;
  const half = offset < 0 ? body.bassWidth(station) : body.trebleWidth(station);
  const why =
    station < 0 || station > bodyLength
      ? say`the body runs from 0 to ${length(bodyLength)}`
      : say`at station ${length(station)} the body is ${length(half)} wide on each side, and the offset is ${length(offset)}`;
  report(lineOf(laid.definition, held), say`${path} lies outside the body: ${why}.`, {
    related: own ? [] : [{ place: placeOf(held.from), message: say`${path} is given here` }],
  });
  return true;
}

/** Tells of a brace whose ends are so wide that their corners stand out, with where they would have to end. */
function cornersOff(plan: Plan, at: string, points: readonly PlanPoint[], width: number): boolean {
  const { laid, ring, workshop, report } = plan;
  const { say } = workshop.wording;
  const last = points.length - 1;
  const ends = [
    { path: `${at}.from`, end: points[0]!, next: points[1]! },
    { path: `${at}.to`, end: points[last]!, next: points[last - 1]! },
  ];
  const out = ends
    .map((one) => ({ ...one, by: cornersBy(ring, one.end, one.next, width) }))
    .filter(({ by }) => by > CORNER);
  const [first] = out;
  if (!first) return false;
  const line = laid.own([...out.map(({ path }) => path), `${at}.width`]);
  if (!line && !outlineHere(laid)) return false;
  const most = Math.max(...out.map(({ by }) => by));
  const mended = out.map(({ path, end, next }) => ({ path, point: shortened(ring, end, next, width) }));
  const edits = mended.flatMap(({ path, point }) =>
    point ? anotherPoint(laid.own([path]), point, laid.definition) : [],
  );
  report(
    lineOf(laid.definition, line),
    say`${at} is ${length(width)} wide, and a corner of its end stands ${roughly(most)} out of the body. End it a little sooner.`,
    {
      ...related(plan, first.path, line?.path),
      fixes: edits.length > 0 ? [{ title: say`End it inside the body`, edits, preferred: true }] : [],
    },
  );
  return true;
}

/** m by which the farther corner of a square-cut end lies outside the ring. */
function cornersBy(ring: readonly PlanPoint[], end: PlanPoint, next: PlanPoint, width: number): number {
  return Math.max(...[-width / 2, width / 2].map((by) => outsideBy(ring, beside([end, next], by)[0]!)));
}

/** The end moved back along the brace, by whole millimetres, until both corners are inside. */
function shortened(ring: readonly PlanPoint[], end: PlanPoint, next: PlanPoint, width: number): PlanPoint | undefined {
  const length = Math.hypot(next[0] - end[0], next[1] - end[1]);
  for (let back = 0.001; back < Math.min(0.06, length / 2); back += 0.0005) {
    const at = (k: 0 | 1) => Math.round((end[k] + ((next[k] - end[k]) * back) / length) * 1e3) / 1e3;
    const moved: PlanPoint = [at(0), at(1)];
    if (cornersBy(ring, moved, next, width) <= 0) return moved;
  }
  return undefined;
}

function holeOff(plan: Plan, hole: Soundhole): void {
  const { laid, body, workshop, report } = plan;
  const { say } = workshop.wording;
  const line = laid.own(['diameter', 'width', 'length', 'station', 'offset'].map((word) => `soundhole.${word}`));
  if (!line && !outlineHere(laid)) return;
  if (soundholeEdge(hole, 180).every((point) => isWithin(plan.ring, point))) return;
  const [station] = hole.centre;
  const wide = body.bassWidth(station) + body.trebleWidth(station);
  const [across, at] = [length(hole.across), length(station)];
  report(
    lineOf(laid.definition, line),
    wide > 0
      ? say`The soundhole, ${across} across at station ${at}, does not lie wholly on the top: the body is ${length(wide)} wide there.`
      : say`The soundhole, ${across} across at station ${at}, does not lie wholly on the top.`,
  );
}

function bridgeOff(plan: Plan): void {
  const { laid, workshop, report } = plan;
  const { say } = workshop.wording;
  const parts = [
    { name: 'bridge', part: BRIDGE, word: say`The bridge` },
    { name: 'bridge.plate', part: BRIDGE_PLATE, word: say`The bridge plate` },
  ];
  for (const { name, part, word } of parts) {
    const shape = laid.made(part);
    if (!shape) continue;
    const line = laid.own([
      `${name}.length`,
      `${name}.width`,
      `${name}.station`,
      'bridge.station',
      'bridge.offset',
      'scale',
      'neck.join-fret',
    ]);
    if (!line && !outlineHere(laid)) continue;
    const by = Math.max(...shape.map((point) => outsideBy(plan.ring, point)));
    if (by <= EDGE) continue;
    report(lineOf(laid.definition, line), say`${word} reaches ${roughly(by)} beyond the edge of the top.`);
    return;
  }
}

function related({ laid, workshop }: Plan, path: string, told: string | undefined) {
  const { say } = workshop.wording;
  const held = laid.values.get(path);
  if (!held || told === path || held.from.definition === laid.definition) return {};
  return { related: [{ place: placeOf(held.from), message: say`${path} is given here` }] };
}

function outlineHere({ values, definition }: LaidOut): boolean {
  return [...values.values()].some(({ path, from }) => from.definition === definition && OUTLINE.test(path));
}

function pointOf(value: { readonly kind: string }): PlanPoint | undefined {
  if (value.kind !== 'point') return undefined;
  const { station, offset } = value as PointValue;
  if ([station, offset].some(({ quantity }) => quantity.dimension.name !== 'length')) return undefined;
  return [station.quantity.si, offset.quantity.si];
}
