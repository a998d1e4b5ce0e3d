/** The bridge plate against the braces beside it. */
import { beside, outsideBy, type PlanPoint } from '../../mechanics/body/plan.js';
import { BRIDGE_PLATE } from '../../recipes/derived/layout/bridge-place.js';
import { braceLine } from '../../recipes/derived/layout/brace-line.js';
import type { Rule } from '../rule.js';
import { anotherLength, laidOut, type LaidOut, length, lineOf, roughly } from './laid-out.js';

const X = `x-bass { from: (69 mm, -174 mm)  to: (389 mm, 130 mm)  width: 8 mm  height: 16 mm }
    x-treble { from: (69 mm, 174 mm)  to: (389 mm, -130 mm)  width: 8 mm  height: 16 mm }`;

export const BRIDGE_PLATE_UNDER_BRACE: Rule = {
  code: 'bridge-plate-under-brace',
  severity: 'information',
  title: 'A bridge plate and a brace in one place',
  reason:
    'A bridge plate is usually fitted between the legs of the X, its ends close to them. One drawn longer has to be let into the legs, or they over it; how far it reaches decides how much the bridge can turn.',
  bad: `model tarn {
  bracing {
    ${X}
  }
  bridge { station: 206 mm  width: 37 mm  plate { length: 190 mm  width: 38 mm } }
}`,
  good: `model tarn {
  bracing {
    ${X}
  }
  bridge { station: 206 mm  width: 37 mm  plate { length: 60 mm  width: 38 mm } }
}`,
  of: ['model', 'recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const laid = laidOut(definition, workshop, ABOUT);
    const over = laid ? findOverlaps(laid) : [];
    if (!laid || over.length === 0 || !laid.isNew(over, findOverlaps)) return;
    const line = laid.own([
      ...PLATE,
      ...over.flatMap(({ paths }) => paths),
      'bridge.station',
      'bridge.width',
      'scale',
      'neck.join-fret',
      'body.length',
    ]);
    if (!line) return;
    const { and } = workshop.wording;
    const parts = over.map(({ member, over: by }) => say`${member} for ${roughly(by)}`);
    const clear = Math.floor(Math.min(...over.map((one) => one.clear)) * 1e3) / 1e3;
    const fits = clear > SHORTEST ? [say`One of ${length(clear)} ends at them.`] : [];
    report(
      lineOf(definition, line),
      [say`The bridge plate and a brace take the same place: ${and(parts)}.`, ...fits].join(' '),
      {
        related: laid.related(
          ['bridge.plate.length', ...over.flatMap(({ paths }) => paths.slice(0, 1))],
          line,
          workshop.wording,
        ),
        fixes:
          fits.length > 0 ? anotherLength(laid.own(['bridge.plate.length']), clear, definition, workshop.wording) : [],
      },
    );
  },
};

const PLATE = ['length', 'width', 'station'].map((word) => `bridge.plate.${word}`);
const ABOUT =
  /^(?:bridge\.(?:plate\.|station|width|saddle-distance|offset)|bracing\.[^.]+\.(?:from|to|curve|width)$|scale$|neck\.join-fret$|body\.length$)/;

/** m: plate and brace are fitted to each other to this. (common practice) */
const FITTED = 1.5e-3;
/** m: a shorter plate is none that anybody makes. */
const SHORTEST = 0.06;
const STEP = 5e-4;

interface Overlap {
  readonly member: string;
  readonly paths: readonly string[];
  /** m along the brace */
  readonly over: number;
  /** m: the length of plate that would end at the brace */
  readonly clear: number;
}

function findOverlaps(laid: LaidOut): readonly Overlap[] {
  const plate = laid.made(BRIDGE_PLATE);
  return plate ? laid.braces('bracing').flatMap((member) => overlap(laid, plate, member)) : [];
}

function overlap(laid: LaidOut, plate: readonly PlanPoint[], member: string): readonly Overlap[] {
  const line = laid.made(braceLine('bracing', member));
  const width = laid.number(`bracing.${member}.width`);
  if (!line || width === undefined) return [];
  const middle = (plate[0]![1] + plate[2]![1]) / 2;
  let deepest = 0;
  let over = 0;
  let nearest = Infinity;
  for (const by of [-width / 2, width / 2]) {
    let along = 0;
    for (const point of sampled(beside(line.points, by))) {
      const inside = -outsideBy(plate, point);
      if (inside <= 0) continue;
      along += STEP;
      deepest = Math.max(deepest, inside);
      nearest = Math.min(nearest, Math.abs(point[1] - middle));
    }
    over = Math.max(over, along);
  }
  if (deepest <= FITTED) return [];
  const at = `bracing.${member}`;
  return [
    { member: at, paths: ['from', 'to', 'curve', 'width'].map((word) => `${at}.${word}`), over, clear: 2 * nearest },
  ];
}

function sampled(line: readonly PlanPoint[]): readonly PlanPoint[] {
  return line.slice(1).flatMap((to, i) => {
    const from = line[i]!;
    const count = Math.max(1, Math.round(Math.hypot(to[0] - from[0], to[1] - from[1]) / STEP));
    return Array.from({ length: count }, (_, k): PlanPoint => {
      const t = (k + 0.5) / count;
      return [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
    });
  });
}
