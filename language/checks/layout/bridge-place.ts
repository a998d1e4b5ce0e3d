/** Scale, fret at the body, length of the body and place of the bridge: any three give the fourth. */
import { plausible } from '../../catalogue/plausible.js';
import { insertLine } from '../mending.js';
import { tagsFor } from '../in-force.js';
import type { Rule } from '../rule.js';
import { SADDLE_BY_SCALE } from '../../recipes/derived/layout/bridge-place.js';
import { anotherLength, laidOut, length, type LaidOut, lineOf } from './laid-out.js';
import type { Workshop } from '../../recipes/workshop.js';

const PLACE = ['bridge.station', 'neck.join-fret', 'scale', 'body.length'] as const;

const NECK = `scale: 645 mm
  body.length: 496 mm
  neck.join-fret: 14`;

export const BRIDGE_OFF_THE_SCALE: Rule = {
  code: 'bridge-off-the-scale',
  severity: 'warning',
  title: 'A bridge where the scale does not put it',
  reason:
    'From the nut to the saddle is the scale, and compensation a few millimetres more. With the fret at which the neck joins and the length of the body that fixes where the saddle stands, measured from the tail. When the four do not agree the guitar cannot play in tune.',
  bad: `model tarn {
  ${NECK}
  bridge.station: 250 mm
}`,
  good: `model tarn {
  ${NECK}
  bridge.station: 206 mm
}`,
  of: ['model', 'recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const found = bridgeOffTheScale(laidOut(definition, workshop, ABOUT), workshop);
    if (!found) return;
    const { laid, expected, stated, line } = found;
    // All three are known, or nothing would be expected.
    const [scale, body] = [laid.number('scale')!, laid.number('body.length')!];
    const fret = laid.number('neck.join-fret')!;
    const because = say`a scale of ${length(scale)}, joined to a body of ${length(body)} at fret ${fret}, puts the saddle ${length(expected)} from the tail`;
    if (stated === undefined) {
      report(
        lineOf(definition, line),
        say`Check scale, neck.join-fret and body.length: ${because}, and bridges do not stand there.`,
        {
          related: laid.related(PLACE, line, workshop.wording),
        },
      );
      return;
    }
    const station = laid.values.get('bridge.station');
    const old = station?.value.kind === 'quantity' ? station.value.written : '';
    const right = length(expected);
    report(
      lineOf(definition, line),
      say`bridge.station is ${length(stated)}, but ${because}, less a few millimetres of compensation.`,
      {
        related: laid.related(PLACE, line, workshop.wording),
        fixes:
          line === station
            ? anotherLength(station, expected, definition, workshop.wording)
            : definition.kind === 'recipe' && old !== ''
              ? [
                  {
                    title: say`Add \`change bridge.station: ${old} -> ${right}\``,
                    edits: [insertLine(definition, `change bridge.station: ${old} -> ${right}`)],
                  },
                ]
              : [],
      },
    );
  },
};

const ABOUT = /^(?:bridge\.station|neck\.join-fret|scale|body\.length)$/;

/**
 * m: the middle of the saddle is set back by 1 to 5 mm, with a heavy bass by 6, and marked out to 1 mm. (common practice)
 * A guitar is fretted for its scale before compensation.
 */
const SET_BACK = 0.007;
const FORWARD = 0.0015;

interface OffTheScale {
  readonly laid: LaidOut;
  readonly line: LaidOut['own'] extends (paths: readonly string[]) => infer R ? R : never;
  readonly expected: number;
  readonly stated?: number;
}

/** Whether the four do not agree; without a stated place, whether they put the bridge where no bridge stands. */
export function bridgeOffTheScale(laid: LaidOut | undefined, workshop: Workshop): OffTheScale | undefined {
  const expected = laid?.made(SADDLE_BY_SCALE);
  if (!laid || expected === undefined || word(laid, 'frets.fanned') === 'yes') return undefined;
  const line = laid.own(PLACE);
  const stated = laid.number('bridge.station');
  if (stated !== undefined) {
    const off = stated - expected;
    return off < -SET_BACK || off > FORWARD ? { laid, line, expected, stated } : undefined;
  }
  const property = workshop.catalogue.property('bridge.station');
  const range = property && plausible(property, [...tagsFor('bridge.station', laid, workshop)]);
  const body = laid.number('body.length')!;
  // Beyond the usual by a hand's breadth: a small guitar is small in everything.
  const isOff = range !== undefined && (expected < Math.min(range.low, body / 5) || expected > range.high + 0.02);
  return isOff ? { laid, line, expected } : undefined;
}

function word({ values }: LaidOut, path: string): string | undefined {
  const value = values.get(path)?.value;
  return value?.kind === 'name' ? value.name : undefined;
}
