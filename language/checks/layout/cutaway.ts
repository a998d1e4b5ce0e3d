/** The cutaway against the neck and the join. */
import { BODY } from '../../recipes/derived/layout/outline.js';
import type { Rule } from '../rule.js';
import { anotherLength, laidOut, type LaidOut, length, lineOf, roughly } from './laid-out.js';

const BODY_TEXT = `body {
    length: 495 mm
    lower-bout { width: 390 mm  station: 112 mm }
    waist { width: 243 mm  station: 292 mm }
    upper-bout { width: 286 mm  station: 422 mm }
  }`;

export const CUTAWAY_INTO_NECK: Rule = {
  code: 'cutaway-into-neck',
  severity: 'warning',
  title: 'A cutaway that meets the neck',
  reason:
    'A cutaway leaves the outline behind the join and comes back to it beside the heel. One that begins beyond the end of the body cuts nothing; one that is too deep takes the wood the neck is joined to.',
  bad: `model tarn {
  ${BODY_TEXT}
  cutaway { kind: venetian  station: 390 mm  depth: 130 mm }
}`,
  good: `model tarn {
  ${BODY_TEXT}
  cutaway { kind: venetian  station: 390 mm  depth: 80 mm }
}`,
  of: ['model', 'recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const laid = laidOut(definition, workshop, /^(?:cutaway\.|body\.|fingerboard\.width|nut\.width)/);
    const depth = laid?.number('cutaway.depth');
    const bodyLength = laid?.number('body.length');
    if (!laid || depth === undefined || bodyLength === undefined) return;
    const line = laid.own([
      'cutaway.depth',
      'cutaway.station',
      'fingerboard.width.end',
      'fingerboard.width.fret-12',
      'nut.width',
      'body.length',
      'body.upper-bout.width',
      'body.upper-bout.station',
      'body.waist.width',
      'body.waist.station',
    ]);
    const station = laid.number('cutaway.station');
    if (station !== undefined && station >= bodyLength) {
      const own = laid.own(['cutaway.station']) ?? line;
      report(
        lineOf(definition, own),
        say`The cut leaves the outline at station ${length(station)}, beyond the end of the body at ${length(bodyLength)}.`,
        { related: laid.related(['body.length'], own, workshop.wording) },
      );
      return;
    }
    const body = laid.made(BODY);
    if (!body) return;
    // What is left at the neck end, a hair before the outline closes.
    const tip = bodyLength - (station === undefined ? 0.12 : bodyLength - station);
    const left = body.outline.halfWidth(tip) - depth;
    const board = boardAtJoin(laid) / 2;
    if (left >= board) return;
    const most = Math.floor((body.outline.halfWidth(tip) - board) * 1e3) / 1e3;
    report(
      lineOf(definition, line),
      say`The cut leaves ${roughly(Math.max(0, left))} of the body beside the centre line at the neck end; half the fingerboard is ${length(board)}. A depth of ${length(most)} would end beside it.`,
      {
        related: laid.related(['cutaway.depth'], line, workshop.wording),
        fixes: most > 0 ? anotherLength(laid.own(['cutaway.depth']), most, definition, workshop.wording) : [],
      },
    );
  },
};

/** m: width of the fingerboard where the neck meets the body, from what is told of it; 56 mm where nothing is. (common practice) */
function boardAtJoin(laid: LaidOut): number {
  const [twelfth, end, nut] = ['fingerboard.width.fret-12', 'fingerboard.width.end', 'nut.width'].map((path) =>
    laid.number(path),
  );
  if (twelfth !== undefined) return twelfth;
  if (end !== undefined) return end;
  // Boards widen evenly from the nut; at half the scale by 11 to 12 mm. (common practice)
  return nut === undefined ? 0.056 : nut + 0.0115;
}
