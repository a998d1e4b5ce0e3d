/** Sizes of one part that contradict each other. */
import { DIMENSION } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Definition } from '../../facts/facts.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import type { Workshop } from '../../recipes/workshop.js';
import { isInForce } from '../in-force.js';
import { placeOf } from '../mending.js';
import type { Rule } from '../rule.js';
import { type Wording } from '../../wording/wording.js';

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

type Values = ReadonlyMap<string, Held>;

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

function isLength({ value }: Held): boolean {
  return value.kind === 'quantity' && value.quantity.dimension.name === DIMENSION.length.name;
}

function length(si: number): string {
  return writeQuantity(si, DIMENSION.length);
}
