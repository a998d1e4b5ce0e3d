/** The pictures of an instrument that go into a file: its whole plan, or templates of its parts. */
import type { Workshop } from '../../recipes/workshop.js';
import { sideOf } from '../../recipes/instrument/sides.js';
import { english } from '../../wording/wording.js';
import { partInWords } from '../part-words.js';
import { Attempts } from './attempt.js';
import { dimensionWords } from './drawing-words.js';
import type { NotDrawn } from './plan.js';
import { planOf } from './plan-of.js';
import { templateOf, TEMPLATES } from './templates.js';
import { type Picture, pictureOf } from './write/picture.js';

/** What can be asked for: the whole plan, and every template. */
export const PLAN_PARTS: readonly string[] = ['plan', ...TEMPLATES.map(({ key }) => key)];

export interface Pictures {
  readonly pictures: readonly Picture[];
  readonly missing: readonly NotDrawn[];
}

/** Undefined when there is no model, recipe or build of this name. `keys`: of `PLAN_PARTS`. */
export function picturesOf(workshop: Workshop, name: string, keys: readonly string[]): Pictures | undefined {
  const side = sideOf(workshop, name);
  if (!side) return undefined;
  const { wording } = workshop;
  const attempts = new Attempts(side.evaluation, wording.told);
  const source = {
    ask: attempts.ask,
    bracesOf: attempts.bracesOf,
    partTitle: (part: string) => partInWords(part, wording),
    length: dimensionWords(workshop.settings(), wording).length,
  };
  const pictures = keys.flatMap((key) => {
    if (key === 'plan') return wholePlan(workshop, name);
    return attempts.of(key, () => [templateOf(key, source, wording.text)].filter((made) => made !== undefined));
  });
  // A template of nothing is not a sheet of paper.
  return { pictures: pictures.filter(({ shapes }) => shapes.length > 0), missing: attempts.missing };
}

function wholePlan(workshop: Workshop, name: string): readonly Picture[] {
  const { text } = workshop.wording;
  return (planOf(workshop, name)?.views ?? []).map((view) =>
    pictureOf(view, `plan-${view.name}`, text(VIEWS[view.name])),
  );
}

const VIEWS = { top: english('Plan of the top'), back: english('Plan of the back'), side: english('From the side') };
