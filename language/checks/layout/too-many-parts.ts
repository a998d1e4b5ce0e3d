/** More braces or points of a thickness map than the solver takes on. */
import { PLATE_LIMITS } from '../../mechanics/plate/index.js';
import type { Wording } from '../../wording/wording.js';
import type { Rule } from '../rule.js';
import { laidOut } from './laid-out.js';

const { braces, mapPoints } = PLATE_LIMITS;

interface Counted {
  readonly part: string;
  readonly most: number;
  readonly told: (count: number, wording: Wording) => string;
}

const COUNTED: readonly Counted[] = [
  {
    part: 'bracing',
    most: braces,
    told: (count, { say }) =>
      say`The top has ${count} braces. Where those after the first ${braces} lie is not checked, and its resonances are not known.`,
  },
  {
    part: 'back-bracing',
    most: braces,
    told: (count, { say }) =>
      say`The back has ${count} braces. Where those after the first ${braces} lie is not checked, and its resonances are not known.`,
  },
  {
    part: 'top.map',
    most: mapPoints,
    told: (count, { say }) =>
      say`The thickness of the top is given at ${count} points; with more than ${mapPoints} its resonances, and what is worked out with them, are not known.`,
  },
  {
    part: 'back.map',
    most: mapPoints,
    told: (count, { say }) =>
      say`The thickness of the back is given at ${count} points; with more than ${mapPoints} its resonances, and what is worked out with them, are not known.`,
  },
];

export const TOO_MANY_PARTS: Rule = {
  code: 'too-many-parts',
  severity: 'warning',
  title: 'More braces, or points of a thickness map, than are worked out',
  reason:
    'The solver of plates takes on twice the braces of the most heavily braced top, and a map with a point every few centimetres. Beyond that it would keep you waiting, so it does not begin; masses and everything else are there as ever.',
  // Too long for a page.
  bad: '',
  good: `model tarn { bracing { x-bass { from: (78 mm, -150 mm)  to: (405 mm, 92 mm)  width: 7.9 mm  height: 15.9 mm  profile: parabolic } } }`,
  of: ['model', 'recipe'],
  check(definition, workshop, report) {
    const laid = laidOut(definition, workshop, /^(?:(?:back-)?bracing|(?:top|back)\.map)\./);
    for (const { part, most, told } of laid ? COUNTED : []) {
      const count = laid!.evaluation.ground.members(part).length;
      if (count <= most) continue;
      // Where members are given last; whoever takes them all from elsewhere is not told again.
      const own = [...laid!.values.values()].findLast(
        ({ path, from }) => from.definition === definition && path.startsWith(`${part}.`),
      );
      if (own) report(own.from.span, told(count, workshop.wording));
    }
  },
};
