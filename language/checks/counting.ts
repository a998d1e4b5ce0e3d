/** One change an instrument: what a recipe varies, what each variation does, and whether it could be told apart. */
import type { Quantity } from '../quantities/quantity.js';
import { writeQuantity } from '../quantities/write.js';
import { differencesBetween } from '../recipes/comparison.js';
import { type Count, isCounted, type Variable, type Verdict } from '../recipes/counting.js';
import type { Effect } from '../recipes/effects.js';
import type { Definition, Span } from '../recipes/facts.js';
import type { Workshop } from '../recipes/workshop.js';
import { groupAsOne, splitIntoChain } from './fewer-changes.js';
import type { Fix } from './finding.js';
import { diffOf } from './in-force.js';
import { insertLine, placeOf, replace, textAt } from './mending.js';
import { inWords, shown, shownEffect, someOf } from './phrases.js';
import type { Rule } from './rule.js';

const BOX = `wood spruce-12 is sitka-spruce { density: 421 kg/m³  modulus.along: 10.8 GPa  modulus.across: 0.82 GPa  modulus.twist: 0.7 GPa }
model tarn {
  body {
    length: 495 mm
    lower-bout { width: 390 mm  station: 112 mm }
    waist { width: 243 mm  station: 292 mm }
    upper-bout { width: 286 mm  station: 422 mm }
    depth { tail: 104 mm  neck: 89 mm }
  }
  soundhole { diameter: 100 mm  station: 335 mm }
}
recipe tarn-1 for tarn { top { wood: spruce-12  thickness: 2.85 mm } }
`;

export const TOO_MANY_CHANGES: Rule = {
  code: 'too-many-changes',
  severity: 'warning',
  title: 'More changes than one instrument can answer for',
  reason:
    'If two things change at once and the guitar sounds different, nobody can say which of them did it. A shop sets how many things an instrument may vary; a group of changes that make one tweak counts as one.',
  bad: `${BOX}recipe tarn-2 from tarn-1 {
  because "Livelier."
  change top.thickness: 2.85 mm -> 2.6 mm
  change soundhole.diameter: 100 mm -> 94 mm
}`,
  good: `${BOX}recipe tarn-2 from tarn-1 {
  because "Livelier."
  change top.thickness: 2.85 mm -> 2.6 mm
}
recipe tarn-3 from tarn-2 {
  because "Lower the air resonance."
  change soundhole.diameter: 100 mm -> 94 mm
}`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const diff = diffOf(definition, workshop);
    if (!diff) return;
    const count = workshop.count(diff.recipe.name);
    const limit = workshop.limit(definition);
    if (count.total <= limit.count) return;
    const counted = countedIn(count);
    const allowed = limit.by === 'shop' ? `the shop allows ${limit.count}` : `this recipe allows ${limit.count}`;
    const list = counted.map((variable) => `${variable.label} (${doing(variable)})`).join('; ');
    const alone =
      count.total > 2
        ? ' With more than two, no difference in the result can be attributed.'
        : ' A difference in the result could come from either.';
    const message = `${count.total === 1 ? '1 change' : `${count.total} changes`}, and ${allowed}: ${list}.${count.total > 1 ? alone : ''}`;
    report(headOf(definition), message, {
      related: counted.map(({ label, changes }) => ({ place: placeOf(changes[0]!.from), message: `changes ${label}` })),
      fixes: [
        ...splitIntoChain(definition, diff.recipe, counted, workshop),
        ...groupAsOne(definition, counted),
        allow(definition, count.total),
      ],
    });
  },
};

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
    for (const { variable } of withVerdict(definition, workshop, 'promoted')) {
      report(spanOf(variable), `Counted, although it is only ${CLASS_WORDS[variable.class] ?? 'an appointment'}: ${doing(variable)}, which can be told apart.`);
    }
  },
};

export const SUBSTITUTION: Rule = {
  code: 'substitution',
  severity: 'information',
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
    for (const { variable } of withVerdict(definition, workshop, 'substitution')) {
      const left = variable.effects.length === 0 ? 'with no computed difference' : `leaving ${doing(variable)}`;
      report(spanOf(variable), `A substitution, not counted: another set of the same species, ${left}.`);
    }
  },
};

export const OTHER_WOOD: Rule = {
  code: 'other-wood',
  severity: 'information',
  title: 'Another wood that makes a difference',
  reason:
    'Wood is given, not chosen freely: what matters is what another set does to stiffness and mass. Holding the stiffness leaves the mass as the only difference.',
  bad: `${BOX}wood red-9 is red-spruce { density: 440 kg/m³  modulus.along: 13.2 GPa  modulus.across: 0.95 GPa  modulus.twist: 0.8 GPa }
recipe tarn-2 from tarn-1 { because "Stiffer set."  change top.wood: spruce-12 -> red-9 }`,
  good: `${BOX}recipe tarn-2 from tarn-1 { because "Thinner."  change top.thickness: 2.85 mm -> 2.6 mm }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    for (const { variable } of withVerdict(definition, workshop, 'counted')) {
      const [only] = variable.changes;
      if (variable.changes.length !== 1 || !only || workshop.catalogue.property(only.path)?.kind !== 'wood') continue;
      if (variable.effects.length === 0) continue;
      const part = only.path.slice(0, only.path.lastIndexOf('.'));
      const holds = definition.statements.some((one) => one.kind === 'hold');
      const canHold = part === 'top' || part === 'back';
      report(spanOf(variable), `This wood counts as one change: ${doing(variable, 3)}.`, {
        fixes:
          holds || !canHold
            ? []
            : [
                {
                  title: `Hold ${part}.stiffness.along by ${part}.thickness`,
                  edits: [insertLine(definition, `hold ${part}.stiffness.along by ${part}.thickness`, undefined)],
                },
              ],
      });
    }
  },
};

export const UNBUILT_PARENT: Rule = {
  code: 'unbuilt-parent',
  severity: 'warning',
  title: 'A parent nobody has heard',
  reason:
    'Only an instrument that was built can be listened to. When the parent exists on paper only, the guitar on the bench is compared with the last one built, and differs from it by more than the recipe shows.',
  bad: `${BOX}build no-31 of tarn-1 { resonance.top: 181 Hz }
recipe tarn-2 from tarn-1 { because "Lighter."  change top.thickness: 2.85 mm -> 2.6 mm }
recipe tarn-3 from tarn-2 { because "Lower air."  change soundhole.diameter: 100 mm -> 94 mm }`,
  good: `${BOX}build no-31 of tarn-1 { resonance.top: 181 Hz }
recipe tarn-2 from tarn-1 { because "Lighter."  change top.thickness: 2.85 mm -> 2.6 mm }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const diff = diffOf(definition, workshop);
    if (!diff || workshop.buildsOf(diff.parentName).length > 0) return;
    const builtName = workshop.lastBuiltAncestor(diff.recipe.name);
    const built = builtName === undefined ? undefined : workshop.instrument(builtName);
    if (!built) return;
    const solved = new Set([...diff.recipe.values.values()].filter(({ via }) => via === 'solved').map(({ path }) => path));
    const counted = differencesBetween(built.values, diff.recipe.values, workshop.classOf).filter(
      ({ class: of, paths }) => (of === 'voicing' || of === 'body') && !paths.every(({ path }) => solved.has(path)),
    );
    if (counted.length === 0) return;
    const limit = workshop.limit(definition).count;
    const names = someOf(counted.map(({ label }) => label));
    const beyond = counted.length > limit;
    report(
      definition.relation!.target.span,
      `${diff.parentName} has not been built. Against ${built.name}, the last one that was, this is ${counted.length} ${counted.length === 1 ? 'change' : 'changes'}: ${names}.${beyond ? ' What is heard will be the sum of them.' : ''}`,
      { severity: beyond ? 'warning' : 'information' },
    );
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
    for (const { variable } of withVerdict(definition, workshop, 'counted')) {
      const [best] = variable.effects;
      if (!best || Math.abs(best.difference) > best.discernible || best.difference === 0) continue;
      const [only] = variable.changes;
      const [from, to] = [only?.before?.value, only?.after?.value];
      const step =
        variable.changes.length === 1 && from?.kind === 'quantity' && to?.kind === 'quantity'
          ? smallestStep(to.quantity.si - from.quantity.si, best.discernible / Math.abs(best.difference), to.quantity)
          : '';
      report(spanOf(variable), `Too small to tell: ${shownEffect(best)}, and less than ±${withoutSign(best)} would come about anyway.${step}`);
    }
  },
};

export const ALLOWANCE_WITHOUT_REASON: Rule = {
  code: 'allowance-without-reason',
  severity: 'warning',
  title: 'More changes allowed without saying why',
  reason: 'Allowing more than one change gives up knowing which of them did it. There are good reasons to; one of them should be written down.',
  bad: `${BOX}recipe tarn-2 from tarn-1 {
  because "Livelier."
  allow 2
  change top.thickness: 2.85 mm -> 2.6 mm
  change soundhole.diameter: 100 mm -> 94 mm
}`,
  good: `${BOX}recipe tarn-2 from tarn-1 {
  because "Livelier."
  allow 2 because "A client's guitar, not a trial."
  change top.thickness: 2.85 mm -> 2.6 mm
  change soundhole.diameter: 100 mm -> 94 mm
}`,
  of: ['recipe'],
  check(definition, _, report) {
    for (const statement of definition.statements) {
      if (statement.kind !== 'allow' || (statement.reason && statement.reason.text.trim() !== '')) continue;
      report(statement.span, 'Say why more changes are allowed here: `allow 2 because "…"`.', {
        fixes: [
          {
            title: 'Add `because`',
            edits: [replace(definition, statement.span, `allow ${statement.count} because ""`)],
          },
        ],
      });
    }
  },
};

export const ALLOWANCE_UNUSED: Rule = {
  code: 'allowance-unused',
  severity: 'hint',
  title: 'An allowance nothing needs',
  reason: 'The recipe changes no more than the shop allows anyway. Left standing, the allowance would let the next change slip in unseen.',
  bad: `${BOX}recipe tarn-2 from tarn-1 {
  because "Lighter."
  allow 2 because "A client's guitar, not a trial."
  change top.thickness: 2.85 mm -> 2.6 mm
}`,
  good: `${BOX}recipe tarn-2 from tarn-1 {
  because "Lighter."
  change top.thickness: 2.85 mm -> 2.6 mm
}`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const allow = definition.statements.find((statement) => statement.kind === 'allow');
    const diff = diffOf(definition, workshop);
    if (!allow || !diff) return;
    const { total } = workshop.count(diff.recipe.name);
    const needed = workshop.settings().varyAtMost;
    if (total > needed || allow.count <= needed) return;
    report(allow.span, `Not needed: ${total === 0 ? 'nothing is' : total === 1 ? 'one change is' : `${total} changes are`} counted here, and the shop allows ${needed}.`, {
      tag: 'unnecessary',
    });
  },
};

const CLASS_WORDS: Readonly<Record<string, string>> = { setup: 'setup', option: 'an option', appointment: 'an appointment' };

/** What a variable does, in shop units, its largest effects first. */
function doing(variable: Variable, most = 2): string {
  const effects = variable.effects.slice(0, most).map(shownEffect);
  return effects.length === 0 ? 'effect not computed' : inWords(effects);
}

/** The step at which the largest effect would begin to show, if it grows in proportion. */
function smallestStep(step: number, times: number, like: Quantity): string {
  const size = writeQuantity(Math.abs(step) * times, like.dimension, { unit: like.unit, difference: true, digits: 2 });
  return ` It would begin to show at a step of about ${size.replace(/^\+/, '')}.`;
}

function withoutSign(effect: Effect): string {
  return shown(effect.discernible, effect.quantity);
}

function countedIn(count: Count): readonly Variable[] {
  return count.variables.filter(({ verdict }) => isCounted(verdict)).map(({ variable }) => variable);
}

function withVerdict(definition: Definition, workshop: Workshop, wanted: Verdict) {
  const diff = diffOf(definition, workshop);
  if (!diff) return [];
  return workshop.count(diff.recipe.name).variables.filter(({ verdict }) => verdict === wanted);
}

function spanOf(variable: Variable): Span {
  const { group, changes } = variable;
  if (group) return { start: group.span.start, end: group.reason?.span.end ?? group.span.start };
  return changes[0]!.statement.span;
}

function headOf(definition: Definition): Span {
  return { start: definition.head.start, end: definition.relation?.target.span.end ?? definition.name.span.end };
}

function allow(definition: Definition, count: number): Fix {
  const title = `Allow ${count} changes here, with a reason`;
  const present = definition.statements.find((statement) => statement.kind === 'allow');
  if (!present) return { title, edits: [insertLine(definition, `allow ${count} because ""`)] };
  const rest = textAt(definition, present.span).replace(/^allow\s+\S+/, `allow ${count}`);
  return { title, edits: [replace(definition, present.span, rest)] };
}
