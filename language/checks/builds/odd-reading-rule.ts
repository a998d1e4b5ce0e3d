/** A reading that does not fit any other of its kind: asked about, never dropped in silence. */
import { placeOf } from '../mending.js';
import { writeValue } from '../phrases.js';
import { isInForce } from '../in-force.js';
import type { Rule } from '../rule.js';
import { ODD_READING } from '../../recipes/builds/responses.js';

const LINE = `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { top.thickness: 2.85 mm }
build no-31 of tarn-1 { reading day-1 { resonance.top: 183 Hz } }
build no-32 of tarn-1 { reading day-1 { resonance.top: 181 Hz } }
build no-33 of tarn-1 { reading day-1 { resonance.top: 182 Hz } }
`;

export const ODD_READING_RULE: Rule = {
  code: ODD_READING,
  severity: 'warning',
  title: 'A reading far from all others of its kind',
  reason:
    'No change in a recipe moves a resonance, a mass or a deflection by half of itself. A digit may be missing, or another peak was read. Until you have answered, the reading is kept out of the evidence; if it is right, accept it with a reason.',
  bad: `${LINE}build no-34 of tarn-1 { reading day-1 { resonance.top: 18.1 Hz } }`,
  good: `${LINE}build no-34 of tarn-1 { reading day-1 { resonance.top: 181 Hz } }`,
  of: ['build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const name = definition.name.text;
    const build = isInForce(definition, workshop) ? workshop.build(name) : undefined;
    const model = build?.recipe && workshop.lineage(build.recipe.name).model?.name.text;
    if (model === undefined) return;
    for (const { path, held, like } of workshop.oddReadings(model).get(name) ?? []) {
      report(
        held.value.span,
        say`${path} is ${writeValue(held.value)} here, where others have ${writeValue(like.value)} or so. Is it right? Until you have answered it is kept out of the evidence.`,
        { related: [{ place: placeOf(like.from), message: say`this is the usual` }] },
      );
    }
  },
};
