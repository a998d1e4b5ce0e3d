/** Widths written beside a traced outline, and the trace itself: the trace is what is drawn and computed with. */
import { BODY } from '../../recipes/derived/layout/outline.js';
import type { Rule } from '../rule.js';
import { laidOut, length, lineOf, roughly } from './laid-out.js';

export const OUTLINE_DISAGREES: Rule = {
  code: 'outline-disagrees',
  severity: 'warning',
  title: 'Widths that are not those of the traced outline',
  reason:
    'Where an outline is traced, it is what is drawn and computed with. Widths and the length beside it are for reading; when they say something else, one of the two is not what is built.',
  bad: `model tarn {
  body {
    length: 400 mm
    lower-bout.width: 320 mm  lower-bout.station: 100 mm
    outline: (0 mm, 0 mm), (50 mm, 120 mm), (100 mm, 150 mm), (220 mm, 105 mm), (320 mm, 120 mm), (400 mm, 40 mm)
  }
}`,
  good: `model tarn {
  body {
    length: 400 mm
    lower-bout.width: 300 mm  lower-bout.station: 100 mm
    outline: (0 mm, 0 mm), (50 mm, 120 mm), (100 mm, 150 mm), (220 mm, 105 mm), (320 mm, 120 mm), (400 mm, 40 mm)
  }
}`,
  of: ['model', 'recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const laid = laidOut(definition, workshop, /^body\./);
    if (!laid?.values.has('body.outline')) return;
    const outline = laid.made(BODY)?.outline;
    if (!outline) return;
    const told = laid.number('body.length');
    if (told !== undefined && Math.abs(told - outline.length) > LENGTH_APART) {
      const line = laid.own(['body.length', 'body.outline']);
      report(
        lineOf(definition, line),
        say`The traced outline is ${length(outline.length)} long, body.length says ${length(told)}.`,
        { related: laid.related(['body.length', 'body.outline'], line, workshop.wording) },
      );
    }
    for (const bout of ['lower-bout', 'waist', 'upper-bout']) {
      const [width, station] = ['width', 'station'].map((size) => laid.number(`body.${bout}.${size}`));
      if (width === undefined || station === undefined) continue;
      const traced = 2 * outline.halfWidth(station);
      if (Math.abs(width - traced) <= WIDTH_APART) continue;
      const paths = [`body.${bout}.width`, `body.${bout}.station`, 'body.outline'];
      const line = laid.own(paths);
      if (!line) continue;
      report(
        line.from.span,
        say`At ${length(station)} from the tail the traced outline is ${roughly(traced)} wide, body.${bout}.width says ${length(width)}. The traced one counts.`,
        { related: laid.related(paths, line, workshop.wording) },
      );
    }
  },
};

/** A pencil's width on the template, on both sides. */
const WIDTH_APART = 1.5e-3;
const LENGTH_APART = 1e-3;
