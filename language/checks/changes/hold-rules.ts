/** Holds: that they can be solved, and what to do when they cannot. */
import type { Dimension } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Definition } from '../../facts/facts.js';
import { discernibleDifference } from '../../recipes/evaluation/effects.js';
import type { HoldOutcome, SolvedHold } from '../../recipes/instrument/hold.js';
import { type Held, type HoldRequest, movedBy } from '../../recipes/instrument/instrument.js';
import type { Workshop } from '../../recipes/workshop.js';
import { recipeOf } from '../in-force.js';
import { didYouMean } from '../../quantities/suggest.js';
import { insertAt, replace } from '../mending.js';
import { whatIsMissing, whyUnknown } from '../values/missing.js';
import { percent, shown } from '../phrases.js';
import type { Rule } from '../rule.js';

const WOODS = `wood spruce-12 is sitka-spruce { density: 421 kg/m³  modulus.along: 10.8 GPa  modulus.across: 0.82 GPa  modulus.twist: 0.7 GPa }
wood stiff-7 is sitka-spruce { density: 430 kg/m³  modulus.along: 12.2 GPa  modulus.across: 0.9 GPa  modulus.twist: 0.7 GPa }
model tarn { scale: 645 mm }
recipe tarn-1 for tarn { top { wood: spruce-12  thickness: 2.85 mm } }
`;
const GOOD = `${WOODS}recipe tarn-2 from tarn-1 {
  because "Stiffer set, same stiffness."
  change top.wood: spruce-12 -> stiff-7
  hold top.stiffness.along by top.thickness
}`;

export const HOLD_OUT_OF_REACH: Rule = {
  code: 'hold-out-of-reach',
  severity: 'error',
  title: 'A hold that cannot be met within reason',
  reason:
    'Within what can sensibly be built, no size brings the quantity back to where the parent has it. The recipe would call for something that cannot be made.',
  bad: `${WOODS}recipe tarn-2 from tarn-1 {
  because "Much stiffer."
  change top.wood: spruce-12 -> stiff-7
  hold top.stiffness.along at 80 N·m by top.thickness
}`,
  good: GOOD,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { request, outcome } of holdsOf(definition, workshop, 'out-of-reach')) {
      const quantity = workshop.derivations('recipe').find(request.quantity)?.quantity;
      if (!quantity) continue;
      const by = dimensionOf(request.by, workshop);
      const size = (si: number) => (by ? writeQuantity(si, by) : String(si));
      const off = outcome.target === 0 ? '' : ` (${percent(outcome.reached / outcome.target - 1)})`;
      report(
        request.statement.span,
        say`${request.quantity} cannot be held at ${shown(outcome.target, quantity)}: between ${size(outcome.low)} and ${size(outcome.high)} the nearest is ${shown(outcome.reached, quantity)}${off}, with ${request.by} at ${size(outcome.closest)}. Choose another wood or hold it at a value within reach.`,
      );
    }
  },
};

export const HOLD_LOOP: Rule = {
  code: 'hold-loop',
  severity: 'error',
  title: 'Holds that wait for each other',
  reason: 'Each of these holds moves what the other keeps, so neither can be solved first.',
  bad: `${WOODS}recipe tarn-2 from tarn-1 {
  because "Both at once."
  change top.wood: spruce-12 -> stiff-7
  hold top.stiffness.along by top.thickness
  hold top.stiffness.across by top.thickness
}`,
  good: GOOD,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { request, outcome } of holdsOf(definition, workshop, 'loop')) {
      const alike = outcome.paths.every((path) => path.endsWith(` by ${request.by}`));
      report(
        request.statement.span,
        alike
          ? say`${request.by} cannot serve two holds: ${outcome.paths.join('; ')}. Keep one of them.`
          : say`These holds need each other: ${outcome.paths.join('; ')}. Keep one of them, or hold by something the other does not move.`,
      );
    }
  },
};

export const HOLD_NO_EFFECT: Rule = {
  code: 'hold-no-effect',
  severity: 'error',
  title: 'A hold by something that has no effect',
  reason: 'The quantity does not depend on the size named, so moving that size cannot keep it.',
  bad: `${WOODS}recipe tarn-2 from tarn-1 {
  because "Stiffer set, same stiffness."
  back.thickness: 2.4 mm
  change top.wood: spruce-12 -> stiff-7
  hold top.stiffness.along by back.thickness
}`,
  good: GOOD,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const idle = holdsOf(definition, workshop, 'no-effect');
    // A hold that happens to be met already is solved whatever it moves; it would fail at the next change.
    const evaluation = workshop.evaluation(definition.name.text);
    const lucky = holdsOf(definition, workshop, 'solved').filter(
      ({ request: { quantity, by } }) =>
        evaluation?.derived(quantity)?.known === true && !evaluation.gradient(quantity).has(by),
    );
    for (const { request } of [...idle, ...lucky]) {
      report(
        request.statement.span,
        say`${request.quantity} does not depend on ${request.by}. Hold it by a size that moves it.`,
      );
    }
  },
};

export const HOLD_UNKNOWN: Rule = {
  code: 'hold-unknown',
  severity: 'warning',
  title: 'A hold of something that cannot be computed yet',
  reason:
    'What is missing is never taken to be zero. Until it is given, the hold is not solved and the size stays as the parent has it.',
  bad: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { top.thickness: 2.85 mm }
recipe tarn-2 from tarn-1 { because "Same stiffness."  hold top.stiffness.along by top.thickness }`,
  good: GOOD,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { request, outcome } of holdsOf(definition, workshop, 'unknown')) {
      const missing = whatIsMissing(outcome.missing, workshop.evaluation(definition.name.text), workshop);
      const why = whyUnknown(missing, outcome.trouble, workshop.wording);
      report(request.statement.span, say`Cannot hold ${request.quantity}: ${why}.`);
    }
  },
};

export const HOLD_NOT_POSSIBLE: Rule = {
  code: 'hold-not-possible',
  severity: 'error',
  title: 'A hold of or by something that is no number',
  reason: 'A hold keeps one computed quantity by moving one size of the recipe.',
  bad: `${WOODS}recipe tarn-2 from tarn-1 { because "Same."  hold top.stifness by top.thickness }`,
  good: GOOD,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { request, outcome } of holdsOf(definition, workshop, 'not-possible')) {
      if (outcome.what === 'quantity') {
        report(
          request.statement.quantity.span,
          say`${request.quantity} is not a quantity that is computed, such as top.stiffness.along or top.mass.`,
          {
            fixes: computedNear(request.quantity, workshop).map((path, i) => ({
              title: say`Write ${path}`,
              edits: [replace(definition, request.statement.quantity.span, path)],
              preferred: i === 0,
            })),
          },
        );
      } else if (workshop.catalogue.property(request.by, 'recipe')?.kind === 'quantity') {
        report(
          request.statement.by?.span ?? request.statement.span,
          say`This recipe has no ${lacking(request, workshop.instrument(definition.name.text)?.values)} to start from. Give it a value first.`,
        );
      }
    }
  },
};

/** Which of the sizes a hold moves has no number. */
function lacking(request: HoldRequest, values: ReadonlyMap<string, Held> | undefined): string {
  return movedBy(request).find((path) => values?.get(path)?.value.kind !== 'quantity') ?? request.by;
}

/** Computed quantities below a path, `top.stiffness`, or nearly of its name. */
function computedNear(path: string, workshop: Workshop): readonly string[] {
  const known = workshop
    .derivations('recipe')
    .all.map((quantity) => quantity.path)
    .filter((one) => !one.includes('*'));
  const below = known.filter((one) => one.startsWith(`${path}.`));
  return (below.length > 0 ? below : didYouMean(path, known)).slice(0, 3);
}

export const HOLD_WITHOUT_BY: Rule = {
  code: 'hold-without-by',
  severity: 'error',
  title: 'A hold that does not say what to move',
  reason: 'Something has to give for a quantity to stay: the hold names the size that is adjusted.',
  bad: `${WOODS}recipe tarn-2 from tarn-1 { because "Same."  hold top.stiffness.along }`,
  good: GOOD,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const written of workshop.written(definition)) {
      const { statement } = written;
      if (statement.kind !== 'hold' || statement.by || written.role !== 'quantity') continue;
      const plate = /^(top|back)\./.exec(written.canonical)?.[1];
      const by = plate === undefined ? undefined : `${plate}.thickness`;
      report(statement.span, say`Say what to adjust: \`hold ${statement.quantity.text} by ${by ?? '…'}\`.`, {
        fixes:
          by === undefined
            ? []
            : [
                {
                  title: say`Add \`by ${by}\``,
                  edits: [insertAt(definition, statement.span.end, ` by ${by}`)],
                  preferred: true,
                },
              ],
      });
    }
  },
};

export const HOLD_CLOSER_THAN_KNOWN: Rule = {
  code: 'hold-closer-than-known',
  severity: 'information',
  title: 'A hold at a value too near to tell',
  reason:
    'A quantity can be wished for to any digit, but wood and formulas are known only so well. A wish nearer to the parent than that will be met by the parent as often as by this recipe.',
  bad: `${WOODS}recipe tarn-2 from tarn-1 {
  because "A touch stiffer."
  hold top.stiffness.along at 22.5 N·m by top.thickness
}`,
  good: `${WOODS}recipe tarn-2 from tarn-1 {
  because "Stiffer."
  hold top.stiffness.along at 27 N·m by top.thickness
}`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const parent = workshop.parentOf(definition.name.text);
    const before = parent === undefined ? undefined : workshop.startEvaluation(definition.name.text);
    const now = workshop.evaluation(definition.name.text);
    if (!before || !now) return;
    for (const { request, outcome } of holdsOf(definition, workshop, 'solved')) {
      if (!request.statement.at) continue;
      const old = before.derived(request.quantity);
      if (!old?.known) continue;
      const wish = outcome.target - old.si;
      const discernible = discernibleDifference(request.quantity, before, now);
      if (Math.abs(wish) > discernible || Math.abs(wish) <= 1e-9 * Math.abs(old.si)) continue;
      report(
        request.statement.span,
        say`${request.quantity} is ${shown(old.si, old.quantity)} in ${parent ?? ''}; ${shown(outcome.target, old.quantity)} cannot be told from that: it would take ${shown(discernible, old.quantity)}.`,
      );
    }
  },
};

type Ended<K extends HoldOutcome['kind']> = SolvedHold & { readonly outcome: Extract<HoldOutcome, { kind: K }> };

function holdsOf<K extends HoldOutcome['kind']>(
  definition: Definition,
  workshop: Workshop,
  kind: K,
): readonly Ended<K>[] {
  const holds = recipeOf(definition, workshop)?.solvedHolds ?? [];
  return holds.filter((hold): hold is Ended<K> => hold.outcome.kind === kind);
}

function dimensionOf(path: string, workshop: Workshop): Dimension | undefined {
  return workshop.catalogue.property(path)?.dimension;
}
