/** Parts that lie over the soundhole: braces, bridge, bridge plate, frets. */
import { fretPlace } from '../../mechanics/strings/frets.js';
import { beside, distanceFromLine, lengthInside, outsideBy } from '../../mechanics/body/plan.js';
import { type Soundhole, soundholeEdge } from '../../mechanics/body/soundhole.js';
import { BRIDGE, BRIDGE_PLATE } from '../../recipes/derived/layout/bridge-place.js';
import { braceLine } from '../../recipes/derived/layout/brace-line.js';
import { SOUNDHOLE } from '../../recipes/derived/layout/soundhole.js';
import { replace } from '../mending.js';
import type { Report, Rule } from '../rule.js';
import type { Wording } from '../../wording/wording.js';
import { bridgeOffTheScale } from './bridge-place.js';
import { anotherLength, laidOut, type LaidOut, length, lineOf, roughly } from './laid-out.js';

export const OVER_THE_HOLE: Rule = {
  code: 'over-the-hole',
  severity: 'warning',
  title: 'A part that lies over the soundhole',
  reason:
    'Where there is no top a brace is glued to nothing and carries nothing but itself, a bridge has nothing to stand on, and a fret past the end of the board cannot be. Some do it on purpose; mostly a hole is too large, or a station counted from the other end.',
  bad: `model tarn {
  soundhole { diameter: 100 mm  station: 335 mm }
  bracing.x-bass { from: (78 mm, -150 mm)  to: (405 mm, 92 mm)  width: 8 mm  height: 15 mm }
}`,
  good: `model tarn {
  soundhole { diameter: 100 mm  station: 335 mm }
  bracing.x-bass { from: (70 mm, -174 mm)  to: (389 mm, 130 mm)  width: 8 mm  height: 15 mm }
}`,
  of: ['model', 'recipe'],
  check(definition, workshop, report) {
    const laid = laidOut(definition, workshop, ABOUT);
    const hole = laid?.made(SOUNDHOLE);
    if (!laid || !hole) return;
    bracesOver(laid, hole, report, workshop.wording);
    fretsOver(laid, report, workshop.wording);
    // A bridge in the wrong place is told as that.
    if (!bridgeOffTheScale(laid, workshop)) bridgeOver(laid, hole, report, workshop.wording);
  },
};

const ABOUT =
  /^(?:soundhole\.|bracing\.[^.]+\.(?:from|to|curve|width)$|bridge\.|frets\.count|fingerboard\.end|neck\.join-fret|scale$|body\.length)/;
const HOLE = ['soundhole.diameter', 'soundhole.station', 'soundhole.width', 'soundhole.length', 'soundhole.offset'];

/** m: a leg that touches the rim of the hole is drawing, not a mistake. */
const TOUCH = 5e-4;

interface Over {
  readonly member: string;
  readonly paths: readonly string[];
  readonly over: number;
  /** m, of a round hole: the largest that would clear it */
  readonly clear: number;
}

function bracesOver(laid: LaidOut, hole: Soundhole, report: Report, wording: Wording): void {
  const { say, and } = wording;
  const { definition } = laid;
  const holeLine = laid.own(HOLE);
  if (!holeLine && !laid.braces('bracing').some((member) => laid.own(placesOf(member)))) return;
  const over = findBraces(laid);
  if (over.length === 0 || !laid.isNew(over, findBraces)) return;
  const isRound = hole.along === hole.across;
  const clear = Math.floor(Math.min(...over.map((one) => one.clear)) * 1e3) / 1e3;
  const roomy = isRound && clear > LITTLE_LESS * hole.along ? clear : undefined;
  const until = roomy === undefined ? '' : ` ${say`A hole of ${length(roomy)} would clear it.`}`;
  const own = over.filter(({ paths }) => laid.own(paths));
  // With the hole written here too, several braces over it are one slip: the hole's.
  if (holeLine && (own.length === 0 || over.length > 1)) {
    const diameter = laid.own(['soundhole.diameter']);
    const parts = over.map(({ member, over: by }) => say`${member} for ${roughly(by)}`);
    report(lineOf(definition, holeLine), `${say`Braces run over the soundhole: ${and(parts)}.`}${until}`, {
      related: over.flatMap(({ paths }) => laid.related(paths.slice(0, 1), holeLine, wording)),
      fixes: roomy === undefined ? [] : anotherLength(diameter, roomy, definition, wording),
    });
    return;
  }
  for (const { member, paths, over: by } of own) {
    const line = laid.own(paths);
    report(lineOf(definition, line), `${say`${member} runs over the soundhole for ${roughly(by)}.`}${until}`, {
      related: laid.related(HOLE.slice(0, 2), line, wording),
      fixes: roomy === undefined ? [] : anotherLength(laid.own(['soundhole.diameter']), roomy, definition, wording),
    });
  }
}

function findBraces(laid: LaidOut): readonly Over[] {
  const hole = laid.made(SOUNDHOLE);
  if (!hole) return [];
  const edge = soundholeEdge(hole, 180);
  return laid.braces('bracing').flatMap((member): readonly Over[] => {
    const line = laid.made(braceLine('bracing', member));
    const width = laid.number(`bracing.${member}.width`);
    if (!line || width === undefined) return [];
    const inside = Math.max(...[-width / 2, 0, width / 2].map((by) => lengthInside(edge, beside(line.points, by))));
    if (inside <= TOUCH) return [];
    const clear = 2 * (distanceFromLine(line.points, hole.centre) - width / 2);
    return [{ member: `bracing.${member}`, paths: placesOf(member), over: inside, clear }];
  });
}

/** What decides where a brace lies. */
function placesOf(member: string): readonly string[] {
  return ['from', 'to', 'curve', 'width'].map((word) => `bracing.${member}.${word}`);
}

/** A much smaller hole is no answer to a brace that lies over it. */
const LITTLE_LESS = 0.8;

function bridgeOver(laid: LaidOut, hole: Soundhole, report: Report, wording: Wording): void {
  const { say } = wording;
  const edge = soundholeEdge(hole, 180);
  const parts = [
    { name: 'bridge', part: BRIDGE, word: say`The bridge` },
    { name: 'bridge.plate', part: BRIDGE_PLATE, word: say`The bridge plate` },
  ];
  for (const { name, part, word } of parts) {
    const ring = laid.made(part);
    if (!ring) continue;
    const paths = [
      ...['station', 'width', 'length', 'saddle-distance'].map((side) => `${name}.${side}`),
      'bridge.station',
    ];
    const line = laid.own([...paths, ...HOLE, 'neck.join-fret', 'scale', 'body.length']);
    if (!line) continue;
    const reach = Math.max(...edge.map((point) => -outsideBy(ring, point)));
    if (reach <= TOUCH) continue;
    report(lineOf(laid.definition, line), say`${word} reaches ${roughly(reach)} into the soundhole.`, {
      related: laid.related([...HOLE.slice(0, 2), `${name}.station`], line, wording),
    });
    return;
  }
}

function fretsOver(laid: LaidOut, report: Report, wording: Wording): void {
  const { say } = wording;
  const found = findFrets(laid);
  const line = laid.own(['frets.count', ...HOLE, 'fingerboard.end', 'neck.join-fret', 'scale', 'body.length']);
  if (!found || !line || !laid.isNew(found, findFrets)) return;
  const { count, over, fits } = found;
  const counted = line.path === 'frets.count' && line.value.kind === 'quantity' ? line.value : undefined;
  report(
    lineOf(laid.definition, line),
    say`Fret ${count} would lie ${roughly(over)} over the soundhole; ${fits} fit before it.`,
    {
      related: laid.related(['frets.count', ...HOLE.slice(0, 2)], line, wording),
      fixes: counted
        ? [{ title: say`Write ${fits}`, edits: [replace(laid.definition, counted.span, String(fits))] }]
        : [],
    },
  );
}

/** A board that ends before the hole is fine, and so is one whose end follows the hole or hangs free over the top. */
function findFrets(
  laid: LaidOut,
): { readonly count: number; readonly over: number; readonly fits: number } | undefined {
  const hole = laid.made(SOUNDHOLE);
  const [scale, join, body, count] = ['scale', 'neck.join-fret', 'body.length', 'frets.count'].map((path) =>
    laid.number(path),
  );
  const end = laid.values.get('fingerboard.end')?.value;
  const isFree = end?.kind === 'name' && ['follows-hole', 'floating'].includes(end.name);
  if (!hole || scale === undefined || join === undefined || body === undefined || count === undefined || isFree)
    return undefined;
  if (![join, count].every((fret) => Number.isInteger(fret) && fret >= 0 && fret <= 36)) return undefined;
  const station = (fret: number) => body + fretPlace(scale, join) - fretPlace(scale, fret);
  const rim = hole.centre[0] + hole.along / 2;
  const isBeside = Math.abs(hole.centre[1]) > hole.across / 2;
  if (isBeside || station(count) >= rim - TOUCH || station(count) < rim - hole.along) return undefined;
  let fits = count;
  while (fits > join && station(fits) < rim) fits -= 1;
  return { count, over: rim - station(count), fits };
}
