/** One change an instrument: how many things a recipe varies, against its parent and against what was last built. */
import { differencesBetween } from '../../recipes/instrument/comparison.js';
import { type Count, isCounted, type Variable } from '../../recipes/instrument/counting.js';
import type { Definition, Span } from '../../facts/facts.js';
import { BOX } from '../example-box.js';
import { groupAsOne, splitIntoChain } from './fewer-changes.js';
import type { Fix } from '../finding.js';
import { diffOf } from '../in-force.js';
import { insertLine, placeOf, replace, textAt } from '../mending.js';
import type { Rule } from '../rule.js';
import { doing } from './variables.js';
import { sentences, type Wording } from '../../wording/wording.js';

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
    const { say } = workshop.wording;
    const diff = diffOf(definition, workshop);
    if (!diff) return;
    const count = workshop.count(diff.recipe.name);
    const limit = workshop.limit(definition);
    if (count.total <= limit.count) return;
    const counted = countedIn(count);
    const allowed = limit.by === 'shop' ? say`the shop allows ${limit.count}` : say`this recipe allows ${limit.count}`;
    const list = counted.map((variable) => `${variable.label} (${doing(variable, workshop.wording)})`).join('; ');
    const alone =
      count.total > 2
        ? say`With more than two, no difference in the result can be attributed.`
        : say`A difference in the result could come from either.`;
    const message =
      count.total === 1
        ? say`1 change, and ${allowed}: ${list}.`
        : sentences(say`${count.total} changes, and ${allowed}: ${list}.`, alone);
    report(headOf(definition), message, {
      related: counted.flatMap(({ label, changes }) =>
        changes.slice(0, 1).map(({ from }) => ({ place: placeOf(from), message: say`changes ${label}` })),
      ),
      fixes: [
        ...splitIntoChain(definition, diff.recipe, counted, workshop),
        ...groupAsOne(definition, counted, workshop.wording),
        allow(definition, count.total, workshop.wording),
      ],
    });
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
    const { say } = workshop.wording;
    const diff = diffOf(definition, workshop);
    if (!diff || workshop.buildsOf(diff.parentName).length > 0) return;
    const builtName = workshop.lastBuiltAncestor(diff.recipe.name);
    const built = builtName === undefined ? undefined : workshop.instrument(builtName);
    if (!built) return;
    const solved = new Set(
      [...diff.recipe.values.values()].filter(({ via }) => via === 'solved').map(({ path }) => path),
    );
    const counted = differencesBetween(built.values, diff.recipe.values, workshop.classOf).filter(
      ({ class: of, paths }) => (of === 'voicing' || of === 'body') && !paths.every(({ path }) => solved.has(path)),
    );
    if (counted.length === 0) return;
    const limit = workshop.limit(definition).count;
    const names = workshop.wording.some(counted.map(({ label }) => label));
    const beyond = counted.length > limit;
    report(
      definition.relation?.target.span ?? definition.name.span,
      sentences(
        counted.length === 1
          ? say`${diff.parentName} has not been built. Against ${built.name}, the last one that was, this is 1 change: ${names}.`
          : say`${diff.parentName} has not been built. Against ${built.name}, the last one that was, this is ${counted.length} changes: ${names}.`,
        beyond ? say`What is heard will be the sum of them.` : '',
      ),
      { severity: beyond ? 'warning' : 'information' },
    );
  },
};

export const ALLOWANCE_WITHOUT_REASON: Rule = {
  code: 'allowance-without-reason',
  severity: 'warning',
  title: 'More changes allowed without saying why',
  reason:
    'Allowing more than one change gives up knowing which of them did it. There are good reasons to; one of them should be written down.',
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
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const statement of definition.statements) {
      if (statement.kind !== 'allow' || (statement.reason && statement.reason.text.trim() !== '')) continue;
      report(statement.span, say`Say why more changes are allowed here: \`allow 2 because "…"\`.`, {
        fixes: [
          {
            title: say`Add \`because\``,
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
  reason:
    'The recipe changes no more than the shop allows anyway. Left standing, the allowance would let the next change slip in unseen.',
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
    const { say } = workshop.wording;
    const allow = definition.statements.find((statement) => statement.kind === 'allow');
    const diff = diffOf(definition, workshop);
    if (!allow || !diff) return;
    const { total } = workshop.count(diff.recipe.name);
    const needed = workshop.settings().varyAtMost;
    if (total > needed || allow.count <= needed) return;
    report(
      allow.span,
      total === 0
        ? say`Not needed: nothing is counted here, and the shop allows ${needed}.`
        : total === 1
          ? say`Not needed: one change is counted here, and the shop allows ${needed}.`
          : say`Not needed: ${total} changes are counted here, and the shop allows ${needed}.`,
      {
        tag: 'unnecessary',
      },
    );
  },
};

function countedIn(count: Count): readonly Variable[] {
  return count.variables.filter(({ verdict }) => isCounted(verdict)).map(({ variable }) => variable);
}

function headOf(definition: Definition): Span {
  return { start: definition.head.start, end: definition.relation?.target.span.end ?? definition.name.span.end };
}

function allow(definition: Definition, count: number, { say }: Wording): Fix {
  const title = say`Allow ${count} changes here, with a reason`;
  const present = definition.statements.find((statement) => statement.kind === 'allow');
  if (!present) return { title, edits: [insertLine(definition, `allow ${count} because ""`)] };
  const rest = textAt(definition, present.span).replace(/^allow\s+\S+/, `allow ${count}`);
  return { title, edits: [replace(definition, present.span, rest)] };
}
