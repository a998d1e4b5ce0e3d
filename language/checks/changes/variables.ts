/** What each thing a recipe varies does, and whether that could be told apart. */
import type { Quantity } from '../../quantities/quantity.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Variable, Verdict } from '../../recipes/instrument/counting.js';
import type { Effect } from '../../recipes/evaluation/effects.js';
import type { Definition, Span } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';
import { BOX } from '../example-box.js';
import { diffOf } from '../in-force.js';
import { insertLine } from '../mending.js';
import { shown, shownEffect } from '../phrases.js';
import type { Rule } from '../rule.js';
import { english, sentences, type Wording } from '../../wording/wording.js';

export const COUNTED_AFTER_ALL: Rule = {
  code: 'counted-after-all',
  severity: 'information',
  title: 'A change of setup or appointments that is large enough to count',
  reason:
    'Setup, options and appointments are not counted, because the player sees them and the top hardly does. When the computed effect on the voice is larger than the shop could overlook, they are counted like any other change.',
  bad: `model tarn { bridge.mass: 27 g }
appointments loaded { electronics.pickup { kind: "under-saddle"  mass: 12 g  on: bridge-plate } }
recipe tarn-1 for tarn { }
recipe tarn-2 from tarn-1 { because "With a pickup."  with loaded }`,
  good: `model tarn { bridge.mass: 27 g }
appointments ember { rosette: "red stone" }
recipe tarn-1 for tarn { }
recipe tarn-2 from tarn-1 { because "A red ring."  with ember }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say, text } = workshop.wording;
    for (const { variable } of withVerdict(definition, workshop, 'promoted')) {
      report(
        spanOf(variable, definition),
        say`Counted, although it is only ${text(CLASS_WORDS[variable.class] ?? 'an appointment')}: ${doing(variable, workshop.wording)}, which can be told apart.`,
      );
    }
  },
};

export const SUBSTITUTION: Rule = {
  code: 'substitution',
  severity: 'hint',
  title: 'Another set of the same wood, held to the same stiffness',
  reason:
    'Every guitar has its own set of wood. Another set of the same species that comes out alike within what the shop can tell apart is no experiment and is not counted; what remains of a difference is reported.',
  bad: `${BOX}wood spruce-13 is sitka-spruce { density: 422 kg/m³  modulus.along: 10.9 GPa  modulus.across: 0.82 GPa  modulus.twist: 0.7 GPa }
recipe tarn-2 from tarn-1 {
  because "Same guitar, next set."
  change top.wood: spruce-12 -> spruce-13
  hold top.stiffness.along by top.thickness
}`,
  good: `${BOX}recipe tarn-2 from tarn-1 { because "The same again, with a red ring."  rosette: "red stone" }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { variable } of withVerdict(definition, workshop, 'substitution')) {
      if (variable.pending) continue;
      report(
        spanOf(variable, definition),
        variable.effects.length === 0
          ? say`A substitution, not counted: another set of the same species, with no computed difference.`
          : say`A substitution, not counted: another set of the same species, leaving ${doing(variable, workshop.wording)}.`,
      );
    }
  },
};

export const OTHER_WOOD: Rule = {
  code: 'other-wood',
  severity: 'hint',
  title: 'Another wood that makes a difference',
  reason:
    'Wood is given, not chosen freely: what matters is what another set does to stiffness and mass. Holding the stiffness leaves the mass as the only difference.',
  bad: `${BOX}wood red-9 is red-spruce { density: 440 kg/m³  modulus.along: 13.2 GPa  modulus.across: 0.95 GPa  modulus.twist: 0.8 GPa }
recipe tarn-2 from tarn-1 { because "Stiffer set."  change top.wood: spruce-12 -> red-9 }`,
  good: `${BOX}recipe tarn-2 from tarn-1 { because "Thinner."  change top.thickness: 2.85 mm -> 2.6 mm }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { variable } of withVerdict(definition, workshop, 'counted')) {
      const [only] = variable.changes;
      if (variable.changes.length !== 1 || !only || workshop.catalogue.property(only.path)?.kind !== 'wood') continue;
      if (variable.effects.length === 0) continue;
      const part = only.path.slice(0, only.path.lastIndexOf('.'));
      const holds = definition.statements.some((one) => one.kind === 'hold');
      const canHold = part === 'top' || part === 'back';
      report(
        spanOf(variable, definition),
        say`This wood counts as one change: ${doing(variable, workshop.wording, 3)}.`,
        {
          fixes:
            holds || !canHold
              ? []
              : [
                  {
                    title: say`Hold ${part}.stiffness.along by ${part}.thickness`,
                    edits: [insertLine(definition, `hold ${part}.stiffness.along by ${part}.thickness`, undefined)],
                  },
                ],
        },
      );
    }
  },
};

export const TOO_SMALL_TO_TELL: Rule = {
  code: 'too-small-to-tell',
  severity: 'information',
  title: 'A change too small to show',
  reason:
    'No hand works exactly and no wood is measured exactly. A change whose effect is smaller than what those leave open cannot be found again in the finished instrument.',
  bad: `${BOX}recipe tarn-2 from tarn-1 { because "A touch lighter."  change top.thickness: 2.85 mm -> 2.83 mm }`,
  good: `${BOX}recipe tarn-2 from tarn-1 { because "Lighter."  change top.thickness: 2.85 mm -> 2.6 mm }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { variable } of withVerdict(definition, workshop, 'counted')) {
      if (variable.matters) continue;
      const [best] = variable.effects;
      if (!best || Math.abs(best.difference) > best.discernible || best.difference === 0) continue;
      const [only] = variable.changes;
      const [from, to] = [only?.before?.value, only?.after?.value];
      const step =
        variable.changes.length === 1 && from?.kind === 'quantity' && to?.kind === 'quantity'
          ? smallestStep(
              to.quantity.si - from.quantity.si,
              best.discernible / Math.abs(best.difference),
              to.quantity,
              workshop.wording,
            )
          : '';
      report(
        spanOf(variable, definition),
        sentences(
          say`Too small to tell: ${shownEffect(best)}, and less than ±${withoutSign(best)} would come about anyway.`,
          step,
        ),
      );
    }
  },
};

/** What a variable does, in shop units, its largest effects first. */
export function doing(variable: Variable, { and, text }: Wording, most = 2): string {
  // A tenth of a per cent beside ten is not worth the words.
  const worth = variable.effects.filter(({ difference, before }) => Math.abs(difference) >= 0.005 * Math.abs(before));
  const effects = (worth.length > 0 ? worth : variable.effects).slice(0, most).map(shownEffect);
  return effects.length === 0 ? text('effect not computed') : and(effects);
}

const CLASS_WORDS: Readonly<Record<string, string>> = {
  setup: english('setup'),
  option: english('an option'),
  appointment: english('an appointment'),
};

/** The step at which the largest effect would begin to show, if it grows in proportion. */
function smallestStep(step: number, times: number, like: Quantity, { say }: Wording): string {
  const size = writeQuantity(Math.abs(step) * times, like.dimension, { unit: like.unit, difference: true, digits: 2 });
  return say`It would begin to show at a step of about ${size.replace(/^\+/, '')}.`;
}

function withoutSign(effect: Effect): string {
  return shown(effect.discernible, effect.quantity);
}

function withVerdict(definition: Definition, workshop: Workshop, wanted: Verdict) {
  const diff = diffOf(definition, workshop);
  if (!diff) return [];
  return workshop.count(diff.recipe.name).variables.filter(({ verdict }) => verdict === wanted);
}

function spanOf({ group, changes }: Variable, definition: Definition): Span {
  if (group) return { start: group.span.start, end: group.reason?.span.end ?? group.span.start };
  return changes[0]?.statement.span ?? definition.name.span;
}
