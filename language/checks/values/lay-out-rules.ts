/** Lay-out: parts that lie where there is no plate, and sizes that contradict each other. */
import { boutOutline } from '../../mechanics/body/bout-outline.js';
import { MechanicsError } from '../../mechanics/error.js';
import type { Outline } from '../../mechanics/body/half-widths.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Definition, Span } from '../../facts/facts.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import type { Workshop } from '../../recipes/workshop.js';
import { isInForce } from '../in-force.js';
import { placeOf } from '../mending.js';
import type { Rule } from '../rule.js';
import { type Wording } from '../../wording/wording.js';

const BODY = `body {
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
  ${BODY}
  bracing { x-bass { from: (78 mm, -250 mm)  to: (405 mm, 92 mm)  width: 8 mm  height: 15 mm } }
}`,
  good: `model tarn {
  ${BODY}
  bracing { x-bass { from: (78 mm, -150 mm)  to: (405 mm, 92 mm)  width: 8 mm  height: 15 mm } }
}`,
  of: ['model', 'recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const values = valuesOf(definition, workshop);
    const here = [...(values?.values() ?? [])].some(
      ({ path, from }) => from.definition === definition && LAID_OUT.test(path),
    );
    const outline = values && here ? outlineOf(values) : undefined;
    if (!values || !outline) return;
    const bodyHere = [...values.values()].some(
      ({ path, from }) => path.startsWith('body.') && from.definition === definition,
    );
    for (const held of values.values()) {
      const own = held.from.definition === definition;
      if (
        (!own && !bodyHere) ||
        held.value.kind !== 'point' ||
        !/^(?:back-)?bracing\.[^.]+\.(?:from|to)$/.test(held.path)
      )
        continue;
      const { station, offset } = held.value;
      const half = outline.halfWidth(station.quantity.si);
      const over = Math.abs(offset.quantity.si) - half;
      if (over <= EDGE) continue;
      const at = length(station.quantity.si);
      const why =
        station.quantity.si < 0 || station.quantity.si > outline.length
          ? say`the body runs from 0 to ${length(outline.length)}`
          : say`at station ${at} the body is ${length(half)} wide on each side, and the offset is ${length(offset.quantity.si)}`;
      report(own ? held.from.span : definition.name.span, say`${held.path} lies outside the body: ${why}.`, {
        related: own ? [] : [{ place: placeOf(held.from), message: say`${held.path} is given here` }],
      });
    }
    hole(values, outline, definition, bodyHere, report, workshop.wording);
  },
};

export const SIZES_DISAGREE: Rule = {
  code: 'sizes-disagree',
  severity: 'warning',
  title: 'Two sizes that contradict each other',
  reason:
    'A plate is thinned towards its edge, a brace runs out towards its ends, and a waist is narrower than the bouts. The other way round is possible, but seldom meant.',
  bad: `model tarn { top { thickness: 2.4 mm  edge-thickness: 2.85 mm } }`,
  good: `model tarn { top { thickness: 2.85 mm  edge-thickness: 2.4 mm } }`,
  of: ['model', 'recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const values = valuesOf(definition, workshop);
    if (!values) return;
    for (const [small, large, oddity] of pairsIn(values, workshop.wording)) {
      const [a, b] = [values.get(small), values.get(large)];
      if (a?.value.kind !== 'quantity' || b?.value.kind !== 'quantity') continue;
      const own = a.from.definition === definition ? a : b.from.definition === definition ? b : undefined;
      if (!own || !isLength(a) || !isLength(b) || a.value.quantity.si <= b.value.quantity.si * (1 + 1e-9)) continue;
      const other = own === a ? b : a;
      report(
        own.from.span,
        say`${oddity}: ${small} is ${length(a.value.quantity.si)}, ${large} is ${length(b.value.quantity.si)}.`,
        {
          related: [{ place: placeOf(other.from), message: say`${other.path} is given here` }],
        },
      );
    }
  },
};

/** A brace let into the lining ends at the outline; a millimetre beyond it is drawing, not a mistake. */
const EDGE = 1e-3;

/** What decides whether something lies on the plate. */
const LAID_OUT = /^(?:body\.|soundhole\.|(?:back-)?bracing\.[^.]+\.(?:from|to)$)/;

type Values = ReadonlyMap<string, Held>;

function hole(
  values: Values,
  outline: Outline,
  definition: Definition,
  bodyHere: boolean,
  report: Parameters<Rule['check']>[2],
  { say }: Wording,
): void {
  const station = numberAt(values, 'soundhole.station');
  const diameter = numberAt(values, 'soundhole.diameter');
  if (station === undefined || diameter === undefined) return;
  const places = ['soundhole.station', 'soundhole.offset', 'soundhole.diameter'].map((path) => values.get(path));
  const own = places.find((held) => held?.from.definition === definition);
  if (!own && !bodyHere) return;
  const radius = diameter / 2;
  const offset = numberAt(values, 'soundhole.offset') ?? 0;
  const inside =
    station - radius >= 0 &&
    station + radius <= outline.length &&
    Math.abs(offset) + radius <= outline.halfWidth(station);
  if (inside) return;
  const span: Span = own?.from.span ?? definition.name.span;
  report(
    span,
    say`The soundhole, ${length(diameter)} across at station ${length(station)}, does not lie wholly on the top.`,
  );
}

/** Pairs of paths of which the first should not be the larger, with what is odd about it. */
function* pairsIn(values: Values, { text }: Wording): Iterable<readonly [string, string, string]> {
  yield ['top.edge-thickness', 'top.thickness', text('The top is thicker at the edge than in the middle')];
  yield ['back.edge-thickness', 'back.thickness', text('The back is thicker at the edge than in the middle')];
  yield ['body.waist.width', 'body.lower-bout.width', text('The waist is wider than the lower bout')];
  yield ['body.waist.width', 'body.upper-bout.width', text('The waist is wider than the upper bout')];
  yield [
    'body.lower-bout.station',
    'body.waist.station',
    text('The lower bout lies beyond the waist, seen from the tail'),
  ];
  yield [
    'body.waist.station',
    'body.upper-bout.station',
    text('The waist lies beyond the upper bout, seen from the tail'),
  ];
  yield ['body.upper-bout.station', 'body.length', text('The upper bout lies beyond the end of the body')];
  for (const path of values.keys()) {
    const brace =
      /^((?:back-)?bracing\.[^.]+)\.(end-height|from-height|to-height|scallop\.height|scallop\.peak-height)$/.exec(
        path,
      );
    if (brace) yield [path, `${brace[1]}.height`, text('The brace is higher there than its full height')];
  }
}

function valuesOf(definition: Definition, workshop: Workshop): Values | undefined {
  if (!isInForce(definition, workshop)) return undefined;
  const { kind, name } = definition;
  return kind === 'model' ? workshop.model(name.text)?.values : workshop.instrument(name.text)?.values;
}

function outlineOf(values: Values): Outline | undefined {
  const number = (path: string) => numberAt(values, path);
  const bout = (name: string) => ({ width: number(`body.${name}.width`), station: number(`body.${name}.station`) });
  const [length, lower, waist, upper] = [number('body.length'), bout('lower-bout'), bout('waist'), bout('upper-bout')];
  if (length === undefined || ![lower, waist, upper].every(isWhole)) return undefined;
  try {
    return boutOutline({
      length,
      lowerBout: lower as Whole,
      waist: waist as Whole,
      upperBout: upper as Whole,
      tailRadius: number('body.tail-radius'),
      neckRadius: number('body.neck-radius'),
    });
  } catch (error) {
    if (error instanceof MechanicsError) return undefined; // `not-computable` says why
    throw error;
  }
}

interface Whole {
  readonly width: number;
  readonly station: number;
}

function isWhole(bout: { width?: number; station?: number }): bout is Whole {
  return bout.width !== undefined && bout.station !== undefined;
}

function numberAt(values: Values, path: string): number | undefined {
  const held = values.get(path);
  return held && isLength(held) && held.value.kind === 'quantity' ? held.value.quantity.si : undefined;
}

function isLength({ value }: Held): boolean {
  return value.kind === 'quantity' && value.quantity.dimension.name === DIMENSION.length.name;
}

function length(si: number): string {
  return writeQuantity(si, DIMENSION.length);
}
