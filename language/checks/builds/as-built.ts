/** What was made against what was meant: the difference, what it does, and what can still be done about it. */
import { type Stage, STAGES } from '../../catalogue/property.js';
import { writeQuantity } from '../../quantities/write.js';
import type { BuildRecord } from '../../recipes/builds/builds.js';
import { effectsBetween } from '../../recipes/evaluation/effects.js';
import type { Definition } from '../../facts/facts.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import { standardUncertainty } from '../../recipes/instrument/tolerances.js';
import type { Workshop } from '../../recipes/workshop.js';
import { BOX } from '../example-box.js';
import { isInForce } from '../in-force.js';
import { placeOf } from '../mending.js';
import { percent, shown, shownEffect, writeValue } from '../phrases.js';
import { mayBeAnotherUnit } from '../values/plausible-values.js';
import type { Rule } from '../rule.js';
import { isSound } from '../sound-value.js';
import { sentences } from '../../wording/wording.js';

export const AS_BUILT_DIFFERS: Rule = {
  code: 'as-built-differs',
  severity: 'warning',
  title: 'Built otherwise than the recipe says',
  reason:
    'What was made differs from the recipe by more than the shop works to. The finished instrument speaks for what was made, so the difference is carried into every number and comparison.',
  bad: `${BOX}build no-31 of tarn-1 { top.thickness: 2.65 mm }`,
  good: `${BOX}build no-31 of tarn-1 { top.thickness: 2.87 mm }`,
  of: ['build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const build = recordOf(definition, workshop);
    if (!build?.recipe) return;
    const before = workshop.evaluation(build.recipe.name);
    for (const { path, meant, made } of build.departures) {
      const [a, b] = [meant.value, made.value];
      // What cannot be used, here or in the recipe, is told where it stands.
      const property = workshop.catalogue.property(path, 'build');
      if (!isSound(a, property, workshop) || !isSound(b, property, workshop)) continue;
      if (mayBeAnotherUnit(path, definition, workshop)) continue;
      if (a.kind !== 'quantity' || b.kind !== 'quantity') {
        if (b.kind === 'unknown') continue;
        report(
          made.from.span,
          sentences(
            say`${build.recipe.name} says ${writeValue(a)} here; this was built with ${writeValue(b)}.`,
            effects([made]),
          ),
          {
            severity: workshop.classOf(path) === 'voicing' ? 'warning' : 'information',
            related: [{ place: placeOf(meant.from), message: say`${path} is ${writeValue(a)} here` }],
          },
        );
        continue;
      }
      const by = b.quantity.si - a.quantity.si;
      if (a.quantity.dimension.name !== b.quantity.dimension.name || Math.abs(by) <= allowed(path, meant, workshop))
        continue;
      const difference = writeQuantity(Math.abs(by), a.quantity.dimension, {
        unit: b.quantity.unit,
        difference: true,
      }).replace(/^\+/, '');
      report(
        made.from.span,
        sentences(
          by > 0
            ? say`${difference} more than ${build.recipe.name} says (${writeValue(a)}).`
            : say`${difference} less than ${build.recipe.name} says (${writeValue(a)}).`,
          effects([made]),
          remedy(path, by, writeValue(a), workshop, definition),
        ),
        { related: [{ place: placeOf(meant.from), message: say`${path} is ${writeValue(a)} here` }] },
      );
    }

    function effects(held: readonly Held[]): string {
      if (!before || !build?.recipe) return '';
      const values = new Map(build.recipe.values);
      for (const one of held) values.set(one.path, one);
      const found = effectsBetween(before, workshop.evaluate(values)).slice(0, 3);
      return found.length === 0 ? '' : say`That makes ${workshop.wording.and(found.map(shownEffect))}.`;
    }
  },
};

export const MEASURED_DIFFERS: Rule = {
  code: 'measured-differs-from-computed',
  severity: 'information',
  title: 'A reading that disagrees with the computation',
  reason:
    'Computed from what was built, the figure comes out otherwise than it was read, by more than the measurements leave open. Either a measurement is off, or the instrument is not what the recipe describes.',
  bad: `${BOX}build no-31 of tarn-1 { top { thickness: 2.85 mm  mass: 190 g } }`,
  good: `${BOX}build no-31 of tarn-1 { top { thickness: 2.85 mm  mass: 161 g } }`,
  of: ['build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const build = recordOf(definition, workshop);
    if (!build) return;
    for (const reading of build.readings) {
      for (const [path, held] of reading.values) {
        const computed = build.evaluation.derived(path);
        if (held.value.kind !== 'quantity' || !computed?.known) continue;
        if (held.value.quantity.dimension.name !== computed.quantity.dimension.name) continue;
        const own = standardUncertainty(path, held.value, workshop.settings().tolerances);
        const spread = build.evaluation.uncertainty(path);
        const by = held.value.quantity.si - computed.si;
        if (Math.abs(by) <= 2 * Math.hypot(own, spread)) continue;
        const share = computed.si === 0 ? '' : ` (${percent(by / computed.si)})`;
        report(
          held.from.span,
          say`Read ${writeValue(held.value)}${share}; as built, ${path} computes to ${shown(computed.si, computed.quantity, spread)}. Check the reading and the sizes as built.`,
        );
      }
    }
  },
};

export function recordOf(definition: Definition, workshop: Workshop): BuildRecord | undefined {
  return isInForce(definition, workshop) ? workshop.build(definition.name.text) : undefined;
}

/** Half-width the value is made to: its own tolerance, or the shop's. */
function allowed(path: string, meant: Held, workshop: Workshop): number {
  const half = standardUncertainty(path, meant.value, workshop.settings().tolerances) * Math.sqrt(3);
  return half * (1 + 1e-9) + 1e-12;
}

/** What would bring it back, while wood can still be taken off: plates and braces only get thinner, a soundhole only larger. */
function remedy(path: string, by: number, meant: string, workshop: Workshop, build: Definition): string {
  const { say } = workshop.wording;
  const tooLate = say`That can no longer be changed.`;
  const property = workshop.catalogue.property(path, 'recipe');
  const open = property?.freeze?.easier;
  if (!open) return isFrozen(property?.freeze?.impossible, build, workshop) ? tooLate : '';
  const wayBack = by > 0 ? 'smaller' : 'larger';
  if (wayBack !== open.way)
    return open.way === 'smaller'
      ? say`It cannot be put back: wood only comes off.`
      : say`It cannot be put back: a hole only gets larger.`;
  if (isFrozen(open.impossible, build, workshop)) return tooLate;
  return open.way === 'smaller'
    ? say`Taking it down to ${meant} would bring it back.`
    : say`Opening it to ${meant} would bring it back.`;
}

/** Whether the build has passed the stage after which a thing cannot be changed. */
function isFrozen(after: Stage | undefined, build: Definition, workshop: Workshop): boolean {
  if (after === undefined) return false;
  const stated = workshop.stated(build);
  const reached = stated.get('reached')?.value;
  if (stated.has('finished') || stated.has('delivered')) return true;
  if (reached?.kind !== 'name') return false;
  const at = STAGES.findIndex((stage) => stage === reached.name);
  return at >= 0 && at >= STAGES.findIndex((stage) => stage === after);
}
